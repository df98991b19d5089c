import type { KitchenModel } from './kitchen-model.ts';
import { hotSteps } from './kitchen-model.ts';
import type { CookRequest } from './kitchen.ts';
import { minimise } from './solve/minimise.ts';
import { mirrored, mirroredObjective, mirroredStarts, type PlanModel, type PlanObjective, type PlanResult, type SearchBudget } from './solve/plan-model.ts';

/**
 * What a plan is judged by, in order. `lateness`: minutes after the wished serving time, all servings together.
 * `spread`: the longest that anything hot stands before it is on the table, plating included. `total`: minutes from the first move to the
 * last serving; the idle minutes of the hands follow from it (cooks × total − work). `waiting`, the sum over everything hot, is only
 * looked at last, as far as time allows, and is no part of the proof.
 */
export type Goal = 'lateness' | 'spread' | 'total' | 'waiting';

export interface StageResult {
  readonly goal: Goal;
  readonly value: number;
  readonly bound: number;
  readonly proven: boolean;
}

export type StagesOutcome =
  | { readonly kind: 'solved'; readonly starts: readonly number[]; readonly stages: readonly StageResult[]; readonly model: PlanModel }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'unknown' };

function merged(terms: readonly { activity: number; weight: number }[]): { activity: number; weight: number }[] {
  const sums = new Map<number, number>();
  for (const { activity, weight } of terms) sums.set(activity, (sums.get(activity) ?? 0) + weight);
  return [...sums].filter(([, weight]) => weight !== 0).map(([activity, weight]) => ({ activity, weight }));
}

/** The objective of a goal; null when it has nothing to minimise. `targets` are ticks by serving offset. */
export function goalObjective(goal: Goal, kitchen: KitchenModel, request: CookRequest, targets: ReadonlyMap<number, number>): PlanObjective | null {
  const serves = [...kitchen.serve];
  if (goal === 'lateness') {
    const terms = serves.map(([, activity]) => ({ activity, weight: 1 }));
    return { terms, constant: -serves.reduce((sum, [offset]) => sum + (targets.get(offset) ?? 0), 0) };
  }
  if (goal === 'total') {
    const last = serves.reduce((most, entry) => (entry[0] > most[0] ? entry : most))[1];
    return { terms: [{ activity: last, weight: 1 }, { activity: kitchen.begin, weight: -1 }], constant: 0 };
  }
  const first = kitchen.serve.get(Math.min(...kitchen.serve.keys()))!;
  if (goal === 'spread') return kitchen.hotFrom === null ? null : { terms: [{ activity: first, weight: 1 }, { activity: kitchen.hotFrom, weight: -1 }], constant: 0 };
  const terms: { activity: number; weight: number }[] = [];
  let constant = 0;
  for (const dish of request.dishes) {
    for (const step of hotSteps(dish)) {
      const last = kitchen.pieces.get(step.id)!.at(-1)!;
      terms.push({ activity: kitchen.serve.get(dish.servedAfter)!, weight: 1 }, { activity: last, weight: -1 });
      constant -= kitchen.model.activities[last]!.duration;
    }
  }
  return terms.length === 0 ? null : { terms: merged(terms), constant };
}

export interface StagesRequest {
  readonly kitchen: KitchenModel;
  readonly model: PlanModel;
  readonly goals: readonly { readonly goal: Goal; readonly objective: PlanObjective }[];
  /** Backwards from the table (serving fixed) or forwards from now. */
  readonly direction: 'backward' | 'forward';
  readonly budget: SearchBudget;
}

/** Conflicts spent on the last goal, which is no part of the proof: few, and counted, so that the same order gives the same plan on every machine. */
const tidying = 2000;

/** Minimises the goals one after the other, each kept while the next is minimised. */
export function solveStages({ model: given, goals, direction, budget }: StagesRequest): StagesOutcome {
  let model = given;
  let starts: readonly number[] | null = null;
  const stages: StageResult[] = [];
  let used = 0;
  for (const { goal, objective } of goals.length > 0 ? goals : [{ goal: 'total' as const, objective: { terms: [], constant: 0 } }]) {
    const left = goals.length - stages.length;
    const most = goal === 'waiting' ? tidying : Number.POSITIVE_INFINITY;
    const share: SearchBudget = { conflicts: Math.min(most, Math.max(200, Math.round((budget.conflicts - used) / Math.max(1, left)))), ...(budget.stop ? { stop: budget.stop } : {}) };
    const result: PlanResult =
      direction === 'backward'
        ? minimise(mirrored(model), mirroredObjective(model, objective), share, starts ? mirroredStarts(model, starts) : null)
        : minimise(model, objective, share, starts);
    used += result.conflicts;
    if (result.kind !== 'solved') {
      if (starts) break;
      return { kind: result.kind };
    }
    starts = direction === 'backward' ? mirroredStarts(model, result.starts) : result.starts;
    if (goal !== 'waiting') stages.push({ goal, value: result.value, bound: result.bound, proven: result.proven });
    model = { ...model, limits: [...model.limits, { ...objective, atMost: result.value }] };
  }
  return { kind: 'solved', starts: starts!, stages, model };
}
