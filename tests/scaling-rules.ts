import { join } from 'node:path';
import { compileScaling } from '../scripts/tables/scaling.ts';
import type { ScalingRules } from '../src/core/dish/index.ts';

/** How recipes grow, straight from data/. */
export const testScaling: ScalingRules = compileScaling(join(import.meta.dirname, '..', 'data'));
