import { distribution, type DayDistribution } from './distribution.ts';
import { longestCycle } from './model.ts';
import type { Posterior } from './posterior.ts';

const width = longestCycle + 1;

/** Which weights a forecast is made with: the plain ones, or those for drawing ranges. */
export type Weighting = 'plain' | 'range';

/** Adds `weight` times a row of a table to `mass`, between two places. */
function addRow(mass: Float64Array, table: Float64Array, at: { row: number; from: number; to: number }, weight: number): void {
  const { row, from, to } = at;
  for (let d = from; d <= to; d += 1) mass[d]! += weight * table[row + d]!;
}

/** Chances of the length of her next whole cycle, days. */
export function nextLength(of: Posterior, weighting: Weighting = 'plain'): DayDistribution {
  const { model, cells } = of;
  const weights = weighting === 'plain' ? of.weights : of.rangeWeights;
  const mass = new Float64Array(width);
  for (let i = 0; i < cells.length; i += 1) {
    const w = weights[i]!;
    if (w < 1e-6) continue;
    const cell = cells[i]!;
    addRow(mass, model.length, { row: cell * width, from: model.lengthFrom[cell]!, to: model.lengthTo[cell]! }, w);
  }
  return distribution(0, mass);
}

/** Chances of the day of ovulation in her next whole cycle (day 1 the first of the period). */
export function nextOvulationDay(of: Posterior): DayDistribution {
  const { model, cells } = of;
  const nL = model.luteals.length;
  const mass = new Float64Array(width);
  for (let i = 0; i < cells.length; i += 1) {
    const w = of.weights[i]!;
    if (w < 1e-5) continue;
    const cell = cells[i]!;
    const to = model.lengthTo[cell]!;
    if (of.luteal === null) {
      addRow(mass, model.ovulationPlain, { row: cell * width, from: 1, to }, w);
      continue;
    }
    for (let l = 0; l < nL; l += 1) {
      const share = w * of.luteal[i * nL + l]!;
      if (share >= 1e-5) addRow(mass, model.ovulation, { row: (cell * nL + l) * width, from: 1, to }, share);
    }
  }
  return distribution(0, mass);
}
