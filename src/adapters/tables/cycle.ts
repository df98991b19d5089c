import { readFileSync } from 'node:fs';
import type { CycleTables } from '../../app/cycle-tables.ts';
import { compiledFile } from './folder.ts';

/** Reads the compiled cycle data: the model's figures, life states, bounds, criteria, rating rules and schemes. */
export function readCycleTables(): CycleTables {
  return JSON.parse(readFileSync(compiledFile('cycle.json'), 'utf8')) as CycleTables;
}
