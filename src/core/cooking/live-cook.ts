import { cookPlan, solvePlan, type CookPlan, type SolvedPlan } from './cook-plan.ts';
import { finalSteps, type Progress, type StepProgress } from './kitchen-model.ts';
import { isActive, type CookRequest, type KitchenDish, type KitchenRules, type KitchenStep, type StepLink } from './kitchen.ts';
import { withSlack, type Chance } from './robustness.ts';
import type { SearchBudget } from './solve/plan-model.ts';

/** One step as the evening goes: whole clock minutes. */
export interface LiveStep {
  readonly id: string;
  readonly startedAt: number;
  readonly doneAt: number | null;
  /** Minutes she asked for on top of the usual ones. */
  readonly extra: number;
}

export type LiveNote =
  | { readonly kind: 'moved'; readonly minute: number; readonly from: number; readonly to: number }
  | { readonly kind: 'waits-too-long'; readonly minute: number; readonly step: string }
  | { readonly kind: 'crowded'; readonly minute: number };

/** All that live mode has to remember; plain data, stored after every tap. */
export interface LiveCook {
  readonly request: CookRequest;
  readonly plan: CookPlan;
  readonly steps: Readonly<Record<string, LiveStep>>;
  readonly notes: readonly LiveNote[];
  /** Counts the changes, so that an old answer never overwrites a newer one. */
  readonly revision: number;
}

export type Tap =
  | { readonly kind: 'done'; readonly step: string }
  | { readonly kind: 'start'; readonly step: string }
  | { readonly kind: 'more'; readonly step: string; readonly minutes: number }
  | { readonly kind: 'not-done'; readonly step: string };

export interface LiveTools {
  readonly rules: KitchenRules;
  readonly budget: SearchBudget;
  readonly chance: Chance;
}

/** Live mode keeps every step in one piece: a pause is a tap, not a plan. */
export function unbroken(request: CookRequest): CookRequest {
  return { ...request, dishes: request.dishes.map((dish) => ({ ...dish, steps: dish.steps.map((step) => ({ ...step, mayPause: false })) })) };
}

export function startLive(request: CookRequest, plan: CookPlan): LiveCook {
  return { request, plan, steps: {}, notes: [], revision: 0 };
}

const planned = (live: LiveCook, id: string): { start: number; end: number } => live.plan.steps.find((entry) => entry.step.id === id) ?? { start: 0, end: 0 };

/** When a running step will be over: as planned, plus what she asked for, never in the past. */
function expectedEnd(live: LiveCook, step: LiveStep, now: number): number {
  const usual = planned(live, step.id);
  return Math.max(step.startedAt + Math.max(1, usual.end - usual.start), step.startedAt + 1, now);
}

/** Begins what the plan says is due and can begin: what it needs is done and a cook is free. */
export function advance(live: LiveCook, minute: number): LiveCook {
  const now = Math.floor(minute);
  const steps: Record<string, LiveStep> = { ...live.steps };
  const running = (): LiveStep[] => Object.values(steps).filter((step) => step.doneAt === null);
  const stepOf = new Map(live.plan.steps.map((entry) => [entry.step.id, entry.step]));
  let changed = false;
  for (const entry of [...live.plan.steps].sort((a, b) => a.start - b.start)) {
    const { step } = entry;
    if (steps[step.id] || entry.start > now) continue;
    const ready = step.after.every((link) => !stepOf.has(link.step) || steps[link.step]?.doneAt != null);
    const busy = running().reduce((sum, other) => sum + (isActive(stepOf.get(other.id)!) ? stepOf.get(other.id)!.cooks : 0), 0);
    if (!ready || (isActive(step) && busy + step.cooks > live.request.kitchen.cooks)) continue;
    const freed = Math.max(entry.start, ...step.after.map((link) => steps[link.step]?.doneAt ?? 0));
    steps[step.id] = { id: step.id, startedAt: Math.min(now, freed), doneAt: null, extra: 0 };
    changed = true;
  }
  return changed ? { ...live, steps, revision: live.revision + 1 } : live;
}

/** One tap: the record changes and the rest is planned anew. What is done stays as it was. */
export function tapped(live: LiveCook, tap: Tap, at: number, tools: LiveTools): LiveCook {
  const now = Math.floor(at);
  const known = live.plan.steps.some((entry) => entry.step.id === tap.step);
  if (!known) return live;
  const current = live.steps[tap.step];
  const steps: Record<string, LiveStep> = { ...live.steps };
  const before = planned(live, tap.step);
  if (tap.kind === 'start') {
    if (current) return live;
    steps[tap.step] = { id: tap.step, startedAt: now, doneAt: null, extra: 0 };
  } else if (tap.kind === 'done') {
    if (current?.doneAt != null) return live;
    const startedAt = current?.startedAt ?? Math.min(before.start, now);
    steps[tap.step] = { id: tap.step, startedAt, doneAt: Math.max(startedAt, now), extra: current?.extra ?? 0 };
  } else if (tap.kind === 'not-done') {
    if (current?.doneAt == null) return live;
    steps[tap.step] = { ...current, doneAt: null };
  } else {
    if (current?.doneAt != null || !(tap.minutes > 0 && tap.minutes <= 240)) return live;
    const startedAt = current?.startedAt ?? Math.min(before.start, now);
    steps[tap.step] = { id: tap.step, startedAt, doneAt: null, extra: (current?.extra ?? 0) + Math.round(tap.minutes) };
  }
  const more = tap.kind === 'more' ? Math.round(tap.minutes) : 0;
  const record: LiveCook = { ...live, steps, revision: live.revision + 1 };
  return advance(replanned(record, { now, more: more > 0 ? { step: tap.step, minutes: more } : null }, tools), at);
}

function progressOf(live: LiveCook, now: number, more: { step: string; minutes: number } | null): Progress {
  const progress = new Map<string, StepProgress>();
  for (const step of Object.values(live.steps)) {
    const end = expectedEnd(live, step, now) + (more?.step === step.id ? more.minutes : 0);
    progress.set(step.id, { startedAt: step.startedAt, doneAt: step.doneAt, expectedEnd: end });
  }
  return progress;
}

/** Links that the evening has already made impossible are let go, with a note, so that there is always a next plan. */
function withoutBroken(live: LiveCook, now: number, all: boolean): { request: CookRequest; broken: string[] } {
  const broken: string[] = [];
  const loosen = (step: KitchenStep, link: StepLink): StepLink => {
    const before = live.steps[link.step];
    if (link.within === null || live.steps[step.id]) return link;
    const late = before?.doneAt != null && now > before.doneAt + link.within;
    if (!late && !all) return link;
    if (late) broken.push(link.step);
    return { ...link, within: null };
  };
  // What stands ready already cannot be made to wait less than until the table.
  const ready = (dish: KitchenDish): boolean => finalSteps(dish.steps).some((step) => live.steps[step.id] !== undefined);
  const request = {
    ...live.request,
    dishes: live.request.dishes.map((dish) => ({ ...dish, hold: all || ready(dish) ? 1440 : dish.hold, steps: dish.steps.map((step) => ({ ...step, after: step.after.map((link) => loosen(step, link)) })) })),
  };
  return { request, broken };
}

/** Plans what has not begun anew from `now`, the serving wish kept; everything begun or done stays where it was. */
export function replanned(live: LiveCook, change: { now: number; more: { step: string; minutes: number } | null }, tools: LiveTools): LiveCook {
  const { now } = change;
  const progress = progressOf(live, now, change.more);
  const minutes = new Map(live.plan.steps.map((entry) => [entry.step.id, Math.max(1, entry.pieces.reduce((sum, piece) => sum + piece.end - piece.start, 0))]));
  const hot = live.plan.oven[0];
  const notes: LiveNote[] = [];
  for (const all of [false, true]) {
    const { request, broken } = withoutBroken(live, now, all);
    const outcome = solvePlan({ request: wished(request, live.plan), rules: tools.rules, budget: tools.budget, progress, minutes, now, ...(hot && hot.minute <= now ? { ovenOnAt: hot.minute } : {}) }, 'forward');
    if (outcome.kind !== 'solved') continue;
    if (all) notes.push({ kind: 'crowded', minute: now });
    for (const step of new Set(broken)) if (!live.notes.some((note) => note.kind === 'waits-too-long' && note.step === step)) notes.push({ kind: 'waits-too-long', minute: now, step });
    const solved: SolvedPlan = withSlack(outcome.plan, tools.rules, tools.chance);
    const plan = cookPlan({ ...solved, request: wished(request, live.plan) }, tools.rules);
    if (plan.end !== live.plan.end) notes.push({ kind: 'moved', minute: now, from: live.plan.end, to: plan.end });
    return { ...live, plan, notes: [...live.notes, ...notes].slice(-20) };
  }
  return { ...live, notes: [...live.notes, { kind: 'crowded' as const, minute: now }].slice(-20) };
}

/** However the first plan was asked for, the wish from now on is the serving time it promised. */
function wished(request: CookRequest, plan: CookPlan): CookRequest {
  if (request.when.kind === 'serve-at') return request;
  return { ...request, when: { kind: 'serve-at', minute: plan.servings[0]!.minute, notBefore: null } };
}

/** Moves up to a minute: begins what is due and, where something that was due could not begin, plans the rest anew. */
export function caughtUp(live: LiveCook, minute: number, tools: LiveTools): LiveCook {
  const now = Math.floor(minute);
  const moved = advance(live, minute);
  const behind = moved.plan.steps.some((entry) => !moved.steps[entry.step.id] && entry.start < now);
  if (!behind) return moved;
  return advance(replanned({ ...moved, revision: moved.revision + 1 }, { now, more: null }, tools), minute);
}

/** True when every step is done: the evening is over. */
export const finished = (live: LiveCook): boolean => live.plan.steps.every((entry) => live.steps[entry.step.id]?.doneAt != null);
