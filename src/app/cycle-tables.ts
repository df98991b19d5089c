import type { CycleParameters, RatingParameters, ReferralParameters } from '../core/cycle/index.ts';
import type { LifeStateKind, SafetyParameters } from '../core/people/index.ts';
import type { Scheme } from '../core/scheme/index.ts';

/** The compiled data that the cycle desk works with (dist/tables/cycle.json). */
export interface CycleTables {
  readonly model: CycleParameters;
  readonly lifeStates: readonly LifeStateKind[];
  readonly safety: SafetyParameters;
  readonly referral: ReferralParameters;
  readonly ratings: RatingParameters;
  readonly schemes: readonly Scheme[];
}
