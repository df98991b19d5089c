import { describe, expect, it } from 'vitest';
import { ownFood, ownFoodProblems, type OwnFood } from './own-food.ts';

const bar: OwnFood = { id: 'bar', name: 'Oat bar', basis: { kind: 'per-portion', grams: 40 }, printed: { energy: 160, fat: 6, magnesium: 40 }, source: 'invented label', date: '2026-03-01' };

describe('a food of her own', () => {
  it('is turned from portion to 100 g, names its label, and leaves missing what is not printed', () => {
    const food = ownFood(bar);
    expect(food.value('magnesium')).toEqual({ kind: 'label', per100g: 100, deviation: null, source: 'invented label, 2026-03-01' });
    expect(food.value('iron')).toEqual({ kind: 'not-measured' });
    expect(ownFoodProblems(bar)).toEqual([]);
  });

  it.each([
    [{ name: ' ' }, 'no-name'],
    [{ source: '' }, 'no-source'],
    [{ printed: {} }, 'no-figures'],
    [{ basis: { kind: 'per-portion', grams: 0 } }, 'bad-portion-grams'],
    [{ printed: { iron: -1 } }, 'negative'],
    [{ printed: { fat: 60 } }, 'too-much'],
    [{ basis: { kind: 'per-100g' }, printed: { fat: 60, carbohydrate: 50 } }, 'parts-exceed-whole'],
    [{ printed: { vibes: 3 } }, 'unknown-nutrient'],
  ])('is refused with %j as %s', (change, code) => {
    expect(ownFoodProblems({ ...bar, ...change } as OwnFood).map((p) => p.code)).toContain(code);
  });
});
