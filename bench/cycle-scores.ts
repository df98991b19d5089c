import { coveredShare, crps, medianOf, nextCycle, nextOvulationDay, posterior, type CentralRange, type CycleModel, type DayDistribution, type ToldCycle } from '../src/core/cycle/index.ts';
import { normalCdf } from '../src/core/cycle/kernel.ts';
import type { Woman } from './cycle-worlds.ts';

export const rivals = ['last cycle', 'running mean', 'shrunk mean', 'population mean'] as const;
export type Rival = (typeof rivals)[number];

/** One forecast of one next start, made from the record that stood then. */
export interface Trial {
  readonly woman: string;
  /** Recorded cycles that the forecast saw: her newest ones. */
  readonly history: number;
  /** Whether those were all she had. */
  readonly all: boolean;
  readonly truth: number;
  readonly model: DayDistribution;
  readonly range: CentralRange;
  readonly points: Readonly<Partial<Record<Rival, number>>>;
}

export interface OvulationTrial {
  readonly history: number;
  readonly truth: number;
  readonly model: number;
  readonly shrunk: number;
}

export const mean = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0) / xs.length;
const sd = (xs: readonly number[]): number => Math.sqrt(mean(xs.map((x) => (x - mean(xs)) ** 2)));

/** Population figures taken from the very data being scored: a gift to the rivals, none to the model. */
export interface PopulationFigures {
  readonly mean: number;
  /** Within-woman over between-woman variance. */
  readonly ratio: number;
}

export function populationFigures(series: readonly (readonly number[])[]): PopulationFigures {
  const many = series.filter((x) => x.length >= 2);
  const within = many.reduce((a, x) => a + x.reduce((b, v) => b + (v - mean(x)) ** 2, 0), 0) / many.reduce((a, x) => a + x.length - 1, 0);
  const size = mean(many.map((x) => 1 / x.length));
  const between = Math.max(0.1, sd(many.map(mean)) ** 2 - within * size);
  return { mean: mean(series.flat()), ratio: within / between };
}

/** The record as written: a start left out joins two cycles into one long gap. */
function recordUpTo(woman: Woman, cycles: number): ToldCycle[] {
  const told: ToldCycle[] = [];
  let open = 0;
  for (let i = 0; i < cycles; i += 1) {
    open += woman.lengths[i]!;
    if (!woman.written[i]) continue;
    told.push({ length: open, ovulationDay: open === woman.lengths[i] ? woman.ovulations[i]! : null, slack: 0 });
    open = 0;
  }
  return told;
}

/** Every cycle of every woman, forecast from her newest 0, 1, 2 … `mostHistory` cycles before it. */
export function trialsOf(model: CycleModel, women: readonly Woman[], mostHistory: number): Trial[] {
  const figures = populationFigures(women.map((w) => recordUpTo(w, w.lengths.length).map((c) => c.length)).filter((x) => x.length > 0));
  const trials: Trial[] = [];
  for (const woman of women)
    for (let i = 0; i < woman.lengths.length; i += 1) {
      // Only where the last start was written down: else she has no day to count from.
      if (i > 0 && !woman.written[i - 1]) continue;
      const past = recordUpTo(woman, i).map((c) => ({ ...c, ovulationDay: null }));
      for (let n = 0; n <= Math.min(mostHistory, past.length); n += 1) {
        const told = past.slice(past.length - n);
        const lengths = told.map((c) => c.length);
        const next = nextCycle(model, { cycles: told, age: null });
        const shrunk = (lengths.reduce((a, b) => a + b, 0) + figures.ratio * figures.mean) / (n + figures.ratio);
        const points: Partial<Record<Rival, number>> = { 'population mean': figures.mean };
        if (n > 0) Object.assign(points, { 'last cycle': lengths[n - 1]!, 'running mean': mean(lengths), 'shrunk mean': shrunk });
        trials.push({ woman: woman.id, history: n, all: n === past.length, truth: woman.lengths[i]!, model: next.length, range: next.range, points });
      }
    }
  return trials;
}

export function ovulationTrialsOf(model: CycleModel, women: readonly Woman[], mostHistory: number): OvulationTrial[] {
  const figures = populationFigures(women.map((w) => w.ovulations.filter((o): o is number => o !== null)).filter((x) => x.length > 0));
  const trials: OvulationTrial[] = [];
  for (const woman of women)
    for (let i = 0; i < Math.min(woman.lengths.length, mostHistory + 1); i += 1) {
      const truth = woman.ovulations[i];
      if (truth === null || truth === undefined || (i > 0 && !woman.written[i - 1])) continue;
      const told = recordUpTo(woman, i);
      const past = told.flatMap((c) => (c.ovulationDay === null ? [] : [c.ovulationDay]));
      const shrunk = (past.reduce((a, b) => a + b, 0) + figures.ratio * figures.mean) / (past.length + figures.ratio);
      trials.push({ history: told.length, truth, shrunk, model: medianOf(nextOvulationDay(posterior(model, { cycles: told, age: null }))) });
    }
  return trials;
}

/** CRPS of a normal spread around a point, whole-day truth (Gneiting & Raftery 2007, eq. 21). */
function normalCrps(truth: number, point: number, deviation: number): number {
  const z = (truth - point) / deviation;
  return deviation * (z * (2 * normalCdf(z) - 1) + 2 * (Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI)) - 1 / Math.sqrt(Math.PI));
}

export interface Row {
  readonly history: number;
  readonly count: number;
  readonly crps: number;
  readonly mae: number;
  readonly rivals: Readonly<Partial<Record<Rival, { mae: number; spreadCrps: number }>>>;
}

export function rowsOf(trials: readonly Trial[], mostHistory: number): Row[] {
  return Array.from({ length: mostHistory + 1 }, (_, h) => trials.filter((t) => t.history === h)).flatMap((group, history) => {
    if (group.length === 0) return [];
    const row: Partial<Record<Rival, { mae: number; spreadCrps: number }>> = {};
    for (const rival of rivals) {
      const errors = group.flatMap((t) => (t.points[rival] === undefined ? [] : [t.truth - t.points[rival]]));
      if (errors.length === 0) continue;
      const deviation = Math.max(0.3, Math.sqrt(mean(errors.map((e) => e * e))));
      row[rival] = { mae: mean(errors.map(Math.abs)), spreadCrps: mean(errors.map((e) => normalCrps(e, 0, deviation))) };
    }
    return [{ history, count: group.length, crps: mean(group.map((t) => crps(t.model, t.truth))), mae: mean(group.map((t) => Math.abs(t.truth - medianOf(t.model)))), rivals: row }];
  });
}

export interface Coverage {
  readonly overall: number;
  readonly quarters: readonly number[];
  readonly width: number;
  /** Mean width among the three steadier quarters. */
  readonly ordinaryWidth: number;
  readonly count: number;
}

/** How often the 80 % range held the day, over the forecasts that saw all her cycles (0 to 12) and in each quarter of women by their own deviation of true lengths (women with 3 cycles or more). */
export function coverageOf(trials: readonly Trial[], women: readonly Woman[], fromHistory: number): Coverage {
  const own = women.filter((w) => w.lengths.length >= 3).map((w) => ({ id: w.id, deviation: sd(w.lengths) })).sort((a, b) => a.deviation - b.deviation);
  const quarter = new Map(own.map((w, i) => [w.id, Math.floor((4 * i) / own.length)]));
  const used = trials.filter((t) => t.all && t.history >= fromHistory);
  const hit = (ts: readonly Trial[]): number => mean(ts.map((t) => coveredShare(t.range, t.truth)));
  const width = (ts: readonly Trial[]): number => mean(ts.map((t) => t.range.high - t.range.low));
  return { overall: hit(used), quarters: [0, 1, 2, 3].map((q) => hit(used.filter((t) => quarter.get(t.woman) === q))), width: width(used), ordinaryWidth: width(used.filter((t) => (quarter.get(t.woman) ?? 3) < 3)), count: used.length };
}
