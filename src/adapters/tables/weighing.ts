import { readFileSync } from 'node:fs';
import type { WeighingRules } from '../../core/dish/index.ts';
import { compiledFile } from './folder.ts';

/** Reads the compiled weighing parameters from dist/tables/. */
export function readWeighingRules(): WeighingRules {
  return JSON.parse(readFileSync(compiledFile('weighing.json'), 'utf8')) as WeighingRules;
}
