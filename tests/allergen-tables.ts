import { join } from 'node:path';
import { compileAllergens } from '../scripts/tables/allergens.ts';
import { kitchenFiles } from '../scripts/tables/kitchen-names.ts';
import { parse } from 'yaml';
import type { AllergenTables } from '../src/core/foods/index.ts';

const data = join(import.meta.dirname, '..', 'data');

/** Kitchen names straight from data/. */
export const kitchenNameSet: ReadonlySet<string> = new Set(kitchenFiles(data).flatMap(({ text }) => (parse(text) as { name: string }[]).map(({ name }) => name)));

/** What foods hold, straight from data/, so that tests of the lists need no compiled tables. */
export const testAllergens: AllergenTables = compileAllergens(data, kitchenNameSet);
