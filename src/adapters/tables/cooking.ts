import { readFileSync } from 'node:fs';
import type { CookingTables } from '../../core/cooking/index.ts';
import { compiledFile } from './folder.ts';

/** Reads the compiled parameters of the cook plan. */
export function readCookingTables(): CookingTables {
  return JSON.parse(readFileSync(compiledFile('cooking.json'), 'utf8')) as CookingTables;
}
