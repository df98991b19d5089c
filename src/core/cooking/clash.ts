import { solvePlan, type SolveRequest } from './cook-plan.ts';
import { panSizes, places, type CookRequest, type Kitchen, type KitchenDish, type KitchenStep, type StepLink } from './kitchen.ts';
import type { SearchBudget } from './solve/plan-model.ts';

/** A wish or limit of the kitchen that can stand in the way of a plan. */
export type Limit =
  | { readonly kind: 'within'; readonly from: string; readonly to: string; readonly minutes: number; readonly safety: boolean }
  | { readonly kind: 'hold'; readonly dish: string; readonly minutes: number; readonly safety: boolean }
  | { readonly kind: 'capacity'; readonly of: string; readonly have: number }
  | { readonly kind: 'not-before'; readonly minute: number };

export type Remedy =
  | { readonly kind: 'more'; readonly of: string; readonly need: number }
  | { readonly kind: 'wait-longer'; readonly limit: Limit; readonly minutes: number }
  | { readonly kind: 'serve-later'; readonly minute: number };

export interface Clash {
  /** A smallest set of limits that cannot all be kept: give way on any one of them. */
  readonly limits: readonly Limit[];
  /** Single changes that make a plan possible, tried out. Limits of food safety are never among them. */
  readonly remedies: readonly Remedy[];
  /** False when the search ended before every trial was decided. */
  readonly sure: boolean;
}

const plenty = 99;

function limitsOf(request: CookRequest): Limit[] {
  const limits: Limit[] = [];
  const { kitchen, when, dishes } = request;
  for (const of of ['cooks', 'rings', 'shelves'] as const) limits.push({ kind: 'capacity', of, have: kitchen[of] });
  for (const size of panSizes) limits.push({ kind: 'capacity', of: `pan ${size}`, have: kitchen.pans[size] });
  for (const place of places) limits.push({ kind: 'capacity', of: place, have: kitchen.places[place] });
  for (const dish of dishes) {
    for (const step of dish.steps) {
      for (const link of step.after) if (link.within !== null) limits.push({ kind: 'within', from: link.step, to: step.id, minutes: link.within, safety: link.reason === 'safety' });
    }
    limits.push({ kind: 'hold', dish: dish.id, minutes: dish.hold, safety: dish.holdReason === 'safety' });
  }
  if (when.kind === 'serve-at' && when.notBefore !== null) limits.push({ kind: 'not-before', minute: when.notBefore });
  return limits;
}

const mapSteps = (request: CookRequest, change: (step: KitchenStep, dish: KitchenDish) => KitchenStep): CookRequest => ({
  ...request,
  dishes: request.dishes.map((dish) => ({ ...dish, steps: dish.steps.map((step) => change(step, dish)) })),
});

function withCapacity(kitchen: Kitchen, of: string, count: number): Kitchen {
  if (of.startsWith('pan ')) return { ...kitchen, pans: { ...kitchen.pans, [of.slice(4)]: count } };
  if (of === 'cooks' || of === 'rings' || of === 'shelves') return { ...kitchen, [of]: count };
  return { ...kitchen, places: { ...kitchen.places, [of]: count } };
}

/** The request with one limit widened: to `minutes` or `count`, or lifted when left out. */
function eased(request: CookRequest, limit: Limit, to: number | null): CookRequest {
  switch (limit.kind) {
    case 'capacity':
      return { ...request, kitchen: withCapacity(request.kitchen, limit.of, to ?? plenty) };
    case 'hold':
      return { ...request, dishes: request.dishes.map((dish) => (dish.id === limit.dish ? { ...dish, hold: to ?? 1440 } : dish)) };
    case 'within': {
      const loosen = (link: StepLink): StepLink => (link.step === limit.from ? { ...link, within: to } : link);
      return mapSteps(request, (step) => (step.id === limit.to ? { ...step, after: step.after.map(loosen) } : step));
    }
    case 'not-before':
      return request.when.kind === 'serve-at' ? { ...request, when: { ...request.when, notBefore: to } } : request;
  }
}

/** Why there is no plan, found by lifting limits one at a time, and which single changes help, by trying them. */
export function explainClash(solve: SolveRequest, budget: SearchBudget): Clash {
  let sure = true;
  const possible = (request: CookRequest): boolean => {
    const outcome = solvePlan({ ...solve, request, budget: { ...budget, conflicts: Math.min(budget.conflicts, 1500) } });
    if (outcome.kind === 'unknown') sure = false;
    return outcome.kind === 'solved';
  };
  const all = limitsOf(solve.request);
  // Deletion filter (Chinneck & Dravnieks 1991): lift a limit; if there is still no plan it was not to blame and stays lifted.
  let request = solve.request;
  const core: Limit[] = [];
  for (const limit of all) {
    const without = eased(request, limit, null);
    if (possible(without)) core.push(limit);
    else request = without;
  }
  return { limits: core, remedies: remedies(solve, core, possible), sure };
}

function remedies(solve: SolveRequest, core: readonly Limit[], possible: (request: CookRequest) => boolean): Remedy[] {
  const found: Remedy[] = [];
  for (const limit of core) {
    if (limit.kind === 'capacity') {
      const need = [limit.have + 1, limit.have + 2].find((count) => possible(eased(solve.request, limit, count)));
      if (need !== undefined) found.push({ kind: 'more', of: limit.of, need });
    } else if (limit.kind === 'not-before') {
      const minute = earliestServing(solve);
      if (minute !== null) found.push({ kind: 'serve-later', minute });
    } else if (!limit.safety) {
      const minutes = [2, 5, 10, 15, 20, 30, 45, 60, 90].map((more) => limit.minutes + more).find((value) => possible(eased(solve.request, limit, value)));
      if (minutes !== undefined) found.push({ kind: 'wait-longer', limit, minutes });
    }
  }
  return found;
}

/** The first minute at which everything can be on the table, from now. */
export function earliestServing(solve: SolveRequest): number | null {
  const outcome = solvePlan(solve, 'forward');
  if (outcome.kind !== 'solved') return null;
  const { kitchen, starts } = outcome.plan;
  return starts[kitchen.serve.get(Math.min(...kitchen.serve.keys()))!]! + kitchen.origin;
}

