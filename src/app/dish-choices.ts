import type { LineCorrection } from '../core/dish/index.ts';
import type { IntakeAuthority } from '../core/people/index.ts';
import type { MeasureSystem } from '../core/quantity/index.ts';

/** Everything that she chose about a dish beside its text. */
export interface DishChoices {
  readonly servings: number | null;
  readonly lifeStage: string;
  readonly authority: IntakeAuthority;
  readonly measures: MeasureSystem;
  readonly countOptional: boolean;
  /** Weight of the cooked pot from her own scale, grams; overrides the estimate. */
  readonly cookedWeightG: number | null;
  readonly corrections: readonly LineCorrection[];
}

export const usualChoices: DishChoices = {
  servings: null,
  lifeStage: 'women-19-30',
  authority: 'nasem',
  measures: 'uk',
  countOptional: true,
  cookedWeightG: null,
  corrections: [],
};
