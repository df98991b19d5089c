import { beforeAll, describe, expect, it } from 'vitest';
import { readFoodTable } from '../../src/adapters/tables/index.ts';
import type { Food, FoodValue, NutrientId } from '../../src/core/foods/index.ts';
import type { PublishedTable } from '../../src/core/dish/index.ts';
import { compilePublished, publishedTable } from '../tables/cooked.ts';
import { bestCandidate, families, fitNutrient, fitRows, fitSolids, folds, quantile, spreads, type FitRow, type HeldOut } from './fit.ts';
import { calculatedFrom, calculatedScore, cookedPairs, fineEnough, type PairSet } from './pairs.ts';
import { ridge } from './ridge.ts';
import { join } from 'node:path';

const table = publishedTable(compilePublished(join(import.meta.dirname, '..', '..', 'data')));
const noTable: PublishedTable = { source: 'x', rows: new Map(), choice: new Map() };
const minerals: NutrientId[] = ['magnesium', 'potassium', 'phosphorus', 'zinc', 'copper', 'manganese', 'iron', 'calcium'];

function food(name: string, values: Partial<Record<NutrientId, number>>, group = 'Vegetables'): Food {
  return {
    code: `sr28:${name}`, table: 'sr28', name, scientificName: null, localNames: null, group, refusePercent: null, refuseText: null, household: [], energyFactors: null,
    value: (n): FoodValue => (values[n] === undefined ? { kind: 'not-measured' } : { kind: 'tabulated', per100g: values[n], deviation: null, source: null }),
  };
}
const raw = { water: 90, protein: 2, magnesium: 79, potassium: 558, phosphorus: 490, zinc: 5.3, copper: 1.13, manganese: 0.897, iron: 2.71, calcium: 990 };
const scaled = (by: number, each: (i: number) => number): Partial<Record<NutrientId, number>> => Object.fromEntries([['water', 88], ['protein', raw.protein * by], ...minerals.map((n, i) => [n, raw[n as keyof typeof raw] * by * each(i)])]) as Partial<Record<NutrientId, number>>;

describe('the pairing rules', () => {
  const pairsOf = (...foods: Food[]) => cookedPairs(foods, noTable);
  it('join what is left of two descriptions when the words of state are taken out', () => {
    const { pairs } = pairsOf(food('Chard, raw', raw), food('Chard, cooked, boiled, drained, without salt', scaled(1.2, (i) => 0.7 + 0.07 * i)));
    expect(pairs.map((p) => [p.raw.name, p.family, p.way])).toEqual([['Chard, raw', 'leafy-greens', 'boiled-drained']]);
  });
  it.each(['Chard, cooked, boiled, drained, with salt', 'Chard, cooked, breaded and fried', 'Spinach, cooked, boiled, drained, without salt', 'Chard, raw, frozen'])('leave out %s', (name) => {
    expect(pairsOf(food('Chard, raw', raw), food(name, scaled(1.2, (i) => 0.7 + 0.07 * i))).pairs).toEqual([]);
  });
  it('do not pair enriched with unenriched', () => {
    expect(pairsOf(food('Rice, white, enriched, raw', raw, 'Cereal grains and pasta'), food('Rice, white, unenriched, cooked', scaled(0.4, (i) => 0.7 + 0.07 * i), 'Cereal grains and pasta')).pairs).toEqual([]);
  });
  it('take out an entry whose values are the raw ones times factors in steps of 5 % over one yield', () => {
    const calculated = pairsOf(food('Chard, raw', raw), food('Chard, cooked, boiled, drained, without salt', scaled(1.25, () => 0.95)));
    expect(calculated.pairs).toEqual([]);
    expect(calculated.calculated).toHaveLength(1);
  });
  it('say nothing about a nutrient printed too coarsely', () => {
    const pair = { raw: food('a, raw', { folate: 5, potassium: 300 }), cooked: food('a, cooked', { folate: 7, potassium: 320 }) } as unknown as Parameters<typeof fineEnough>[0];
    expect(fineEnough(pair, 'folate')).toBe(false);
    expect(fineEnough(pair, 'potassium')).toBe(true);
    expect(fineEnough(pair, 'zinc')).toBe(false);
  });
});

describe('the pairs of SR28', () => {
  let set: PairSet;
  let rows: FitRow[];
  beforeAll(() => {
    set = cookedPairs(readFoodTable().foods, table);
    rows = fitRows(set.pairs);
  });
  it('are over 900 of more than 30 families, and each kept one scores below the bound', () => {
    expect(set.pairs.length).toBeGreaterThan(900);
    expect(families(rows).length).toBeGreaterThan(30);
    for (const pair of set.pairs) expect(calculatedScore(pair)).toBeLessThanOrEqual(calculatedFrom);
    expect(set.calculated.some((pair) => pair.raw.name === 'Fish, mahimahi, raw')).toBe(true);
  });
  it('are dealt into parts that share no family and lose none', () => {
    const parts = folds(rows, 12);
    const all = parts.flatMap((part) => [...part]);
    expect(new Set(all).size).toBe(all.length);
    expect(all.sort()).toEqual(families(rows));
  });
  it('give the same coefficients every time, and none for a family that was left out', () => {
    const train = rows.filter((row) => row.pair.family !== 'beef' && fineEnough(row.pair, 'zinc'));
    const one = fitNutrient(train, 'zinc', fitSolids(train));
    expect(fitNutrient(train, 'zinc', fitSolids(train))).toEqual(one);
    expect(Object.keys(one).some((term) => term.includes('beef'))).toBe(false);
  });
});

describe('the shrinkage', () => {
  const task = (penalty: number, targets: number[]) => ridge({ rows: targets.map(() => [['a', 1]] as const), targets, weights: targets.map(() => 1), penalty: () => penalty, robust: 0.05 });
  it('draws a mean towards nothing by its penalty', () => {
    expect(task(0, [0.2, 0.2, 0.2])['a']).toBeCloseTo(0.2, 9);
    expect(task(3, [0.2, 0.2, 0.2])['a']!).toBeLessThan(0.1001);
    expect(task(1e9, [0.2, 0.2, 0.2])['a']).toBeCloseTo(0, 6);
  });
  it('is hardly moved by one wild value', () => {
    const calm = task(0.01, [0.1, 0.1, 0.1, 0.1, 0.1, 0.1])['a']!;
    expect(Math.abs(task(0.01, [0.1, 0.1, 0.1, 0.1, 0.1, 3])['a']! - calm)).toBeLessThan(0.05);
  });
  it('takes the fitted factor only when it is nearer by a margin', () => {
    const held = (fitted: number, published: number): HeldOut[] => Array.from({ length: 100 }, () => ({ row: {} as FitRow, fitted, published, publishedByDryMatter: 1 }));
    expect(bestCandidate(held(0.1, 0.2))).toBe('fitted');
    expect(bestCandidate(held(0.199, 0.2))).toBe('published');
  });
  it('reads 10th and 90th percentiles, drawn to the pool where a kingdom has few pairs', () => {
    const values = [...Array.from({ length: 200 }, (_, i) => ({ kingdom: 'animal' as const, residual: (i - 99.5) / 100 })), { kingdom: 'plant' as const, residual: 5 }];
    const { animal, plant } = spreads(values);
    expect(animal.low).toBeCloseTo(quantile(values.map((v) => v.residual).sort((a, b) => a - b), 0.1), 1);
    expect(plant.high).toBeLessThan(2);
  });
});
