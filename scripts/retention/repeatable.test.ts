import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readFoodTable } from '../../src/adapters/tables/index.ts';
import { readCsvRecords } from '../tables/csv.ts';
import { compilePublished, publishedTable } from '../tables/cooked.ts';
import { fitNutrient, fitRows, fitSolids, usable } from './fit.ts';
import { cookedPairs } from './pairs.ts';

const data = join(import.meta.dirname, '..', '..', 'data');

describe('data/tables/retention-model.csv', () => {
  it('is what scripts/fit-retention.ts gives from the tables of this version', () => {
    const records = readCsvRecords(readFileSync(join(data, 'tables', 'retention-model.csv'), 'utf8'));
    const rows = fitRows(cookedPairs(readFoodTable().foods, publishedTable(compilePublished(data))).pairs);
    const solids = fitSolids(rows);
    const written = (nutrient: string): Record<string, number> => Object.fromEntries(records.filter((r) => r['nutrient'] === nutrient).map((r) => [r['term']!, Number(r['value'])]));
    for (const [nutrient, fitted] of [['protein', solids], ['potassium', fitNutrient(usable(rows, 'potassium'), 'potassium', solids)]] as const) {
      const file = written(nutrient);
      for (const [term, value] of Object.entries(fitted)) {
        if (Math.abs(value) > 1e-6) expect(Math.abs(file[term]! - value), `${nutrient} ${term}`).toBeLessThanOrEqual(1e-5 * Math.abs(value) + 1e-9);
      }
    }
  });
});

// The targets that the accuracy bench prints; the bench itself takes a minute or two, so the errors that the fit recorded on held-out families stand in here.
describe('the errors that the fit recorded on held-out families', () => {
  const records = readCsvRecords(readFileSync(join(data, 'tables', 'retention-model.csv'), 'utf8'));
  const value = (nutrient: string, term: string): number => Number(records.find((r) => r['nutrient'] === nutrient && r['term'] === term)?.['value']);
  it.each([['magnesium', 12], ['potassium', 12], ['phosphorus', 12], ['zinc', 12], ['copper', 12], ['manganese', 12], ['iron', 12], ['thiamin', 18], ['vitamin-b6', 18], ['folate', 18], ['niacin', 18], ['riboflavin', 12]])('%s stays within %i %% by the factor that is used', (nutrient, percent) => {
    const used = value(nutrient, 'use-fitted') === 1 ? 'error-fitted' : 'error-published';
    expect(100 * value(nutrient, used)).toBeLessThanOrEqual(percent);
  });
});
