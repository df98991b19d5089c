import { describe, expect, it } from 'vitest';
import { readFoodTable } from '../../adapters/tables/index.ts';
import { isKnown } from './value.ts';
import { nutrientIds, type NutrientId } from './nutrient.ts';

const table = readFoodTable();
const value = (code: string, nutrient: NutrientId): number | string => {
  const v = table.get(code).value(nutrient);
  return isKnown(v) ? v.per100g : v.kind;
};

describe('the compiled composition tables', () => {
  it('hold every food of SR28 (8,789 by its documentation, 2015) and the foods of IFCT 2017 without its oils', () => {
    expect(table.foods.filter((f) => f.table === 'sr28')).toHaveLength(8789);
    expect(table.foods.filter((f) => f.table === 'ifct2017')).toHaveLength(528);
  });

  // USDA SR28, abbreviated file, as printed: kale raw (11233), beans kidney (…), apple (09003), milk (01077).
  it.each([
    ['sr28:11233', 'calcium', 150], ['sr28:11233', 'vitamin-c', 120], ['sr28:11233', 'vitamin-k', 704.8], ['sr28:11233', 'energy', 49],
    ['sr28:09003', 'vitamin-c', 4.6], ['sr28:09003', 'fibre', 2.4], ['sr28:01077', 'calcium', 113], ['sr28:16057', 'magnesium', 48],
    ['sr28:15121', 'selenium', 70.6],
  ] as const)('give for %s %s the figure %d of SR28', (code, nutrient, amount) => {
    expect(value(code, nutrient)).toBeCloseTo(amount, 6);
  });

  // IFCT 2017, table 1 and following: amaranth seed, pale brown (A002): energy 1489 kJ, protein 13.27 ± 0.34 g, magnesium 270 ± 33.2 mg, calcium 162 mg.
  it('turn the kilojoules and grams of IFCT 2017 into kilocalories and the nutrient’s unit, and keep its deviations', () => {
    expect(value('ifct2017:A002', 'energy')).toBeCloseTo(1489 / 4.184, 6);
    expect(value('ifct2017:A002', 'magnesium')).toBeCloseTo(270, 6);
    expect(value('ifct2017:A002', 'calcium')).toBeCloseTo(162, 6);
    const protein = table.get('ifct2017:A002').value('protein');
    expect(protein).toMatchObject({ kind: 'analysed', per100g: 13.27, deviation: 0.34 });
  });

  it('leave out the fibre from SR28’s carbohydrate by difference (Regulation (EU) 1169/2011 Annex I counts it apart)', () => {
    // Apple: carbohydrate by difference 13.81 g, fibre 2.4 g.
    expect(value('sr28:09003', 'carbohydrate')).toBeCloseTo(11.41, 6);
  });

  it('find alcohol by difference near SR28’s own nutrient 221 (red table wine 10.6 g, vodka 80 proof 33.4 g)', () => {
    expect(value('sr28:14096', 'alcohol')).toBeCloseTo(10.6, 1);
    expect(value('sr28:14051', 'alcohol')).toBeCloseTo(33.4, 1);
    expect(value('sr28:02048', 'alcohol')).toBe(0); // Cider vinegar: what is left over there is acid.
  });

  it('say “not in the table” for what a whole table lacks and “not measured” for an empty cell', () => {
    expect(value('sr28:11233', 'iodine')).toBe('not-in-table');
    expect(value('sr28:11233', 'biotin')).toBe('not-in-table');
    expect(value('ifct2017:A001', 'vitamin-c')).toBe('not-measured');
  });

  it('hold no negative and no impossible value', () => {
    for (const food of table.foods) {
      for (const nutrient of nutrientIds) {
        const v = food.value(nutrient);
        if (!isKnown(v)) continue;
        expect(v.per100g, `${food.code} ${nutrient}`).toBeGreaterThanOrEqual(0);
        if (nutrient === 'energy') expect(v.per100g, food.code).toBeLessThanOrEqual(903);
      }
    }
  });
});

describe('withheld figures', () => {
  it('are missing with their reason, not the printed figure and not nothing', () => {
    // SR28 16056 prints manganese 21.306 mg for dried chickpeas against 1.03 mg for boiled ones (16057).
    expect(table.get('sr28:16056').value('manganese')).toMatchObject({ kind: 'withheld', reason: expect.stringContaining('16057') as string });
    expect(value('sr28:16057', 'manganese')).toBe(1.03);
  });
});
