import type { Claim } from './claim.ts';
import type { HealthFinding } from './health-claims.ts';
import type { Measurement, Standing } from './judge-condition.ts';
import type { NutrientId } from '../foods/index.ts';
import type { LawId } from './law.ts';
import type { NutritionFinding } from './nutrition-claims.ts';

/**
 * What may be done with a claim under one law. `say`: as it stands. `say-with`: with words of its own
 * beside it. `near`: on the best estimate, not for sure. `short`: the plate does not bear it.
 * `not-lawful`: not of any food, or not in these words. `unknown`: data is missing. `proof`: only with
 * evidence that she holds herself. `free`: nothing that a law checks.
 */
export const verdictKinds = ['say', 'say-with', 'near', 'short', 'not-lawful', 'unknown', 'proof', 'free'] as const;
export type VerdictKind = (typeof verdictKinds)[number];

/** Why, as a code for the messages; `data` fills the words. */
export interface Reason {
  readonly code: string;
  readonly data: Readonly<Record<string, string | number | null>>;
}

export interface LawVerdict {
  readonly law: LawId;
  readonly kind: VerdictKind;
  /** Ids of clauses, and clauses of nutrition rules in words. */
  readonly clauses: readonly string[];
  readonly reasons: readonly Reason[];
  readonly measurements: readonly Measurement[];
  /** Nutrients that the words beside the claim must name: see nutrition information for … content (21 CFR 101.13(h)). */
  readonly disclose: readonly NutrientId[];
  /** Nutrition findings and permitted wordings that bear on it, best first. */
  readonly nutrition: readonly NutritionFinding[];
  readonly health: readonly HealthFinding[];
}

export interface JudgedClaim {
  readonly claim: Claim;
  readonly verdicts: readonly LawVerdict[];
}

/** Whether a verdict lets the claim be said. */
export function passes(kind: VerdictKind): boolean {
  return kind === 'say' || kind === 'say-with' || kind === 'free';
}

export const kindOfStanding: Record<Standing, VerdictKind> = { holds: 'say', estimate: 'near', fails: 'short', unknown: 'unknown' };
