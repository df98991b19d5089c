import { isKnown, type Food, type NutrientId } from '../foods/index.ts';
import type { Kept } from './factor.ts';

/**
 * Values that are sums of others keep what their parts keep: vitamin A of retinol and the
 * carotenes, folate of its two forms, energy of what gives it. Weights turn a part into the sum's unit.
 */
const parts: Partial<Record<NutrientId, readonly (readonly [part: NutrientId, weight: number])[]>> = {
  // Retinol activity equivalents (Institute of Medicine 2001).
  'vitamin-a': [['retinol', 1], ['beta-carotene', 1 / 12], ['alpha-carotene', 1 / 24], ['beta-cryptoxanthin', 1 / 24]],
  folate: [['food-folate', 1], ['folic-acid', 1]],
  // Dietary folate equivalents: folic acid counts 1.7 times (Institute of Medicine 1998).
  'folate-dfe': [['food-folate', 1], ['folic-acid', 1.7]],
  // Kilocalories a gram (Regulation (EU) 1169/2011 Annex XIV).
  energy: [['protein', 4], ['fat', 9], ['carbohydrate', 4], ['fibre', 2], ['alcohol', 7]],
};

/** The share kept of a nutrient; of a sum, the mean of its parts' shares weighted by how much of it each is. */
export function combinedKept(nutrient: NutrientId, food: Food, single: (nutrient: NutrientId) => Kept): Kept {
  const own = parts[nutrient];
  if (!own) return single(nutrient);
  const amounts = own.flatMap(([part, weight]) => {
    const value = food.value(part);
    return isKnown(value) && value.per100g > 0 ? [{ part, amount: value.per100g * weight }] : [];
  });
  const total = amounts.reduce((sum, { amount }) => sum + amount, 0);
  const first = amounts.reduce((best, one) => (one.amount > (best?.amount ?? 0) ? one : best), amounts[0]);
  if (total === 0 || !first) return nutrient === 'folate' || nutrient === 'folate-dfe' ? single('food-folate') : single(own[0]![0]);
  const kept = amounts.map(({ part, amount }) => ({ kept: single(part), share: amount / total }));
  const mean = (of: (kept: Kept) => number): number => kept.reduce((sum, one) => sum + one.share * of(one.kept), 0);
  const main = kept[amounts.indexOf(first)]!.kept;
  return { ...main, share: { low: mean((k) => k.share.low), value: mean((k) => k.share.value), high: mean((k) => k.share.high) }, deviation: Math.sqrt(kept.reduce((sum, one) => sum + (one.share * one.kept.deviation) ** 2, 0)) };
}
