import { join } from 'node:path';
import { compileSwaps } from '../scripts/tables/swaps.ts';
import type { SwapTables } from '../src/core/dish/index.ts';
import { kitchenNameSet } from './allergen-tables.ts';

/** Foods that can take each other's place, straight from data/. */
export const testSwaps: SwapTables = compileSwaps(join(import.meta.dirname, '..', 'data'), kitchenNameSet);
