/**
 * True retention: the share of a nutrient of the raw food that is in the cooked food, from the
 * contents of 100 g each and the weight yield (Murphy, Criner and Gray 1975).
 */
export function trueRetention(values: { readonly rawPer100g: number; readonly cookedPer100g: number; readonly weightYield: number }): number {
  return (values.cookedPer100g / values.rawPer100g) * values.weightYield;
}

/** The other way round: content of 100 g cooked from 100 g raw, what is kept and the weight yield. */
export function cookedPer100g(values: { readonly rawPer100g: number; readonly kept: number; readonly weightYield: number }): number {
  return (values.rawPer100g * values.kept) / values.weightYield;
}
