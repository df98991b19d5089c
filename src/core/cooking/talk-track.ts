import type { CookPlan, PlannedStep } from './cook-plan.ts';
import { looksOf } from './looks.ts';
import type { Paragraph } from './script-text.ts';

/** Seconds are clock seconds from midnight of the day of serving. */
export interface Spoken {
  readonly paragraph: Paragraph;
  readonly start: number;
  readonly end: number;
}

export interface LeftOut {
  readonly paragraph: Paragraph;
  readonly seconds: number;
  /** `no-step`: its anchor names no step; `too-long`: longer than every window where it belongs; `no-room`: others take the place. */
  readonly why: 'no-step' | 'too-long' | 'no-room';
  /** Longest stretch, in seconds, in which it could be said where it belongs. */
  readonly longest: number;
}

export interface DeadAir {
  readonly start: number;
  readonly end: number;
  /** Seconds of it in which she could speak. */
  readonly free: number;
}

export interface TalkTrack {
  readonly spoken: readonly Spoken[];
  readonly leftOut: readonly LeftOut[];
  readonly deadAir: readonly DeadAir[];
  readonly windows: readonly Window[];
}

export interface Window {
  readonly start: number;
  readonly end: number;
}

export interface TalkSettings {
  readonly wordsPerMinute: number;
  readonly deadAirSeconds: number;
  /** The cook who speaks, counted from 1. */
  readonly speaker: number;
  readonly cooks: number;
}

/** A line said "before" or "after" something is said within this many seconds of it. */
const near = 300;
/** Breath between two paragraphs, seconds. */
const breath = 2;

/** Stretches in which the speaker can talk without leaving anything: not bound to a pan or a noisy machine, cut where something that can burn wants a look or is done. */
export function talkWindows(plan: CookPlan, settings: TalkSettings): Window[] {
  const silent = plan.steps
    .filter(({ step }) => !step.talk)
    .flatMap((step) => (step.pieces.some((piece) => piece.cooks.length > 0) ? step.pieces.filter((piece) => piece.cooks.includes(settings.speaker)) : step.pieces))
    .map((piece) => ({ start: piece.start * 60, end: piece.end * 60 }));
  const fiery = plan.steps.filter(({ step }) => step.burns && step.attention.kind === 'glance');
  const cuts = new Set([...looksOf(fiery, settings.cooks).map((look) => look.minute * 60), ...fiery.map((step) => step.end * 60)]);
  const marks = [...new Set([plan.begin * 60, plan.end * 60, ...silent.flatMap((s) => [s.start, s.end]), ...cuts])].sort((a, b) => a - b);
  const windows: { start: number; end: number }[] = [];
  for (let i = 0; i + 1 < marks.length; i += 1) {
    const start = marks[i]!;
    const end = marks[i + 1]!;
    if (start < plan.begin * 60 || end > plan.end * 60) continue;
    if (silent.some((s) => s.start < end && s.end > start)) continue;
    const last = windows.at(-1);
    if (last && last.end === start && !cuts.has(start)) last.end = end;
    else windows.push({ start, end });
  }
  return windows;
}

/** Where a paragraph belongs; null when its anchor names no step. */
function placeOf(paragraph: Paragraph, plan: CookPlan): Window | null {
  const all = { start: plan.begin * 60, end: plan.end * 60 };
  const { anchor } = paragraph;
  if (!anchor) return all;
  if (anchor.kind === 'start') return { start: all.start, end: all.start + near };
  if (anchor.kind === 'serving') return { start: all.end - near, end: all.end };
  const step: PlannedStep | undefined = plan.steps.find((other) => other.step.id === anchor.step);
  if (!step) return null;
  if (anchor.kind === 'before') return { start: Math.max(all.start, step.start * 60 - near), end: step.start * 60 };
  if (anchor.kind === 'after') return { start: step.end * 60, end: Math.min(all.end, step.end * 60 + near) };
  return { start: step.start * 60, end: step.end * 60 };
}

const meets = (windows: readonly Window[], place: Window): Window[] =>
  windows.map((w) => ({ start: Math.max(w.start, place.start), end: Math.min(w.end, place.end) })).filter((w) => w.end > w.start);

interface State {
  readonly end: number;
  readonly worth: number;
  readonly chosen: readonly { index: number; start: number }[];
}

/**
 * Fits the script into the windows in its own order: as many words as possible, lines with a place of their own first (exact, by dynamic
 * programming over end times), then spread so that silences are even. No line runs across a moment at which something that can burn needs her.
 */
export function talkTrack(plan: CookPlan, paragraphs: readonly Paragraph[], settings: TalkSettings): TalkTrack {
  const windows = talkWindows(plan, settings);
  const seconds = paragraphs.map((paragraph) => Math.ceil((paragraph.words / settings.wordsPerMinute) * 60));
  const rooms = paragraphs.map((paragraph) => {
    const place = placeOf(paragraph, plan);
    return place ? meets(windows, place) : [];
  });
  let states: State[] = [{ end: Number.NEGATIVE_INFINITY, worth: 0, chosen: [] }];
  paragraphs.forEach((paragraph, index) => {
    const next = [...states];
    for (const state of states) {
      const room = rooms[index]!.find((w) => Math.max(w.start, state.end + breath) + seconds[index]! <= w.end);
      if (!room) continue;
      const start = Math.max(room.start, state.end + breath);
      next.push({ end: start + seconds[index]!, worth: state.worth + paragraph.words * (paragraph.anchor?.asked ? 1000 : paragraph.anchor ? 10 : 1), chosen: [...state.chosen, { index, start }] });
    }
    next.sort((a, b) => a.end - b.end || b.worth - a.worth);
    states = [];
    let most = Number.NEGATIVE_INFINITY;
    for (const state of next) {
      if (state.worth <= most) continue;
      most = state.worth;
      states.push(state);
    }
  });
  const best = states.reduce((most, state) => (state.worth > most.worth ? state : most));
  const starts = spread(best.chosen, rooms, seconds, plan, paragraphs);
  const spoken = best.chosen.map(({ index }, k): Spoken => ({ paragraph: paragraphs[index]!, start: starts[k]!, end: starts[k]! + seconds[index]! }));
  const placed = new Set(best.chosen.map(({ index }) => index));
  const leftOut = paragraphs.flatMap((paragraph, index): LeftOut[] => {
    if (placed.has(index)) return [];
    const longest = Math.max(0, ...rooms[index]!.map((w) => w.end - w.start));
    const nowhere = placeOf(paragraph, plan) === null;
    return [{ paragraph, seconds: seconds[index]!, longest, why: nowhere ? 'no-step' : seconds[index]! > longest ? 'too-long' : 'no-room' }];
  });
  return { spoken, leftOut, deadAir: silences(plan, spoken, windows, settings), windows };
}

/** Moves each line towards its anchor, or to the middle between its neighbours, within its windows: a few rounds even the silences out. */
// eslint-disable-next-line max-params -- a private step of talkTrack over its own tables
function spread(chosen: State['chosen'], rooms: readonly (readonly Window[])[], seconds: readonly number[], plan: CookPlan, paragraphs: readonly Paragraph[]): number[] {
  const starts = chosen.map(({ start }) => start);
  for (let round = 0; round < 40; round += 1) {
    chosen.forEach(({ index }, k) => {
      const length = seconds[index]!;
      const from = k === 0 ? plan.begin * 60 : starts[k - 1]! + seconds[chosen[k - 1]!.index]! + breath;
      const to = k + 1 === chosen.length ? plan.end * 60 : starts[k + 1]! - breath;
      const kind = paragraphs[index]!.anchor?.kind;
      const wish = kind === 'start' || kind === 'after' ? from : kind === 'serving' || kind === 'before' ? to - length : Math.round((from + to - length) / 2);
      let best = starts[k]!;
      for (const room of rooms[index]!) {
        const low = Math.max(room.start, from);
        const high = Math.min(room.end, to) - length;
        if (high < low) continue;
        const at = Math.min(high, Math.max(low, wish));
        if (Math.abs(at - wish) < Math.abs(best - wish)) best = at;
      }
      starts[k] = best;
    });
  }
  return starts;
}

function silences(plan: CookPlan, spoken: readonly Spoken[], windows: readonly Window[], settings: TalkSettings): DeadAir[] {
  const marks = [plan.begin * 60, ...spoken.flatMap((s) => [s.start, s.end]), plan.end * 60];
  const dead: DeadAir[] = [];
  for (let i = 0; i < marks.length; i += 2) {
    const start = marks[i]!;
    const end = marks[i + 1]!;
    if (end - start <= settings.deadAirSeconds) continue;
    const free = meets(windows, { start, end }).reduce((sum, w) => sum + w.end - w.start, 0);
    dead.push({ start, end, free });
  }
  return dead;
}
