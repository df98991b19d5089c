import type { EitherOr, PlanActivity, PlanModel, PlanResource, ResourceUse, TimeLag } from './solve/plan-model.ts';
import { isActive, panSizes, places, type CookRequest, type KitchenDish, type KitchenRules, type KitchenStep } from './kitchen.ts';
import { changeMinutes, ovenMinutes, type OvenWay } from './oven-sharing.ts';

/** What a constraint stands for, so that a clash can be told in kitchen words. */
export type Demand =
  | { readonly kind: 'within'; readonly from: string; readonly to: string; readonly minutes: number; readonly reason: 'order' | 'quality' | 'safety' }
  | { readonly kind: 'hold'; readonly dish: string; readonly minutes: number; readonly reason: 'quality' | 'safety' }
  | { readonly kind: 'resource'; readonly resource: string; readonly capacity: number }
  | { readonly kind: 'oven-change'; readonly settings: readonly number[] }
  | { readonly kind: 'not-before'; readonly minute: number }
  | { readonly kind: 'serving'; readonly minute: number };

/** What the cook has already done or begun, in clock minutes. A running step has no `doneAt`. */
export interface StepProgress {
  readonly startedAt: number;
  readonly doneAt: number | null;
  /** When a running step will be over, as seen now. */
  readonly expectedEnd: number;
}
export type Progress = ReadonlyMap<string, StepProgress>;

export interface KitchenModel {
  readonly model: PlanModel;
  /** Clock minute of tick 0. */
  readonly origin: number;
  /** Activities of each step: its pieces in order. */
  readonly pieces: ReadonlyMap<string, readonly number[]>;
  readonly begin: number;
  readonly serve: ReadonlyMap<number, number>;
  readonly ovenOn: number | null;
  /** The moment after which everything hot is done; null when nothing is eaten hot. The earlier serving counts. */
  readonly hotFrom: number | null;
  readonly way: OvenWay;
  /** Demands by lag index and by resource index. */
  readonly lagDemands: ReadonlyMap<number, Demand>;
  readonly resourceDemands: ReadonlyMap<number, Demand>;
  readonly steps: readonly KitchenStep[];
  readonly minutes: ReadonlyMap<string, number>;
}

export interface ModelOptions {
  readonly request: CookRequest;
  readonly rules: KitchenRules;
  readonly way: OvenWay;
  /** Planned minutes of each step; the usual ones when left out. */
  readonly minutes?: ReadonlyMap<string, number>;
  readonly progress?: Progress;
  /** Nothing that has not begun may begin before this clock minute. */
  readonly now?: number;
  /** Clock minute at which the oven was switched on, when it has been. */
  readonly ovenOnAt?: number;
  readonly origin: number;
  readonly horizon: number;
}

/** Planned minutes of a step at the oven setting of `way`, whole and at least one. */
export function plannedMinutes(step: KitchenStep, way: OvenWay, rules: KitchenRules, at: 'low' | 'value' | 'high' = 'value'): number {
  const minutes = step.minutes[at];
  return step.oven ? ovenMinutes(minutes, step.oven.celsius, way.get(step.oven.celsius) ?? step.oven.celsius, rules) : Math.max(1, Math.round(minutes));
}

/** Steps that belong to the day itself (those done hours ahead are told apart from the plan). */
export function daySteps(request: CookRequest): KitchenStep[] {
  return request.dishes.flatMap((dish) => dish.steps.filter((step) => step.ahead === null));
}

class Builder {
  readonly activities: PlanActivity[] = [];
  readonly resources: PlanResource[] = [];
  readonly uses: ResourceUse[] = [];
  readonly lags: TimeLag[] = [];
  readonly choices: EitherOr[] = [];
  readonly lagDemands = new Map<number, Demand>();
  readonly resourceDemands = new Map<number, Demand>();
  readonly horizon: number;

  constructor(horizon: number) {
    this.horizon = horizon;
  }

  activity(id: string, duration: number, window: { earliest: number; latest: number }): number {
    this.activities.push({ id, duration, ...window });
    return this.activities.length - 1;
  }

  resource(id: string, capacity: number, demand: Demand | null): number {
    this.resources.push({ id, capacity });
    if (demand) this.resourceDemands.set(this.resources.length - 1, demand);
    return this.resources.length - 1;
  }

  /** `to` begins at least `ticks` after `from` begins. */
  lag(from: number, to: number, ticks: number, demand: Demand | null = null): void {
    if (demand) this.lagDemands.set(this.lags.length, demand);
    this.lags.push({ from, to, ticks });
  }

  duration(activity: number): number {
    return this.activities[activity]!.duration;
  }
}

/** How many pieces a step that may be paused is cut into. */
function pieceLengths(step: KitchenStep, minutes: number, rules: KitchenRules): number[] {
  const count = step.mayPause && isActive(step) ? Math.max(1, Math.min(3, Math.floor(minutes / rules.leastPiece))) : 1;
  const base = Math.floor(minutes / count);
  return Array.from({ length: count }, (_, i) => base + (i < minutes % count ? 1 : 0));
}

/** The puzzle of the kitchen as a plan model. One tick is one minute. */
export function kitchenModel(options: ModelOptions): KitchenModel {
  const { request, rules, way, origin, horizon } = options;
  const progress = options.progress ?? new Map<string, StepProgress>();
  const build = new Builder(horizon);
  const open = { earliest: 0, latest: horizon };
  const steps = daySteps(request);
  const minutes = new Map(steps.map((step) => [step.id, options.minutes?.get(step.id) ?? plannedMinutes(step, way, rules)]));
  const begin = build.activity('begin', 0, { earliest: Math.max(0, (options.now ?? origin) - origin), latest: horizon });
  const pieces = new Map<string, number[]>();
  for (const step of steps) {
    const past = progress.get(step.id);
    if (past) {
      const end = past.doneAt ?? past.expectedEnd;
      const start = past.startedAt - origin;
      pieces.set(step.id, [build.activity(step.id, end - past.startedAt, { earliest: start, latest: start })]);
      continue;
    }
    const lengths = pieceLengths(step, minutes.get(step.id)!, rules);
    const parts = lengths.map((length, i) => build.activity(lengths.length > 1 ? `${step.id}#${i + 1}` : step.id, length, open));
    parts.slice(1).forEach((part, i) => build.lag(parts[i]!, part, build.duration(parts[i]!)));
    pieces.set(step.id, parts);
  }
  const first = (id: string): number => pieces.get(id)![0]!;
  const last = (id: string): number => pieces.get(id)!.at(-1)!;
  for (const step of steps) if (!progress.has(step.id)) build.lag(begin, first(step.id), 0);
  links(build, { steps, first, last, progress });
  const serve = servings(build, { request, last, open });
  const ovenOn = oven(build, { ovenOnAt: options.ovenOnAt === undefined ? null : options.ovenOnAt - origin, request, steps, rules, way, first, last, open, begin, progress });
  const hotFrom = hotParts(build, { request, serve, last, open, progress });
  hands(build, { request, steps, pieces, progress });
  equipment(build, { request, steps, first, last, progress });
  const uses = build.uses.filter((use, i) => fits(build, use, i, progress));
  return {
    model: { activities: build.activities, resources: build.resources, uses, lags: build.lags, choices: build.choices, limits: [], horizon },
    origin, pieces, begin, serve, ovenOn, hotFrom, way, steps, minutes, lagDemands: build.lagDemands, resourceDemands: build.resourceDemands,
  };
}

/**
 * False for a use that the record of the evening makes impossible: what is over takes nothing any more, and where
 * more runs at once than the kitchen has, the surplus is already a fact.
 */
function fits(build: Builder, use: ResourceUse, index: number, progress: Progress): boolean {
  const past = (activity: number): StepProgress | undefined => progress.get(build.activities[activity]!.id);
  const last = past(use.to);
  if (!last) return true;
  if (last.doneAt !== null) return false;
  const running = build.uses.slice(0, index).filter((other) => other.resource === use.resource && past(other.to)?.doneAt === null);
  return running.reduce((sum, other) => sum + other.demand, use.demand) <= build.resources[use.resource]!.capacity;
}

type Ends = { readonly first: (id: string) => number; readonly last: (id: string) => number };

function links(build: Builder, { steps, first, last, progress }: Ends & { steps: readonly KitchenStep[]; progress: Progress }): void {
  const known = new Set(steps.map((step) => step.id));
  for (const step of steps) {
    for (const link of step.after) {
      if (!known.has(link.step)) continue;
      // What has begun has begun: its links cannot be kept any better.
      if (progress.has(step.id)) continue;
      const end = build.duration(last(link.step));
      build.lag(last(link.step), first(step.id), end + link.wait);
      if (link.within === null) continue;
      build.lag(first(step.id), last(link.step), -(end + Math.max(link.within, link.wait)), { kind: 'within', from: link.step, to: step.id, minutes: link.within, reason: link.reason });
    }
  }
}

function servings(build: Builder, { request, last, open }: { request: CookRequest; last: (id: string) => number; open: { earliest: number; latest: number } }): Map<number, number> {
  const serve = new Map<number, number>();
  const offsets = [...new Set(request.dishes.map((dish) => dish.servedAfter))].sort((a, b) => a - b);
  for (const offset of offsets) serve.set(offset, build.activity(`serve+${offset}`, 0, open));
  offsets.slice(1).forEach((offset, i) => build.lag(serve.get(offsets[i]!)!, serve.get(offset)!, offset - offsets[i]!));
  for (const dish of request.dishes) {
    const table = serve.get(dish.servedAfter)!;
    // Said for every step, not only the last: in live mode a later one may be ticked off before an earlier one.
    for (const step of dish.steps) if (!step.ahead) build.lag(last(step.id), table, build.duration(last(step.id)));
    for (const step of finalSteps(dish.steps)) {
      const end = build.duration(last(step.id));
      build.lag(table, last(step.id), -(end + dish.hold), { kind: 'hold', dish: dish.id, minutes: dish.hold, reason: dish.holdReason });
    }
  }
  return serve;
}

/** Off the heat, out of the oven or resting after it: what cools while it waits to be put together. */
const comesHot = (step: KitchenStep): boolean => step.ring || step.oven !== null || step.attention.kind === 'none';

/** The last steps of the hot dishes, and the hot parts that these put together. */
export function hotSteps(dish: KitchenDish): KitchenStep[] {
  if (!dish.hot) return [];
  const finals = finalSteps(dish.steps);
  const parts = finals.flatMap((step) => step.after.flatMap((link) => dish.steps.filter((other) => other.id === link.step && !other.ahead && comesHot(other))));
  return [...new Set([...finals, ...parts])];
}

function hotParts(build: Builder, { request, serve, last, open, progress }: { request: CookRequest; serve: ReadonlyMap<number, number>; last: (id: string) => number; open: { earliest: number; latest: number }; progress: Progress }): number | null {
  const parts = request.dishes.flatMap((dish) => hotSteps(dish).filter((step) => !progress.has(step.id)).map((step) => ({ step, after: dish.servedAfter - Math.min(...serve.keys()) })));
  if (parts.length === 0) return null;
  const from = build.activity('hot-from', 0, open);
  build.lag(from, serve.get(Math.min(...serve.keys()))!, 0);
  for (const { step, after } of parts) build.lag(from, last(step.id), after - build.duration(last(step.id)));
  return from;
}

/** Steps of a dish that no other step of it waits for. */
export function finalSteps(steps: readonly KitchenStep[]): KitchenStep[] {
  const followed = new Set(steps.flatMap((step) => step.after.map((link) => link.step)));
  return steps.filter((step) => step.ahead === null && !followed.has(step.id));
}

function oven(build: Builder, how: Ends & { ovenOnAt: number | null; request: CookRequest; steps: readonly KitchenStep[]; rules: KitchenRules; way: OvenWay; open: { earliest: number; latest: number }; begin: number; progress: Progress }): number | null {
  const users = how.steps.filter((step) => step.oven);
  if (users.length === 0) return null;
  const setting = (step: KitchenStep): number => how.way.get(step.oven!.celsius) ?? step.oven!.celsius;
  const resource = build.resource('oven', how.request.kitchen.shelves, { kind: 'resource', resource: 'oven', capacity: how.request.kitchen.shelves });
  for (const step of users) build.uses.push({ resource, from: how.first(step.id), to: how.last(step.id), demand: step.oven!.shelves });
  users.forEach((a, i) =>
    users.slice(i + 1).forEach((b) => {
      if (setting(a) === setting(b) || (how.progress.has(a.id) && how.progress.has(b.id))) return;
      build.choices.push({
        first: { from: how.last(a.id), to: how.first(b.id), ticks: build.duration(how.last(a.id)) + changeMinutes(setting(a), setting(b), how.rules) },
        second: { from: how.last(b.id), to: how.first(a.id), ticks: build.duration(how.last(b.id)) + changeMinutes(setting(b), setting(a), how.rules) },
      });
    }),
  );
  // Once something is or was in the oven it is hot: no second warming up.
  if (users.some((step) => how.progress.has(step.id))) return null;
  const on = build.activity('oven-on', 0, how.ovenOnAt === null ? how.open : { earliest: Math.max(0, how.ovenOnAt), latest: Math.max(0, how.ovenOnAt) });
  if (how.ovenOnAt === null) build.lag(how.begin, on, 0);
  for (const step of users) build.lag(on, how.first(step.id), changeMinutes(how.rules.roomCelsius, setting(step), how.rules));
  return on;
}

/**
 * What goes on the heat by itself still wants a hand to begin, and what burns or bakes wants one to end: with one cook neither falls
 * into the middle of a step that she cannot leave.
 */
function moments(build: Builder, { steps, pieces, progress }: { steps: readonly KitchenStep[]; pieces: ReadonlyMap<string, readonly number[]>; progress: Progress }): void {
  const alone = steps.filter((step) => !isActive(step) && (step.ring || step.oven !== null || step.places.length > 0));
  const bound = steps.filter((step) => step.attention.kind === 'stir');
  for (const one of alone) {
    const run = pieces.get(one.id)![0]!;
    for (const other of bound) {
      if (progress.has(one.id) && progress.has(other.id)) continue;
      const stir = pieces.get(other.id)![0]!;
      const length = build.duration(stir);
      if (!progress.has(one.id)) build.choices.push({ first: { from: run, to: stir, ticks: 0 }, second: { from: stir, to: run, ticks: length } });
      if (one.burns || one.oven !== null || one.places.length > 0) build.choices.push({ first: { from: run, to: stir, ticks: build.duration(run) }, second: { from: stir, to: run, ticks: length - build.duration(run) } });
    }
  }
}

function hands(build: Builder, { request, steps, pieces, progress }: { request: CookRequest; steps: readonly KitchenStep[]; pieces: ReadonlyMap<string, readonly number[]>; progress: Progress }): void {
  const { cooks } = request.kitchen;
  const resource = build.resource('hands', cooks, { kind: 'resource', resource: 'hands', capacity: cooks });
  for (const step of steps) if (isActive(step)) for (const part of pieces.get(step.id)!) build.uses.push({ resource, from: part, to: part, demand: step.cooks });
  if (cooks === 1) moments(build, { steps, pieces, progress });
  // A look every N minutes is impossible while every cook is bound to a pan for longer than that.
  for (const step of steps) {
    if (step.attention.kind !== 'glance' || progress.get(step.id)?.doneAt != null) continue;
    const { everyMinutes } = step.attention;
    const own = pieces.get(step.id)![0]!;
    if (build.duration(own) <= everyMinutes) continue;
    const bound = steps.filter((other) => other.attention.kind === 'stir' && build.duration(pieces.get(other.id)![0]!) > everyMinutes);
    if (bound.length < cooks) continue;
    const watch = build.resource(`watch ${step.id}`, cooks, { kind: 'resource', resource: `watch ${step.id}`, capacity: cooks });
    build.uses.push({ resource: watch, from: own, to: own, demand: 1 });
    for (const other of bound) build.uses.push({ resource: watch, from: pieces.get(other.id)![0]!, to: pieces.get(other.id)![0]!, demand: 1 });
  }
}

/** A pan that goes from one step on the heat to the next keeps its ring in between: water stays on the boil. */
function ringRuns(steps: readonly KitchenStep[]): KitchenStep[][] {
  const runs: KitchenStep[][] = [];
  let open = false;
  for (const step of steps) {
    if (step.ring && open) runs.at(-1)!.push(step);
    else if (step.ring) runs.push([step]);
    open = step.ring;
  }
  return runs;
}

function equipment(build: Builder, { request, steps, first, last, progress }: Ends & { request: CookRequest; steps: readonly KitchenStep[]; progress: Progress }): void {
  const { kitchen } = request;
  const take = (id: string, capacity: number, users: readonly { from: number; to: number }[]): void => {
    if (users.length === 0) return;
    const resource = build.resource(id, capacity, { kind: 'resource', resource: id, capacity });
    for (const user of users) build.uses.push({ resource, ...user, demand: 1 });
  };
  const own = (step: KitchenStep): { from: number; to: number } => ({ from: first(step.id), to: last(step.id) });
  for (const place of places) take(place, kitchen.places[place], steps.filter((step) => step.places.includes(place)).map(own));
  const vessels = new Map<string, { size: string; steps: KitchenStep[] }>();
  for (const dish of request.dishes) {
    for (const step of dish.steps) {
      if (!step.pan || step.ahead) continue;
      const key = `${dish.id}/${step.pan.name}`;
      const vessel = vessels.get(key) ?? { size: step.pan.size, steps: [] };
      vessel.steps.push(step);
      vessels.set(key, vessel);
    }
  }
  take('rings', kitchen.rings, [...steps.filter((step) => step.ring && !step.pan).map(own), ...[...vessels.values()].flatMap((vessel) => ringRuns(vessel.steps).map((run) => ({ from: first(run[0]!.id), to: last(run.at(-1)!.id) })))]);
  // One pan holds one thing at a time: its steps follow one another in the order they are written.
  for (const { steps: users } of vessels.values()) {
    users.slice(1).forEach((step, i) => progress.has(step.id) || build.lag(last(users[i]!.id), first(step.id), build.duration(last(users[i]!.id))));
  }
  for (const size of panSizes) {
    const users = [...vessels.values()].filter((vessel) => vessel.size === size).map((vessel) => ({ from: first(vessel.steps[0]!.id), to: last(vessel.steps.at(-1)!.id) }));
    take(`pan ${size}`, kitchen.pans[size], users);
  }
}
