import type { KitchenEntry } from '../../src/core/foods/index.ts';
import { compileAllergens } from './allergens.ts';
import { compileScaling } from './scaling.ts';
import { compileSeasons } from './seasons.ts';
import { compileSwaps } from './swaps.ts';

/** Every table that changing a dish needs, by the name of its compiled file. */
export function compileChange(data: string, kitchen: readonly KitchenEntry[]): Readonly<Record<string, unknown>> {
  const names = new Set(kitchen.map((entry) => entry.name));
  return { allergens: compileAllergens(data, names), scaling: compileScaling(data), swaps: compileSwaps(data, names), seasons: compileSeasons(data, names) };
}
