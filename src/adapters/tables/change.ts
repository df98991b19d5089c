import { readFileSync } from 'node:fs';
import type { ScalingRules, SeasonTable, SwapTables } from '../../core/dish/index.ts';
import type { ChangeTables } from '../../app/change-tables.ts';
import { readAllergenTables } from './allergens.ts';
import { compiledFile } from './folder.ts';

function read<T>(name: string): T {
  return JSON.parse(readFileSync(compiledFile(`${name}.json`), 'utf8')) as T;
}

/** Reads everything that changing a dish needs from dist/tables/; throws `not-built` when `npm run tables` has not been run. */
export function readChangeTables(): ChangeTables {
  return { allergens: readAllergenTables(), scaling: read<ScalingRules>('scaling'), swaps: read<SwapTables>('swaps'), seasons: read<SeasonTable[]>('seasons') };
}
