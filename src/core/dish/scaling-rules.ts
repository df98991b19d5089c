import type { CookingMethod } from './recipe.ts';

/** An exponent on the factor: amount × factor ^ exponent. */
export interface ScalingExponent {
  readonly exponent: number;
  readonly source: string;
  readonly locator: string;
}

/** Foods that do not grow in step with the pot; `name` and `unless` are patterns over the kitchen name. */
export interface NotInStep extends ScalingExponent {
  readonly id: string;
  readonly name: string;
  readonly unless: string | null;
}

export type TimeCode = 'same' | 'same-after-boil' | 'longer-to-boil' | 'thicker-longer' | 'batches' | 'longer';

export interface TimeRule extends ScalingExponent {
  readonly methods: readonly CookingMethod[];
  readonly code: TimeCode;
}

/** data/parameters/dish/scaling.yaml: common practice where no source is named. */
export interface ScalingRules {
  readonly notInStep: readonly NotInStep[];
  readonly greasing: ScalingExponent;
  readonly cookingWater: ScalingExponent;
  readonly times: readonly TimeRule[];
  readonly tellFrom: number;
}
