import type { Food } from './food.ts';
import { isNutrientId, nutrient, nutrientIds, type NutrientId } from './nutrient.ts';

/** A food that she typed in from a pack, with figures as printed: per 100 g, or per portion of so many grams. */
export interface OwnFood {
  readonly id: string;
  readonly name: string;
  readonly basis: { readonly kind: 'per-100g' } | { readonly kind: 'per-portion'; readonly grams: number };
  /** Figures as printed, in the nutrient's unit. A nutrient that is not here is not on the pack: missing, not zero. */
  readonly printed: Readonly<Partial<Record<NutrientId, number>>>;
  /** Where the figures come from ("label of …"). */
  readonly source: string;
  /** The day on which she copied them, YYYY-MM-DD. */
  readonly date: string;
}

export type OwnFoodProblem =
  | { readonly code: 'no-name' | 'no-source' | 'no-figures' | 'bad-portion-grams' }
  | { readonly code: 'unknown-nutrient'; readonly nutrient: string }
  | { readonly code: 'negative' | 'too-much'; readonly nutrient: string; readonly per100g: number }
  | { readonly code: 'parts-exceed-whole'; readonly grams: number };

function per100g(own: OwnFood, printed: number): number {
  return own.basis.kind === 'per-100g' ? printed : (printed * 100) / own.basis.grams;
}

/** Everything that cannot be right about a food of her own; empty when it can be used. */
export function ownFoodProblems(own: OwnFood): OwnFoodProblem[] {
  const problems: OwnFoodProblem[] = [];
  if (own.name.trim() === '') problems.push({ code: 'no-name' });
  if (own.source.trim() === '') problems.push({ code: 'no-source' });
  if (own.basis.kind === 'per-portion' && !(own.basis.grams > 0)) return [...problems, { code: 'bad-portion-grams' }];
  const printed = Object.entries(own.printed);
  if (printed.length === 0) problems.push({ code: 'no-figures' });
  const limit = { g: 100, mg: 100_000, µg: 100_000_000, kcal: 900 };
  for (const [id, amount] of printed) {
    if (!isNutrientId(id)) {
      problems.push({ code: 'unknown-nutrient', nutrient: id });
      continue;
    }
    const value = per100g(own, amount);
    if (value < 0) problems.push({ code: 'negative', nutrient: id, per100g: value });
    // Pure fat gives 900 kcal in 100 g, and no part can outweigh the whole; labels round, so 2 % is left.
    else if (!(value <= limit[nutrient(id).unit] * 1.02)) problems.push({ code: 'too-much', nutrient: id, per100g: value });
  }
  const whole = (['protein', 'fat', 'carbohydrate', 'fibre', 'alcohol'] as const).reduce((sum, id) => sum + per100g(own, own.printed[id] ?? 0), 0);
  if (whole > 102) problems.push({ code: 'parts-exceed-whole', grams: whole });
  return problems;
}

/** Her food as a food of the tables, code `own:<id>`; figures from the pack are of kind `label`. */
export function ownFood(own: OwnFood): Food {
  return {
    code: `own:${own.id}`,
    table: 'own',
    name: own.name,
    scientificName: null,
    localNames: null,
    group: 'Own foods',
    refusePercent: 0,
    refuseText: null,
    household: own.basis.kind === 'per-portion' ? [{ text: '1 portion', grams: own.basis.grams }] : [],
    energyFactors: null,
    value(id) {
      const printed = own.printed[id];
      if (printed === undefined) return { kind: nutrientIds.includes(id) ? 'not-measured' : 'not-in-table' };
      return { kind: 'label', per100g: per100g(own, printed), deviation: null, source: `${own.source}, ${own.date}` };
    },
  };
}
