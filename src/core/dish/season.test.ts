import { describe, expect, it } from 'vitest';
import { readMonths, seasonOf, useUp, type PantryFood } from './season.ts';

describe('seasons', () => {
  it.each([['6-9', [6, 7, 8, 9]], ['11-2', [1, 2, 11, 12]], ['4', [4]], ['4, 6-7', [4, 6, 7]], ['1-12', [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]]])('reads %s', (text, months) => expect([...(readMonths(text) ?? [])].sort((a, b) => a - b)).toEqual(months));
  it.each(['', '0-3', '3-13', 'spring', '5-'])('does not read “%s”', (text) => expect(readMonths(text)).toBeNull());
  const table = { region: 'uk', name: 'UK', source: 'common-practice', foods: { asparagus: '4-6', cabbage: '1-12' } };
  const at = { table, own: { kale: '9-3', asparagus: '5' }, month: 4 };
  it('takes her own months before the table’s, tells nothing of frozen food or of what nobody entered', () => {
    expect(seasonOf('asparagus', 'raw', at)).toBe('out');
    expect(seasonOf('asparagus', 'raw', { ...at, own: {} })).toBe('in');
    expect(seasonOf('cabbage', null, at)).toBe('all-year');
    expect(seasonOf('asparagus', 'frozen', at)).toBe('not-told');
    expect(seasonOf('durian', 'raw', at)).toBe('not-told');
  });
});

describe('using things up', () => {
  const have = (food: string, useBy: string | null, grams: number | null = null): PantryFood => ({ item: { id: food, food, amount: '', useBy }, entryName: food, code: null, grams });
  const line = (entryName: string, grams = 100) => ({ lineId: entryName, entryName, code: null, grams, free: entryName === 'water' });
  it('puts the dish first that uses what spoils first, then the one that uses most', () => {
    const pantry = [have('kale', '2026-11-26', 200), have('leek', null), have('rice', null)];
    const dishes = [
      { dishId: 'rice and leek', lines: [line('rice'), line('leek'), line('water')] },
      { dishId: 'kale soup', lines: [line('kale', 150), line('onion')] },
      { dishId: 'toast', lines: [line('bread')] },
    ];
    const found = useUp(pantry, dishes);
    expect(found.map((d) => [d.dishId, d.uses.length, d.toBuy])).toEqual([['kale soup', 1, 1], ['rice and leek', 2, 0]]);
    expect(found[0]?.uses[0]?.enough).toBe(true);
  });
});
