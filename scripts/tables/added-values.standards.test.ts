import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { nutrientColumn, type NutrientId } from '../../src/core/foods/index.ts';
import { readCsvRecords } from './csv.ts';
import { knownSources } from './known-sources.ts';
import { sr28Rows } from './sr28.ts';

const data = join(import.meta.dirname, '..', '..', 'data');
const records = readCsvRecords(readFileSync(join(data, 'tables', 'added-values.csv'), 'utf8'));
const tableRow = new Map(sr28Rows().map((row) => [row.entry.code, row]));
const inTable = (food: string, nutrient: NutrientId): number => tableRow.get(food)?.cells[nutrientColumn(nutrient)]?.per100g ?? NaN;

// USDA Standard Reference 28 (2015) prints total polyunsaturated fat (nutrient 646) in its
// abbreviated file; the single acids added here must fit into that printed total.
describe('added fatty acids against the printed polyunsaturated fat of USDA SR28', () => {
  const acids = new Map<string, number>();
  for (const record of records) {
    if (!['linoleic', 'alpha-linolenic', 'epa-dha'].includes(record['nutrient']!)) continue;
    acids.set(record['food']!, (acids.get(record['food']!) ?? 0) + Number(record['per_100g']));
  }

  it('covers at least eighty foods', () => {
    expect(acids.size).toBeGreaterThanOrEqual(80);
  });

  it.each([...acids])('%s: linoleic, alpha-linolenic, EPA and DHA together stay within the polyunsaturated fat', (food, sum) => {
    expect(sum).toBeLessThanOrEqual(inTable(food, 'polyunsaturates') + 0.005);
  });
});

describe('added values', () => {
  it('come from a known source each and name a food and nutrient once', () => {
    const sources = knownSources(data);
    const keys = records.map((record) => `${record['food']} ${record['nutrient']}`);
    expect(records.filter((record) => !sources.has(record['source']!))).toEqual([]);
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
  });

  it('replace no value that the table itself prints', () => {
    const printed = records.filter((record) => !Number.isNaN(inTable(record['food']!, record['nutrient'] as NutrientId)));
    expect(printed).toEqual([]);
  });
});
