import type { NutrientId } from '../foods/index.ts';

/** The basis on which a law measures. `energy`: share of energy; `fatty-acids`: share of all fatty acids. */
export type Basis = '100g' | '100ml' | '100kcal' | 'portion' | 'racc' | '50g' | 'energy' | 'fatty-acids';

/** Nutrients added up; `subject` stands for the nutrient that the claim is about. */
export type Measured = NutrientId | 'subject' | readonly NutrientId[];

export type Fact = 'no-added-sugars' | 'no-added-salt' | 'single-portion-pack' | 'individual-food' | 'meal-or-main-dish' | 'not-small-racc' | 'meat-fish-or-meal';

/** Limits in the nutrient's unit, or as a share of the law's reference value (`…Share`). */
export interface LimitCondition {
  readonly of: Measured;
  readonly per: Basis;
  readonly atLeast?: number;
  readonly above?: number;
  readonly atMost?: number;
  readonly below?: number;
  readonly atLeastShare?: number;
}

/** Against another dish, per 100 g: at least `less` or `more` (shares) apart, or `moreShare` of the reference value more. */
export interface ComparedCondition {
  readonly of: Measured;
  readonly less?: number;
  readonly more?: number;
  readonly moreShare?: number;
}

/** A food of the dish reaches the share in its own reference amount (21 CFR 101.54(b)(2), (c)(2)). */
export interface ComponentCondition {
  readonly component: 'subject';
  readonly atLeastShare: number;
}

/** When a claim may be made, as a law's table states it. */
export type Condition =
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] }
  | { readonly form: 'solid' | 'liquid' }
  | { readonly fact: Fact }
  | ComponentCondition
  | LimitCondition
  | ComparedCondition;
