import { addDays, type Day } from '../calendar/index.ts';
import { seededRandom, type RandomSource } from '../quantity/index.ts';
import { runningCycle, type RunningCell, type RunningCycle } from './current-cycle.ts';
import { longestCycle, longestLuteal } from './model.ts';
import type { CycleShape } from './phases.ts';
import type { Posterior } from './posterior.ts';

/** A cycle placed on the calendar. */
export interface PlacedCycle extends CycleShape {
  readonly start: Day;
}

/** One way in which the coming weeks may go: cycles one after another from the last start on. */
export type Future = readonly PlacedCycle[];

export interface FuturesRequest {
  readonly lastStart: Day;
  readonly running: RunningCycle;
  /** The last day that every future must reach. */
  readonly until: Day;
  readonly count: number;
  readonly seed: number;
  /** Her own days of bleeding, mean and deviation; null takes the population's. */
  readonly bleed: { readonly mean: number; readonly deviation: number } | null;
}

const width = longestCycle + 1;

/** Draws a place in `row` in proportion to its masses; −1 when it holds none. */
function drawFrom(row: ArrayLike<number>, random: RandomSource): number {
  let total = 0;
  for (let i = 0; i < row.length; i += 1) total += row[i]!;
  if (!(total > 0)) return -1;
  let left = random.uniform() * total;
  for (let i = 0; i < row.length; i += 1) if ((left -= row[i]!) < 0) return i;
  for (let i = row.length - 1; i >= 0; i -= 1) if (row[i]! > 0) return i;
  return -1;
}

interface Maker {
  readonly of: Posterior;
  readonly index: number;
  readonly cell: number;
  readonly random: RandomSource;
  readonly bleedDays: () => number;
}

/** A whole cycle drawn under one cell: luteal mean, ovulation, luteal length; longer than `elapsed`. */
function drawCycle(maker: Maker, elapsed: number, signs: Float64Array | null): CycleShape | null {
  const { of, index, cell, random } = maker;
  const { model } = of;
  const nL = model.luteals.length;
  const nS = model.spreads.length;
  const t = Math.floor(cell / nS);
  const s = cell % nS;
  const shares = of.luteal ? of.luteal.subarray(index * nL, (index + 1) * nL) : model.lutealPrior.subarray(t * nL, (t + 1) * nL);
  for (let attempt = 0; attempt < 20; attempt += 1) {
    const l = drawFrom(shares, random);
    const row = model.ovulation.subarray((cell * nL + l) * width, (cell * nL + l + 1) * width);
    const luteal = model.lutealLength.subarray((s * nL + l) * (longestLuteal + 1), (s * nL + l + 1) * (longestLuteal + 1));
    const plain = signs === null && elapsed === 0;
    const ovulationDay = drawFrom(plain ? row : openRow(row, luteal, elapsed, signs), random);
    if (ovulationDay < 1) continue;
    const open = luteal.slice();
    for (let k = 0; k <= Math.min(longestLuteal, elapsed - ovulationDay); k += 1) open[k] = 0;
    const lutealDays = drawFrom(open, random);
    if (lutealDays < 1) continue;
    return { ovulationDay, length: ovulationDay + lutealDays, bleedDays: maker.bleedDays() };
  }
  return null;
}

/** Chance of each ovulation day together with the cycle outlasting the days gone. */
function openRow(row: Float64Array, luteal: Float64Array, elapsed: number, signs: Float64Array | null): Float64Array {
  const beyond = new Float64Array(longestLuteal + 2);
  for (let k = longestLuteal; k >= 0; k -= 1) beyond[k] = beyond[k + 1]! + luteal[k]!;
  return row.map((p, o) => (o < 1 ? 0 : p * (signs ? signs[o]! : 1) * beyond[Math.min(longestLuteal + 1, Math.max(0, elapsed - o + 1))]!));
}

/** The cycles from the last recorded start up to the one that is running, and on to `until`. */
function drawFuture(maker: Maker, request: FuturesRequest, unrecorded: number): PlacedCycle[] {
  const { running, lastStart, until } = request;
  const cycles: PlacedCycle[] = [];
  let at = 0;
  if (maker.random.uniform() < unrecorded) {
    // A start went unrecorded: a first cycle that ended inside the days gone.
    for (let attempt = 0; attempt < 40; attempt += 1) {
      const first = drawCycle(maker, 0, null);
      if (first && first.length <= running.elapsed) {
        cycles.push({ ...first, start: lastStart });
        at = first.length;
        break;
      }
    }
  }
  const current = drawCycle(maker, running.elapsed - at, at === 0 ? running.signs : null) ?? { ovulationDay: Math.max(1, running.elapsed - at), length: running.elapsed - at + 1, bleedDays: maker.bleedDays() };
  cycles.push({ ...current, start: addDays(lastStart, at) });
  at += current.length;
  while (lastStart + at <= until) {
    const next = drawCycle(maker, 0, null);
    if (!next) break;
    cycles.push({ ...next, start: addDays(lastStart, at) });
    at += next.length;
  }
  return cycles;
}

/**
 * Draws ways in which the coming weeks may go, each as likely as another. The model's cells are
 * visited in proportion to their weight (systematic sampling), so that a few thousand futures
 * give shares good to about one in a hundred. The same seed gives the same futures.
 */
export function drawFutures(of: Posterior, request: FuturesRequest): Future[] {
  const random = seededRandom(request.seed);
  const cells: RunningCell[] = runningCycle(of, request.running);
  const indexOf = new Map([...of.cells].map((cell, i) => [cell, i]));
  const bleed = request.bleed ?? of.model.parameters.bleed;
  const bleedDays = (): number => Math.max(1, Math.min(14, Math.round(bleed.mean + bleed.deviation * random.normal())));
  const futures: Future[] = [];
  let sum = 0;
  let next = random.uniform();
  for (const cell of cells) {
    sum += cell.weight * request.count;
    const maker: Maker = { of, index: indexOf.get(cell.cell)!, cell: cell.cell, random, bleedDays };
    while (next < sum && futures.length < request.count) {
      futures.push(drawFuture(maker, request, cell.unrecorded));
      next += 1;
    }
  }
  return futures;
}
