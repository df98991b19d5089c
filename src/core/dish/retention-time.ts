import type { NutrientId } from '../foods/index.ts';
import type { CookedParameters } from './cooked-tables.ts';
import type { CookedWay } from './cooked-way.ts';

/**
 * The power that the minutes put on a factor, first order in time: kept = factor ^ (minutes / the
 * minutes that the tables' cooking takes), between two bounds. 1 for nutrients that time does not
 * move, and where no minutes are known.
 */
export function timeExponent(nutrient: NutrientId, way: CookedWay, minutes: number | null, parameters: Pick<CookedParameters, 'time'>): number {
  const { time } = parameters;
  if (minutes === null || !time.nutrients.includes(nutrient)) return 1;
  return Math.min(time.most, Math.max(time.least, minutes / time.minutes[way]));
}
