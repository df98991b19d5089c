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
  readonly limits: readonly SumLimit[];
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

/** Σ weight × start + constant ≤ atMost. */
export interface SumLimit extends PlanObjective {
  readonly atMost: number;
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

/** The same puzzle with time running backwards from `horizon`: what starts late starts early there. */
export function mirrored(model: PlanModel): PlanModel {
  const duration = (activity: number): number => model.activities[activity]!.duration;
  const flipLag = (lag: TimeLag): TimeLag => ({ from: lag.to, to: lag.from, ticks: lag.ticks + duration(lag.to) - duration(lag.from) });
  const end = model.horizon + Math.max(0, ...model.activities.map((activity) => activity.duration));
  return {
    activities: model.activities.map((activity) => ({
      ...activity,
      earliest: end - Math.min(activity.latest, model.horizon) - activity.duration,
      latest: end - Math.max(0, activity.earliest) - activity.duration,
    })),
    resources: model.resources,
    uses: model.uses.map((use) => ({ ...use, from: use.to, to: use.from })),
    lags: model.lags.map(flipLag),
    choices: model.choices.map((choice) => ({ first: flipLag(choice.first), second: flipLag(choice.second) })),
    limits: model.limits.map((limit) => ({ ...mirroredObjective(model, limit), atMost: limit.atMost })),
    horizon: end,
  };
}

export function mirroredObjective(model: PlanModel, objective: PlanObjective): PlanObjective {
  const end = model.horizon + Math.max(0, ...model.activities.map((activity) => activity.duration));
  return {
    terms: objective.terms.map((term) => ({ activity: term.activity, weight: -term.weight })),
    constant: objective.terms.reduce((sum, term) => sum + term.weight * (end - model.activities[term.activity]!.duration), objective.constant),
  };
}

/** Starts of the mirrored puzzle as starts of the original, and the other way round. */
export function mirroredStarts(model: PlanModel, starts: readonly number[]): number[] {
  const end = model.horizon + Math.max(0, ...model.activities.map((activity) => activity.duration));
  return starts.map((at, i) => end - at - model.activities[i]!.duration);
}
