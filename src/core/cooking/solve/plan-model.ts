/**
 * A scheduling puzzle as plain data: resource-constrained project scheduling with
 * generalised time lags (Bartusch, Möhring & Radermacher 1988). Build, inspect, solve.
 * Times are whole ticks (the kitchen uses minutes) counted from 0. Indexes point into the arrays.
 */
export interface PlanModel {
  readonly activities: readonly PlanActivity[];
  readonly resources: readonly PlanResource[];
  readonly uses: readonly ResourceUse[];
  readonly lags: readonly TimeLag[];
  readonly choices: readonly EitherOr[];
  /** No activity starts later than this. */
  readonly horizon: number;
}

export interface PlanActivity {
  readonly id: string;
  readonly duration: number;
  /** Bounds of the start, both included. */
  readonly earliest: number;
  readonly latest: number;
}

export interface PlanResource {
  readonly id: string;
  readonly capacity: number;
}

/** Takes `demand` units from the start of activity `from` to the end of activity `to` (often the same one). */
export interface ResourceUse {
  readonly resource: number;
  readonly from: number;
  readonly to: number;
  readonly demand: number;
}

/** start(to) ≥ start(from) + ticks. A greatest distance is a lag backwards with negative ticks. */
export interface TimeLag {
  readonly from: number;
  readonly to: number;
  readonly ticks: number;
}

/** At least one of two lags holds. */
export interface EitherOr {
  readonly first: TimeLag;
  readonly second: TimeLag;
}

/** Minimise Σ weight × start + constant. Weights are whole numbers, of either sign. */
export interface PlanObjective {
  readonly terms: readonly { readonly activity: number; readonly weight: number }[];
  readonly constant: number;
}

/** How long a search may go on; `stop` is asked now and then, so that the core needs no clock. */
export interface SearchBudget {
  readonly conflicts: number;
  readonly stop?: () => boolean;
}

export type PlanResult =
  | {
      readonly kind: 'solved';
      readonly starts: readonly number[];
      readonly value: number;
      /** No plan can do better than this; equal to `value` when proven. */
      readonly bound: number;
      readonly proven: boolean;
      readonly conflicts: number;
    }
  | { readonly kind: 'infeasible'; readonly conflicts: number }
  | { readonly kind: 'unknown'; readonly bound: number; readonly conflicts: number };

export function objectiveValue(objective: PlanObjective, starts: readonly number[]): number {
  return objective.terms.reduce((sum, term) => sum + term.weight * (starts[term.activity] ?? 0), objective.constant);
}

/** The objective "end of this activity as early as possible". */
export function earliestEnd(model: PlanModel, activity: number): PlanObjective {
  return { terms: [{ activity, weight: 1 }], constant: model.activities[activity]?.duration ?? 0 };
}
