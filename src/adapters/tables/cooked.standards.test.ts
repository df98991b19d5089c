import { describe, expect, it } from 'vitest';
import { alcoholKept } from '../../core/dish/retention-alcohol.ts';
import { combinedKept } from '../../core/dish/retention-parts.ts';
import { cookedPer100g, publishedRow, trueRetention, type Kept } from '../../core/dish/index.ts';
import type { Food, NutrientId } from '../../core/foods/index.ts';
import { readCookedTables } from './cooked.ts';
import { readFoodTable } from './foods.ts';

const tables = readCookedTables();
const foods = readFoodTable();
const named = (name: string): Food => {
  const food = foods.foods.find((f) => f.name === name);
  if (!food) throw new Error(`no food ${name}`);
  return food;
};
const per100g = (food: Food, nutrient: NutrientId): number => {
  const value = food.value(nutrient);
  if (!('per100g' in value)) throw new Error(`${food.name} has no ${nutrient}`);
  return value.per100g;
};

// USDA Table of Nutrient Retention Factors, Release 6 (2007): figures typed from the table, row by row.
describe('USDA Table of Nutrient Retention Factors, Release 6 (2007)', () => {
  const rows: readonly (readonly [food: string, way: Parameters<typeof publishedRow>[2], code: string, kept: Partial<Record<NutrientId, number>>])[] = [
    ['Spinach, raw', 'boiled-drained', '3005', { 'vitamin-c': 55, thiamin: 80, folate: 60, iron: 95, potassium: 85 }],
    ['Fish, mahimahi, raw', 'roasted', '2301', { thiamin: 90, riboflavin: 95, niacin: 95, 'vitamin-b6': 90, calcium: 100 }],
    ['Beef, chuck, arm pot roast, separable lean only, trimmed to 1/8" fat, choice, raw', 'roasted', '601', { thiamin: 55, 'vitamin-b6': 50, potassium: 80, 'vitamin-b12': 70, phosphorus: 85 }],
  ];
  it.each(rows)('serves %s %s by row %s with its printed percentages', (name, way, code, kept) => {
    const row = publishedRow(tables.published, named(name), way);
    expect(row?.code).toBe(code);
    for (const [nutrient, percent] of Object.entries(kept)) expect(100 * row!.kept[nutrient as NutrientId]!).toBeCloseTo(percent, 9);
  });
});

// USDA's alcohol figures: the same table, rows 5002 to 5009, after Augustin, Augustin, Cutrufelli, Hagen and Teitzel (1992).
describe('alcohol left by minutes (USDA Release 6 rows 5002 to 5009; Augustin et al. 1992)', () => {
  it.each([[0, 85], [15, 40], [30, 35], [60, 25], [90, 20], [120, 10], [150, 5], [300, 5]])('after %i minutes stirred in is %i %%', (minutes, percent) => {
    expect(100 * alcoholKept({ method: 'simmered', minutes }, tables.published).share.value).toBeCloseTo(percent, 9);
  });
});

// USDA worked the cooked entries of these fish out from the raw ones: weight yield 78 % and the factors of row 2301 or 2451.
describe("USDA's own calculation of cooked fish in SR28 (2015), dry heat, yield 78 %", () => {
  const fish = ['Fish, mahimahi', 'Fish, ling', 'Fish, monkfish', 'Fish, pike, walleye', 'Fish, lingcod', 'Fish, cusk', 'Fish, burbot', 'Fish, sablefish', 'Fish, scup'];
  const nutrients: readonly (readonly [NutrientId, decimals: number])[] = [['potassium', 0], ['phosphorus', 0], ['magnesium', 0], ['niacin', 3], ['vitamin-b6', 3], ['riboflavin', 3], ['thiamin', 3], ['zinc', 2], ['protein', 2]];
  it.each(fish)('%s comes out as printed', (name) => {
    const [raw, cooked] = [named(`${name}, raw`), named(`${name}, cooked, dry heat`)];
    const row = publishedRow(tables.published, raw, 'roasted')!;
    for (const [nutrient, decimals] of nutrients) {
      const ours = cookedPer100g({ rawPer100g: per100g(raw, nutrient), kept: row.kept[nutrient] ?? 1, weightYield: 0.78 });
      const printed = per100g(cooked, nutrient);
      // Both printed figures are rounded, and USDA worked from unrounded raw values and a yield near 0.78.
      const rounding = 0.5 * 10 ** -decimals * (1 + 1 / 0.78);
      expect(Math.abs(ours - printed), `${name} ${nutrient}: ${ours} against ${printed}`).toBeLessThanOrEqual(rounding + 0.015 * printed);
    }
  });
});

// Phenol-Explorer 3, retention factor pages 786 (blueberry jam, yield 0.86) and 93 to 95 (spinach in a microwave, yield 0.65 from USDA Agriculture Handbook 102).
describe('true retention as Phenol-Explorer 3 works it out (Rothwell et al. 2013)', () => {
  const worked = [
    { what: 'blueberry sugar jam', rawPer100g: 112.69, cookedPer100g: 93.52, weightYield: 0.86, published: 0.71 },
    { what: 'spinach in the microwave, 1000 W', rawPer100g: 6.0, cookedPer100g: 5.0, weightYield: 0.65, published: 0.54 },
    { what: 'spinach in the microwave, 1000 W, a second compound', rawPer100g: 291.0, cookedPer100g: 224.0, weightYield: 0.65, published: 0.5 },
    { what: 'spinach in the microwave, 500 W', rawPer100g: 219.6, cookedPer100g: 241.2, weightYield: 0.65, published: 0.71 },
    { what: 'spinach in the microwave, 1 minute', rawPer100g: 114.73, cookedPer100g: 118.37, weightYield: 0.65, published: 0.67 },
  ];
  it.each(worked)('$what: $rawPer100g before, $cookedPer100g after, yield $weightYield gives $published', ({ published, ...values }) => {
    expect(Math.round(100 * trueRetention(values)) / 100).toBeCloseTo(published, 9);
  });
});

// Institute of Medicine: retinol activity equivalents (2001), dietary folate equivalents (1998).
describe('sums keep what their parts keep', () => {
  const kept = (share: number): Kept => ({ share: { low: share, value: share, high: share }, used: { kind: 'none', share, source: 'common-practice', locator: 'test' }, other: null, why: 'only-source', deviation: 0, time: 1 });
  const foodOf = (values: Partial<Record<NutrientId, number>>): Food =>
    ({ value: (n: NutrientId) => (values[n] === undefined ? { kind: 'not-measured' } : { kind: 'tabulated', per100g: values[n], deviation: null, source: null }) }) as unknown as Food;
  it('vitamin A: 100 µg retinol kept at 50 % and 1200 µg beta-carotene kept whole leave 150 of 200 µg RAE', () => {
    const share = combinedKept('vitamin-a', foodOf({ retinol: 100, 'beta-carotene': 1200 }), (n) => kept(n === 'retinol' ? 0.5 : 1)).share.value;
    expect(share).toBeCloseTo(0.75, 12);
  });
  it('folate equivalents: 100 µg food folate kept at 60 % and 100 µg folic acid kept at 80 % leave 196 of 270 µg DFE', () => {
    const share = combinedKept('folate-dfe', foodOf({ 'food-folate': 100, 'folic-acid': 100 }), (n) => kept(n === 'food-folate' ? 0.6 : 0.8)).share.value;
    expect(share).toBeCloseTo(196 / 270, 12);
  });
});
