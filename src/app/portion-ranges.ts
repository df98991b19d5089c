import { deviationOfRange, portionInterval, type NutrientTotal, type PortionInterval, type UncertainPart } from '../core/dish/index.ts';
import { exactly } from '../core/quantity/index.ts';
import type { WorkedDish } from './work-out-dish.ts';

/** The 80 % range of one nutrient of a portion and what it comes from; a sum that is not known has none. */
export function portionRange(dish: WorkedDish, total: NutrientTotal): PortionInterval {
  const portion = 1 / dish.servings.count;
  if (total.nutrient === 'water') return { interval: waterRange(dish, total), doubts: [] };
  const parts = total.contributions.flatMap((c): UncertainPart[] => {
    if (c.amount === null || c.amount === 0) return [];
    const cooked = dish.cooked.lines.get(c.lineId)?.values.get(total.nutrient);
    const eaten = dish.lineById.get(c.lineId)?.eatenShare ?? exactly(1);
    if (!cooked) return [];
    return [{ lineId: c.lineId, amount: c.amount, deviation: { ...cooked.deviation, weight: Math.hypot(cooked.deviation.weight, deviationOfRange(eaten)) } }];
  });
  return portionInterval(parts, { share: portion, deviation: deviationOfRange(dish.servings.range) });
}

function waterRange(dish: WorkedDish, total: NutrientTotal): PortionInterval['interval'] {
  const { cookedGrams } = dish.cooked.pot;
  const portion = 1 / dish.servings.count;
  const at = (grams: number): number => Math.max(0, total.known + grams - cookedGrams.value) * portion;
  return { low: at(cookedGrams.low), value: total.known * portion, high: at(cookedGrams.high) };
}
