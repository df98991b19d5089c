import { handOut, latestStarts, orderEdges, type OrderEdge } from './order-graph.ts';
import { changeMinutes, ovenWays, type OvenWay } from './oven-sharing.ts';
import { daySteps, kitchenModel, type KitchenModel, type Progress } from './kitchen-model.ts';
import { isActive, type CookRequest, type KitchenRules, type KitchenStep } from './kitchen.ts';
import { goalObjective, solveStages, type Goal, type StageResult } from './stages.ts';
import type { PlanModel, SearchBudget } from './solve/plan-model.ts';

export interface PlannedPiece {
  readonly start: number;
  readonly end: number;
  /** Numbers of the cooks whose hands it takes; empty when it runs alone. */
  readonly cooks: readonly number[];
}

/** One step in the plan. Times are clock minutes from midnight of the day of serving. */
export interface PlannedStep {
  readonly step: KitchenStep;
  readonly dish: string;
  readonly start: number;
  readonly end: number;
  readonly pieces: readonly PlannedPiece[];
  readonly ring: number | null;
  /** Setting of the oven, which may differ from what the recipe says when two dishes share it. */
  readonly ovenCelsius: number | null;
  /** Minutes it may begin later than planned before something is served late. */
  readonly slack: number;
  /** Minutes it waits after its end for the step that needs it (or the table), and the most it may; null: no limit. */
  readonly waits: number;
  readonly mayWait: number | null;
}

export interface AheadStep {
  readonly step: KitchenStep;
  readonly dish: string;
  /** Clock minutes between which it has to begin; negative is the day before. */
  readonly earliest: number;
  readonly latest: number;
}

export interface OvenChange {
  readonly minute: number;
  readonly celsius: number;
  readonly hotAt: number;
}

export interface CookPlan {
  readonly steps: readonly PlannedStep[];
  readonly ahead: readonly AheadStep[];
  readonly servings: readonly { readonly minute: number; readonly dishes: readonly string[] }[];
  readonly oven: readonly OvenChange[];
  readonly begin: number;
  readonly end: number;
  readonly stages: readonly StageResult[];
  readonly proven: boolean;
  /** Largest share by which a goal could still be better, 0 when proven. */
  readonly gap: number;
}

/** A plan with what the later work on it needs: its puzzle, its starts in ticks and its order. */
export interface SolvedPlan {
  readonly request: CookRequest;
  readonly kitchen: KitchenModel;
  readonly starts: readonly number[];
  readonly edges: readonly OrderEdge[];
  readonly buffers: readonly number[];
  readonly stages: readonly StageResult[];
}

export interface SolveRequest {
  readonly request: CookRequest;
  readonly rules: KitchenRules;
  readonly budget: SearchBudget;
  readonly progress?: Progress;
  readonly minutes?: ReadonlyMap<string, number>;
  readonly now?: number;
  readonly ovenOnAt?: number;
}

export type SolveOutcome = { readonly kind: 'solved'; readonly plan: SolvedPlan } | { readonly kind: 'infeasible' } | { readonly kind: 'unknown' };

/** More than any sensible plan needs: every step after the other, the oven heated for each. */
function longest(request: CookRequest, rules: KitchenRules): number {
  const steps = daySteps(request);
  const work = steps.reduce((sum, step) => sum + Math.ceil(step.minutes.high * 1.3) + 1 + step.after.reduce((wait, link) => wait + link.wait, 0), 0);
  const oven = steps.filter((step) => step.oven).length * changeMinutes(rules.roomCelsius, 250, rules);
  const offsets = Math.max(0, ...request.dishes.map((dish) => dish.servedAfter));
  return Math.max(60, work + oven + offsets);
}

const goalsOf = (request: CookRequest): Goal[] => (request.when.kind === 'shortest' ? ['total', 'spread', 'waiting'] : ['spread', 'total', 'waiting']);

const better = (a: readonly StageResult[], b: readonly StageResult[]): boolean => {
  for (const [i, stage] of a.entries()) {
    const other = b[i];
    if (!other || stage.value !== other.value) return !!other && stage.value < other.value;
  }
  return false;
};

/** Model and goals with the servings fixed at the end of the horizon, to be solved backwards from the table. */
function backward(solve: SolveRequest, way: OvenWay): { kitchen: KitchenModel; model: PlanModel } {
  const { request, rules } = solve;
  const horizon = longest(request, rules);
  const offsets = request.dishes.map((dish) => dish.servedAfter);
  const firstServe = horizon - Math.max(0, ...offsets);
  const origin = request.when.kind === 'serve-at' ? request.when.minute - firstServe : 0;
  const kitchen = kitchenModel({ request, rules, way, origin, horizon, ...(solve.minutes ? { minutes: solve.minutes } : {}) });
  const notBefore = request.when.kind === 'serve-at' && request.when.notBefore !== null ? request.when.notBefore - origin : 0;
  const activities = kitchen.model.activities.map((activity, i) => {
    for (const [offset, serve] of kitchen.serve) if (serve === i) return { ...activity, earliest: firstServe + offset, latest: firstServe + offset };
    return i === kitchen.begin ? { ...activity, earliest: Math.max(0, notBefore) } : activity;
  });
  return { kitchen, model: { ...kitchen.model, activities } };
}

/** Model with time running forwards from now and the servings free (not before their wish). */
function forward(solve: SolveRequest, way: OvenWay): { kitchen: KitchenModel; model: PlanModel; targets: Map<number, number> } {
  const { request, rules } = solve;
  const progress = solve.progress ?? new Map<string, never>();
  const { when } = request;
  const now = solve.now ?? (when.kind === 'serve-at' ? (when.notBefore ?? when.minute - longest(request, rules)) : when.minute);
  const origin = Math.min(now, solve.ovenOnAt ?? now, ...[...progress.values()].map((past) => past.startedAt));
  const target = when.kind === 'serve-at' ? when.minute - origin : now - origin;
  const horizon = Math.max(target + Math.max(0, ...request.dishes.map((dish) => dish.servedAfter)), now - origin) + longest(request, rules);
  const kitchen = kitchenModel({ request, rules, way, origin, horizon, now, progress, ...(solve.ovenOnAt === undefined ? {} : { ovenOnAt: solve.ovenOnAt }), ...(solve.minutes ? { minutes: solve.minutes } : {}) });
  const targets = new Map([...kitchen.serve.keys()].map((offset) => [offset, target + offset]));
  const activities = kitchen.model.activities.map((activity, i) => {
    for (const [offset, serve] of kitchen.serve) if (serve === i) return { ...activity, earliest: Math.max(0, targets.get(offset)!) };
    return activity;
  });
  return { kitchen, model: { ...kitchen.model, activities }, targets };
}

/** Solves one request over every way to run the oven and keeps the best plan; ties go to the simpler oven. */
export function solvePlan(solve: SolveRequest, direction: 'backward' | 'forward' = 'backward'): SolveOutcome {
  const ways = [...ovenWays(daySteps(solve.request), solve.rules)].sort((a, b) => new Set(a.values()).size - new Set(b.values()).size);
  let best: SolvedPlan | null = null;
  let unknown = false;
  for (const way of ways) {
    const built = direction === 'backward' ? backward(solve, way) : forward(solve, way);
    const targets = 'targets' in built ? built.targets : new Map<number, number>();
    const names: Goal[] = direction === 'forward' ? ['lateness', ...goalsOf(solve.request)] : goalsOf(solve.request);
    const goals = names.flatMap((goal) => {
      const objective = goalObjective(goal, built.kitchen, solve.request, targets as ReadonlyMap<number, number>);
      return objective ? [{ goal, objective }] : [];
    });
    const outcome = solveStages({ kitchen: built.kitchen, model: built.model, goals, direction, budget: { ...solve.budget, conflicts: Math.round(solve.budget.conflicts / ways.length) } });
    if (outcome.kind === 'unknown') unknown = true;
    if (outcome.kind !== 'solved') continue;
    if (best && !better(outcome.stages, best.stages)) continue;
    const edges = orderEdges(built.kitchen.model, outcome.starts);
    best = { request: solve.request, kitchen: { ...built.kitchen, model: built.model }, starts: outcome.starts, edges, buffers: outcome.starts.map(() => 0), stages: outcome.stages };
  }
  if (best) return { kind: 'solved', plan: settled(best) };
  return { kind: unknown ? 'unknown' : 'infeasible' };
}

/** Latest bounds of every activity with the servings and everything begun held in place. */
export function latestBounds(plan: SolvedPlan): number[] {
  const { kitchen, starts } = plan;
  const serves = new Set(kitchen.serve.values());
  return kitchen.model.activities.map((activity, i) => (serves.has(i) || activity.earliest === activity.latest ? starts[i]! : Math.min(activity.latest, kitchen.model.horizon)));
}

/** Everything as late as the order allows: food waits least between its steps, and no goal gets worse. */
function settled(plan: SolvedPlan): SolvedPlan {
  const later = latestStarts(plan.edges, latestBounds(plan), plan.buffers);
  return later ? { ...plan, starts: later } : plan;
}

/** The plan in clock minutes, with hands and rings handed out. */
export function cookPlan(solved: SolvedPlan, rules: KitchenRules): CookPlan {
  const { kitchen, request } = solved;
  const shift = request.when.kind === 'serve-at' || kitchen.origin !== 0 ? 0 : request.when.minute - (kitchen.origin + solved.starts[kitchen.begin]!);
  const clock = (tick: number): number => tick + kitchen.origin + shift;
  const { model } = kitchen;
  const resourceIndex = (id: string): number => model.resources.findIndex((resource) => resource.id === id);
  const unitsOf = (id: string): Map<number, readonly number[]> => {
    const index = resourceIndex(id);
    const given = index < 0 ? new Map<number, readonly number[]>() : handOut(model, solved.starts, index);
    return new Map([...given].map(([use, units]) => [model.uses[use]!.from, units]));
  };
  const dishOf = new Map(request.dishes.flatMap((dish) => dish.steps.map((step) => [step.id, dish] as const)));
  const cooks = unitsOf('hands');
  const rings = unitsOf('rings');
  // A pan keeps one ring over a run of steps: the run is known by its first.
  const ringOf = (part: number): number | null => {
    const run = model.uses.find((use) => rings.has(use.from) && model.resources[use.resource]!.id === 'rings' && (use.from === part || spans(use, part)));
    return run ? (rings.get(run.from)?.[0] ?? null) : null;
  };
  const spans = (use: { from: number; to: number }, part: number): boolean => use.from !== use.to && panOf(use.from) === panOf(part) && solved.starts[part]! >= solved.starts[use.from]! && solved.starts[part]! <= solved.starts[use.to]!;
  const panOf = (part: number): string | null => {
    const step = kitchen.steps.find((other) => kitchen.pieces.get(other.id)!.includes(part));
    return step?.pan ? `${dishOf.get(step.id)!.id}/${step.pan.name}` : null;
  };
  const float = latestStarts(solved.edges, latestBounds(solved), solved.buffers.map(() => 0)) ?? solved.starts;
  const endTick = (id: string): number => {
    const last = kitchen.pieces.get(id)!.at(-1)!;
    return solved.starts[last]! + model.activities[last]!.duration;
  };
  // Resting needs no place and no hand: it begins when what it follows ends, however late it may end.
  const beginTick = (step: KitchenStep): number => {
    const first = kitchen.pieces.get(step.id)![0]!;
    const { earliest, latest } = model.activities[first]!;
    const rests = step.attention.kind === 'none' && !step.ring && !step.oven && !step.pan && step.places.length === 0 && step.after.length > 0 && earliest !== latest;
    const ends = step.after.flatMap((link) => (kitchen.pieces.has(link.step) ? [endTick(link.step) + link.wait] : []));
    return rests && ends.length > 0 ? Math.min(solved.starts[first]!, Math.max(...ends)) : solved.starts[first]!;
  };
  const steps = kitchen.steps.map((step): PlannedStep => {
    const parts = kitchen.pieces.get(step.id)!;
    const dish = dishOf.get(step.id)!;
    const followers = kitchen.steps.flatMap((other) => other.after.filter((link) => link.step === step.id).map((link) => ({ other, link })));
    const waits = followers.map(({ other }) => beginTick(other) - endTick(step.id));
    const limits = followers.flatMap(({ link }) => (link.within === null ? [] : [link.within]));
    const table = followers.length === 0 ? solved.starts[kitchen.serve.get(dish.servedAfter)!]! - endTick(step.id) : 0;
    return {
      step,
      dish: dish.id,
      start: clock(beginTick(step)),
      end: clock(endTick(step.id)),
      pieces: parts.map((part, i) => ({ start: clock(i === 0 ? beginTick(step) : solved.starts[part]!), end: clock(solved.starts[part]! + model.activities[part]!.duration), cooks: isActive(step) ? (cooks.get(part) ?? []) : [] })),
      ring: step.ring ? ringOf(parts[0]!) : null,
      ovenCelsius: step.oven ? (kitchen.way.get(step.oven.celsius) ?? step.oven.celsius) : null,
      slack: Math.max(0, float[parts[0]!]! - solved.starts[parts[0]!]!),
      waits: followers.length === 0 ? table : Math.max(0, ...waits),
      mayWait: followers.length === 0 ? dish.hold : limits.length === 0 ? null : Math.min(...limits),
    };
  });
  steps.sort((a, b) => a.start - b.start || a.end - b.end);
  const servings = [...kitchen.serve].map(([offset, activity]) => ({ minute: clock(solved.starts[activity]!), dishes: request.dishes.filter((dish) => dish.servedAfter === offset).map((dish) => dish.id) }));
  return {
    steps,
    ahead: aheadSteps(request, steps),
    servings,
    oven: ovenChanges(steps, rules),
    begin: Math.min(clock(solved.starts[kitchen.begin]!), ...steps.map((step) => step.start)),
    end: Math.max(...servings.map((serving) => serving.minute)),
    stages: solved.stages,
    proven: solved.stages.every((stage) => stage.proven),
    gap: Math.max(0, ...solved.stages.map((stage) => (stage.proven ? 0 : (stage.value - stage.bound) / Math.max(1, Math.abs(stage.value))))),
  };
}

function aheadSteps(request: CookRequest, steps: readonly PlannedStep[]): AheadStep[] {
  const starts = new Map(steps.map((step) => [step.step.id, step.start]));
  return request.dishes.flatMap((dish) =>
    dish.steps.flatMap((step) => {
      if (!step.ahead) return [];
      const needed = dish.steps.filter((other) => other.after.some((link) => link.step === step.id)).map((other) => starts.get(other.id) ?? Number.POSITIVE_INFINITY);
      const by = Math.min(...needed, ...(needed.length === 0 ? steps.filter((other) => other.dish === dish.id).map((other) => other.start) : []));
      const duration = Math.max(1, Math.round(step.minutes.value));
      return [{ step, dish: dish.id, earliest: by - step.ahead.most - duration, latest: by - step.ahead.least - duration }];
    }),
  );
}

/** When the oven is set to what: warmed up for the first dish, changed between dishes. */
function ovenChanges(steps: readonly PlannedStep[], rules: KitchenRules): OvenChange[] {
  const changes: OvenChange[] = [];
  let celsius = rules.roomCelsius;
  let freeAt = Number.NEGATIVE_INFINITY;
  for (const step of steps) {
    if (step.ovenCelsius === null) continue;
    if (step.ovenCelsius !== celsius) {
      const minute = Math.max(freeAt, step.start - changeMinutes(celsius, step.ovenCelsius, rules));
      changes.push({ minute, celsius: step.ovenCelsius, hotAt: minute + changeMinutes(celsius, step.ovenCelsius, rules) });
      celsius = step.ovenCelsius;
    }
    freeAt = Math.max(freeAt, step.end);
  }
  return changes;
}
