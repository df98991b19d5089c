import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readHousehold } from './household.ts';

describe('a household measure of a table', () => {
  it('is read with its count, unit, size and states', () => {
    const table: [string, [number, string, string, string | null, string[]]][] = [
      ['1 cup', [1, 'cup', 'volume', null, []]],
      ['1 cup, 1" pieces, loosely packed', [1, 'cup', 'volume', null, ['piece', 'loosely', 'packed']]],
      ['.5 cup, chopped or diced', [0.5, 'cup', 'volume', null, ['chopped', 'diced']]],
      ['1 cup,  halves', [1, 'cup', 'volume', null, ['half']]],
      ['1 tbsp', [1, 'tbsp', 'volume', null, []]],
      ['2 tablespoon', [2, 'tbsp', 'volume', null, []]],
      ['1 tsp, ground', [1, 'tsp', 'volume', null, ['ground']]],
      ['1 fl oz', [1, 'fl-oz', 'volume', null, []]],
      ['1 cup,  (8 fl oz)', [1, 'cup', 'volume', null, []]],
      ['100 ml', [100, 'ml', 'volume', null, []]],
      ['3 oz', [3, 'oz', 'mass', null, []]],
      ['1 medium (2-1/2" dia)', [1, 'piece', 'count', 'medium', []]],
      ['1 large', [1, 'piece', 'count', 'large', []]],
      ['1 Potato, large (3" to 4-1/4" dia)', [1, 'potato', 'count', 'large', []]],
      ['2 stalks', [2, 'stalk', 'count', null, []]],
      ['1 leaf', [1, 'leaf', 'count', null, []]],
      ['1 fruit,  (2-1/8" dia)', [1, 'fruit', 'count', null, []]],
      ['1-1/2 cups', [1.5, 'cup', 'volume', null, []]],
      ['1/4 teaspoon', [0.25, 'tsp', 'volume', null, []]],
      ['1 cup,  (not packed)', [1, 'cup', 'volume', null, []]],
    ];
    for (const [text, [count, unit, kind, size, states]] of table) expect(readHousehold(text), text).toMatchObject({ count, unit, kind, size, states });
  });

  it('tells what a raw amount yields from the weight of the measure', () => {
    for (const text of ['1 cup,  dry, yields', '1 piece, cooked, excluding refuse (yield from 1 lb raw meat with refuse)', '1 package,  (8 oz) yields']) expect(readHousehold(text)?.isYield, text).toBe(true);
    expect(readHousehold('1 cup')?.isYield).toBe(false);
  });

  it('tells weights with bone from weights without', () => {
    expect(readHousehold('1 roast, with bone')?.withRefuse).toBe(true);
    expect(readHousehold('1 steak, excluding refuse')?.withRefuse).toBe(false);
    expect(readHousehold('1 fruit, without refuse')?.withRefuse).toBe(false);
  });

  it('gives nothing for nothing, and never throws', () => {
    for (const text of ['', '   ', '0 cups', '5', '"']) expect(readHousehold(text), text).toBeNull();
    fc.assert(
      fc.property(fc.string(), (text) => {
        const reading = readHousehold(text);
        expect(reading === null || reading.count > 0).toBe(true);
      }),
    );
  });
});
