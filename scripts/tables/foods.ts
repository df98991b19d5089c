import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isNutrientId, nutrientIds, type FoodEntry } from '../../src/core/foods/index.ts';
import { readCsvRecords } from './csv.ts';
import { cell, kindCode, known, missing, setCell } from './food-rows.ts';
import { ifct2017Rows } from './ifct2017.ts';
import { sr28Rows } from './sr28.ts';

export interface FoodsHeader {
  nutrients: readonly string[];
  entries: FoodEntry[];
  cellSources: [string, string][];
}

/** Both tables with the values added by data/tables/added-values.csv and those withheld by withheld-values.csv, as a JSON header and a block of values, deviations (float64) and kinds (uint8). */
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
  for (const record of readCsvRecords(readFileSync(join(data, 'tables', 'withheld-values.csv'), 'utf8'))) {
    const row = byCode.get(record['food']!);
    const nutrient = record['nutrient']!;
    if (!row || !isNutrientId(nutrient) || !record['reason']) throw new Error(`withheld-values.csv: cannot use ${JSON.stringify(record)}`);
    // The printed figure stands beside the reason so that a new edition of the table is noticed.
    if (cell(row, nutrient).per100g !== Number(record['printed'])) throw new Error(`withheld-values.csv: ${row.entry.code} ${nutrient} is printed as ${cell(row, nutrient).per100g}`);
    setCell(row, nutrient, missing('withheld'));
    cellSources.push([`${row.entry.code} ${nutrient}`, record['reason']]);
  }
  const count = rows.length * nutrientIds.length;
  const buffer = new ArrayBuffer(count * 17);
  const values = new Float64Array(buffer, 0, count);
  const deviations = new Float64Array(buffer, count * 8, count);
  const kinds = new Uint8Array(buffer, count * 16, count);
  rows.forEach((row, i) =>
    row.cells.forEach((entry, j) => {
      const k = i * nutrientIds.length + j;
      values[k] = entry.per100g;
      deviations[k] = entry.deviation;
      kinds[k] = kindCode(entry.kind);
    }),
  );
  return { header: { nutrients: nutrientIds, entries: rows.map((row) => row.entry), cellSources }, cells: new Uint8Array(buffer) };
}
