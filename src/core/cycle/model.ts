import { assert } from '../../errors.ts';
import { convolve, dayKernel } from './kernel.ts';
import type { CycleParameters } from './parameters.ts';

/** Longest single cycle that the model gives any chance, days. */
export const longestCycle = 150;
/** Longest luteal phase that the model gives any chance, days. */
export const longestLuteal = 30;

/**
 * The model's tables, built once from its parameters. A *cell* is one pair of a typical length
 * and an own spread; a *state* is a cell with a kind of record keeper. Nothing here depends on
 * any woman.
 */
export interface CycleModel {
  readonly parameters: CycleParameters;
  readonly typical: Float64Array;
  readonly spreads: Float64Array;
  readonly luteals: Float64Array;
  readonly cells: number;
  /** Chance of each true length: row per cell, `longestCycle + 1` wide. */
  readonly length: Float64Array;
  /** First and last length with more than a trace of chance, per cell. */
  readonly lengthFrom: Int16Array;
  readonly lengthTo: Int16Array;
  /** Log chance of each recorded gap between two entries: row per gap, one column per state (cell × keeper). */
  readonly logRecorded: Float64Array;
  /** Chance that ovulation falls on a day (1-based, day 1 the first of the period): row per cell × luteal. */
  readonly ovulation: Float64Array;
  /** Chance of each luteal length: row per spread × luteal. */
  readonly lutealLength: Float64Array;
  /** Ovulation day with the luteal mean summed out (no ovulation of hers known): row per cell. */
  readonly ovulationPlain: Float64Array;
  /** Chance of each luteal mean given the typical length: row per typical length. */
  readonly lutealPrior: Float64Array;
}

/** Own within-woman luteal deviation for an own cycle deviation, days. */
export function lutealDeviation(parameters: CycleParameters, spread: number): number {
  const { withinShare, withinBend } = parameters.luteal;
  return (withinShare * spread) / Math.sqrt(1 + (spread / withinBend) ** 2);
}

function typicalGrid(parameters: CycleParameters): Float64Array {
  const points: number[] = [];
  for (const { from, to, step } of parameters.grid.typical) for (let m = from; m < to - 1e-9; m += step) points.push(m);
  return Float64Array.from(points);
}

/** Builds the tables (about a tenth of a second). */
export function buildCycleModel(parameters: CycleParameters): CycleModel {
  const typical = typicalGrid(parameters);
  const spreads = Float64Array.from(parameters.grid.spreads);
  const luteals = Float64Array.from(parameters.grid.luteals);
  const [nT, nS, nL] = [typical.length, spreads.length, luteals.length];
  assert(nT > 1 && nS > 1 && nL > 1, 'the cycle grid wants points');
  const cells = nT * nS;
  const width = longestCycle + 1;

  const lutealPrior = new Float64Array(nT * nL);
  for (let t = 0; t < nT; t += 1) {
    const centre = parameters.luteal.mean + parameters.luteal.lengthSlope * (typical[t]! - parameters.ownSpread.lengthReference);
    let total = 0;
    for (let l = 0; l < nL; l += 1) {
      const w = Math.exp(-0.5 * ((luteals[l]! - centre) / parameters.luteal.betweenDeviation) ** 2);
      lutealPrior[t * nL + l] = w;
      total += w;
    }
    for (let l = 0; l < nL; l += 1) lutealPrior[t * nL + l]! /= total;
  }

  const lutealLength = new Float64Array(nS * nL * (longestLuteal + 1));
  const lutealRow = (s: number, l: number): Float64Array => lutealLength.subarray((s * nL + l) * (longestLuteal + 1), (s * nL + l + 1) * (longestLuteal + 1));
  for (let s = 0; s < nS; s += 1)
    for (let l = 0; l < nL; l += 1) lutealRow(s, l).set(dayKernel(luteals[l]!, lutealDeviation(parameters, spreads[s]!), longestLuteal, parameters.lutealShape));

  const ovulation = new Float64Array(cells * nL * width);
  const ovulationPlain = new Float64Array(cells * width);
  const length = new Float64Array(cells * width);
  for (let t = 0; t < nT; t += 1)
    for (let s = 0; s < nS; s += 1) {
      const cell = t * nS + s;
      const follicular = Math.sqrt(spreads[s]! ** 2 - lutealDeviation(parameters, spreads[s]!) ** 2);
      for (let l = 0; l < nL; l += 1) {
        const row = dayKernel(typical[t]! - luteals[l]!, follicular, longestCycle, parameters.follicularShape);
        ovulation.set(row, (cell * nL + l) * width);
        const w = lutealPrior[t * nL + l]!;
        const sum = convolve(row, lutealRow(s, l), longestCycle);
        for (let d = 0; d < width; d += 1) {
          ovulationPlain[cell * width + d]! += w * row[d]!;
          length[cell * width + d]! += w * sum[d]!;
        }
      }
    }
  const lengthFrom = new Int16Array(cells);
  const lengthTo = new Int16Array(cells);
  for (let cell = 0; cell < cells; cell += 1) {
    const row = length.subarray(cell * width, (cell + 1) * width);
    lengthFrom[cell] = row.findIndex((p) => p > 1e-7);
    lengthTo[cell] = row.findLastIndex((p) => p > 1e-7);
  }
  return { parameters, typical, spreads, luteals, cells, length, lengthFrom, lengthTo, ovulation, lutealLength, ovulationPlain, lutealPrior, logRecorded: recordedTable(parameters, length, cells) };
}

/** Log chance of a recorded gap when up to three starts inside it were never written down. */
function recordedTable(parameters: CycleParameters, length: Float64Array, cells: number): Float64Array {
  const keepers = parameters.missedEntry;
  const width = longestCycle + 1;
  const longest = parameters.longestTold;
  const states = cells * keepers.length;
  const table = new Float64Array((longest + 1) * states);
  for (let cell = 0; cell < cells; cell += 1) {
    const one = length.subarray(cell * width, (cell + 1) * width);
    const two = convolve(one, one, longest);
    const three = convolve(two, one, longest);
    const four = convolve(three, one, longest);
    keepers.forEach(({ chance }, k) => {
      for (let g = 1; g <= longest; g += 1) {
        const p = (1 - chance) * ((one[g] ?? 0) + chance * (two[g]! + chance * (three[g]! + chance * four[g]!)));
        // A small even floor: one wild entry may not rule a cell out.
        table[g * states + cell * keepers.length + k] = Math.log(p + 1e-7);
      }
    });
  }
  return table;
}
