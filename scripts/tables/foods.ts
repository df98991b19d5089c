import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isNutrientId, nutrientIds, type FoodEntry } from '../../src/core/foods/index.ts';
import { readCsvRecords } from './csv.ts';
import { kindCode, known, setCell } from './food-rows.ts';
import { ifct2017Rows } from './ifct2017.ts';
import { sr28Rows } from './sr28.ts';

export interface FoodsHeader {
  nutrients: readonly string[];
  entries: FoodEntry[];
  cellSources: [string, string][];
}

/** Both tables and the curated values of data/tables/added-values.csv, as a JSON header and a block of values, deviations (float64) and kinds (uint8). */
export function compileFoods(data: string): { header: FoodsHeader; cells: Uint8Array } {
  const rows = [...sr28Rows(), ...ifct2017Rows()];
  const byCode = new Map(rows.map((row) => [row.entry.code, row]));
  const cellSources: [string, string][] = [];
  for (const record of readCsvRecords(readFileSync(join(data, 'tables', 'added-values.csv'), 'utf8'))) {
    const row = byCode.get(record['food']!);
    const nutrient = record['nutrient']!;
    const value = Number(record['per_100g']);
    if (!row || !isNutrientId(nutrient) || !(value >= 0) || !record['source']) throw new Error(`added-values.csv: cannot use ${JSON.stringify(record)}`);
    setCell(row, nutrient, known('curated', value));
    cellSources.push([`${row.entry.code} ${nutrient}`, `${record['source']}: ${record['locator']}`]);
  }
  const count = rows.length * nutrientIds.length;
  const buffer = new ArrayBuffer(count * 17);
  const values = new Float64Array(buffer, 0, count);
  const deviations = new Float64Array(buffer, count * 8, count);
  const kinds = new Uint8Array(buffer, count * 16, count);
  rows.forEach((row, i) =>
    row.cells.forEach((cell, j) => {
      const k = i * nutrientIds.length + j;
      values[k] = cell.per100g;
      deviations[k] = cell.deviation;
      kinds[k] = kindCode(cell.kind);
    }),
  );
  return { header: { nutrients: nutrientIds, entries: rows.map((row) => row.entry), cellSources }, cells: new Uint8Array(buffer) };
}
