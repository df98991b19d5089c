import { readFileSync } from 'node:fs';
import type { AllergenTables } from '../../core/foods/index.ts';
import { compiledFile } from './folder.ts';

/** Reads what foods hold of allergens from dist/tables/; throws `not-built` when `npm run tables` has not been run. */
export function readAllergenTables(): AllergenTables {
  return JSON.parse(readFileSync(compiledFile('allergens.json'), 'utf8')) as AllergenTables;
}
