import type { NutrientId } from '../foods/index.ts';

/** Energy a gram of one nutrient yields when it is declared. Source: Regulation (EU) 1169/2011 Annex XIV. */
export interface EnergyFactor {
  readonly nutrient: NutrientId;
  readonly energyKj: number;
  readonly energyKcal: number;
}

export interface DeclaredEnergy {
  readonly energyKj: number;
  readonly energyKcal: number;
  /** Energy of each part, in the order of the factors; `grams` null where the amount is not known at all. */
  readonly parts: readonly { readonly nutrient: NutrientId; readonly grams: number | null; readonly energyKj: number; readonly energyKcal: number }[];
}

/**
 * Energy by the general factors from grams of each nutrient. A nutrient whose grams are null
 * adds nothing and stands as unknown in `parts`; whether the sum is whole is told by the totals.
 */
export function declaredEnergy(grams: (nutrient: NutrientId) => number | null, factors: readonly EnergyFactor[]): DeclaredEnergy {
  const parts = factors.map((factor) => {
    const amount = grams(factor.nutrient);
    return { nutrient: factor.nutrient, grams: amount, energyKj: (amount ?? 0) * factor.energyKj, energyKcal: (amount ?? 0) * factor.energyKcal };
  });
  const sum = (pick: (part: (typeof parts)[number]) => number): number => parts.reduce((total, part) => total + pick(part), 0);
  return { energyKj: sum((p) => p.energyKj), energyKcal: sum((p) => p.energyKcal), parts };
}
