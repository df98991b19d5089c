import { readFileSync } from 'node:fs';
import type { KitchenEntry } from '../../core/foods/index.ts';
import { compiledFile } from './folder.ts';

/** The kitchen names of every area; throws `not-built` when `npm run tables` has not been run. */
export function readKitchenNames(): KitchenEntry[] {
  return JSON.parse(readFileSync(compiledFile('kitchen-names.json'), 'utf8')) as KitchenEntry[];
}
