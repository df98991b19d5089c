import { longestCycle, longestLuteal } from './model.ts';
import type { Posterior } from './posterior.ts';

/** What is known of the cycle that is running: days gone, and signs of ovulation in it. */
export interface RunningCycle {
  /** Whole days since the last recorded start: 0 on that very day. No other start is recorded in them. */
  readonly elapsed: number;
  /** Whether she says that none came; else one may have gone unrecorded. */
  readonly confirmed: boolean;
  /** Relative chance of her signs if ovulation fell on each day (index 1 is the first of the period); null for no signs. */
  readonly signs: Float64Array | null;
}

/** The running cycle under one cell of the model. */
export interface RunningCell {
  /** Share of the whole under the plain and the range weights, after what the running cycle shows. */
  readonly weight: number;
  readonly rangeWeight: number;
  readonly cell: number;
  /** Chance of the next start on each day after the last recorded one; sums to one. */
  readonly nextStart: Float64Array;
  /** Chance of ovulation on each day of the running cycle, this being still the same cycle. */
  readonly ovulation: Float64Array;
  /** Share in which a start went unrecorded during the days gone. */
  readonly unrecorded: number;
}

const width = longestCycle + 1;

/** Works the running cycle out under every cell that carries weight. */
export function runningCycle(of: Posterior, running: RunningCycle): RunningCell[] {
  const cells: RunningCell[] = [];
  of.cells.forEach((cell, i) => {
    if (of.weights[i]! < 1e-5 && of.rangeWeights[i]! < 1e-5) return;
    const { start, ovulation } = sameCycle(of, i, running);
    const open = sum(start);
    const missed = running.confirmed || running.elapsed === 0 ? new Float64Array(1) : unrecordedStart(of, cell, running.elapsed);
    const missedTotal = sum(missed);
    const evidence = open + missedTotal;
    if (!(evidence > 1e-14)) return;
    const nextStart = new Float64Array(width);
    for (let d = 1; d < width; d += 1) nextStart[d] = (start[d]! + (missed[d] ?? 0)) / evidence;
    const ovulations = sum(ovulation);
    if (ovulations > 0) for (let d = 1; d < width; d += 1) ovulation[d]! /= ovulations;
    cells.push({ cell, weight: of.weights[i]! * evidence, rangeWeight: of.rangeWeights[i]! * evidence, nextStart, ovulation, unrecorded: missedTotal / evidence });
  });
  const plain = cells.reduce((a, c) => a + c.weight, 0);
  const range = cells.reduce((a, c) => a + c.rangeWeight, 0);
  if (!(plain > 0) || !(range > 0)) return farBeyond(of, running.elapsed);
  return cells.map((c) => ({ ...c, weight: c.weight / plain, rangeWeight: c.rangeWeight / range }));
}

const sum = (xs: Float64Array): number => xs.reduce((a, b) => a + b, 0);

/** Lengths beyond the days gone and ovulation days, weighed by the signs; not scaled to one. */
function sameCycle(of: Posterior, i: number, running: RunningCycle): { start: Float64Array; ovulation: Float64Array } {
  const { model } = of;
  const cell = of.cells[i]!;
  const start = new Float64Array(width);
  const ovulation = new Float64Array(width);
  if (running.signs === null && running.elapsed === 0 && of.luteal === null) {
    start.set(model.length.subarray(cell * width, (cell + 1) * width));
    ovulation.set(model.ovulationPlain.subarray(cell * width, (cell + 1) * width));
    return { start, ovulation };
  }
  const nL = model.luteals.length;
  const nS = model.spreads.length;
  const t = Math.floor(cell / nS);
  const s = cell % nS;
  // Without signs the length does not care where ovulation fell: its row need only be cut off.
  const cutOnly = running.signs === null && of.luteal === null;
  if (cutOnly) for (let d = running.elapsed + 1; d <= model.lengthTo[cell]!; d += 1) start[d] = model.length[cell * width + d]!;
  for (let l = 0; l < nL; l += 1) {
    const share = of.luteal ? of.luteal[i * nL + l]! : model.lutealPrior[t * nL + l]!;
    if (share < 1e-4) continue;
    const beyond = lutealBeyond(model.lutealLength, (s * nL + l) * (longestLuteal + 1));
    const ovulationRow = (cell * nL + l) * width;
    const lutealRow = (s * nL + l) * (longestLuteal + 1);
    for (let o = 1; o < width; o += 1) {
      const p = share * model.ovulation[ovulationRow + o]! * (running.signs ? running.signs[o]! : 1);
      if (p < 1e-9) continue;
      const least = Math.max(1, running.elapsed + 1 - o);
      if (least > longestLuteal) continue;
      ovulation[o]! += p * beyond[least]!;
      if (!cutOnly) for (let k = least; k <= longestLuteal && o + k < width; k += 1) start[o + k]! += p * model.lutealLength[lutealRow + k]!;
    }
  }
  return { start, ovulation };
}

/** Chance of a luteal phase of at least each length. */
function lutealBeyond(table: Float64Array, row: number): Float64Array {
  const beyond = new Float64Array(longestLuteal + 2);
  for (let k = longestLuteal; k >= 0; k -= 1) beyond[k] = beyond[k + 1]! + table[row + k]!;
  return beyond;
}

/** A start inside the days gone that nobody wrote down, and then the next one; not scaled to one. */
function unrecordedStart(of: Posterior, cell: number, elapsed: number): Float64Array {
  const row = of.model.length.subarray(cell * width, (cell + 1) * width);
  const start = new Float64Array(width);
  for (let first = 1; first <= Math.min(elapsed, longestCycle); first += 1) {
    const p = of.missedChance * row[first]!;
    if (p < 1e-12) continue;
    for (let d = Math.max(elapsed + 1, first + 1); d < width; d += 1) start[d]! += p * row[d - first]!;
  }
  return start;
}

/** More days have gone than the model gives any chance: all it can say is "from tomorrow on". */
function farBeyond(of: Posterior, elapsed: number): RunningCell[] {
  const nextStart = new Float64Array(Math.max(width, elapsed + 62));
  for (let d = elapsed + 1; d <= elapsed + 60; d += 1) nextStart[d] = 1 / 60;
  return [{ cell: of.cells[0]!, weight: 1, rangeWeight: 1, nextStart, ovulation: new Float64Array(width), unrecorded: 0 }];
}
