import { exactly, type Interval } from '../quantity/index.ts';
import type { StatedServings } from './recipe.ts';

export interface ServingParameters {
  readonly portionEnergyKcal: number;
  readonly portionWeightG: number;
}

/** How many portions the pot is divided into and on whose word. A `proposed` count is a question, never a fact. */
export interface Servings {
  readonly count: number;
  readonly range: Interval;
  readonly basis: 'chosen' | 'stated' | 'proposed';
  /** What is counted ("pancakes"), null for people. */
  readonly of: string | null;
}

/**
 * The servings that she chose, else those that the recipe states, else a proposal from the
 * pot's energy (kcal) and eaten weight (g): the larger of the two counts, at least one.
 */
export function decideServings(
  asked: { readonly chosen: number | null; readonly stated: StatedServings | null },
  pot: { readonly energyKcal: number; readonly weightG: number },
  parameters: ServingParameters,
): Servings {
  const of = asked.stated?.of ?? null;
  if (asked.chosen !== null) return { count: asked.chosen, range: exactly(asked.chosen), basis: 'chosen', of };
  if (asked.stated) return { count: asked.stated.count.value, range: asked.stated.count, basis: 'stated', of };
  const count = Math.max(1, Math.round(Math.max(pot.energyKcal / parameters.portionEnergyKcal, pot.weightG / parameters.portionWeightG)));
  return { count, range: exactly(count), basis: 'proposed', of: null };
}
