import { readFileSync } from 'node:fs';
import { foodTable, type FoodEntry, type FoodTable } from '../../core/foods/index.ts';
import { compiledFile } from './folder.ts';

interface Header {
  nutrients: string[];
  entries: FoodEntry[];
  cellSources: [string, string][];
}

/** Reads the compiled composition tables from dist/tables/. */
export function readFoodTable(): FoodTable {
  const header = JSON.parse(readFileSync(compiledFile('foods.json'), 'utf8')) as Header;
  const file = readFileSync(compiledFile('foods.bin'));
  const bytes = new Uint8Array(file).buffer;
  const count = header.entries.length * header.nutrients.length;
  return foodTable({
    nutrients: header.nutrients,
    entries: header.entries,
    values: new Float64Array(bytes, 0, count),
    deviations: new Float64Array(bytes, count * 8, count),
    kinds: new Uint8Array(bytes, count * 16, count),
    cellSources: new Map(header.cellSources),
  });
}
