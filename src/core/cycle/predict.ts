import { distribution, type DayDistribution } from './distribution.ts';
import { longestCycle } from './model.ts';
import type { Posterior } from './posterior.ts';

/** Which weights a forecast is made with: the plain ones, or those for drawing ranges. */
export type Weighting = 'plain' | 'range';

/** Chances of the length of her next whole cycle, days. */
export function nextLength(of: Posterior, weighting: Weighting = 'plain'): DayDistribution {
  const weights = weighting === 'plain' ? of.weights : of.rangeWeights;
  const width = longestCycle + 1;
  const mass = new Float64Array(width);
  of.cells.forEach((cell, i) => {
    const w = weights[i]!;
    if (w < 1e-6) return;
    const row = cell * width;
    for (let d = 1; d < width; d += 1) mass[d]! += w * of.model.length[row + d]!;
  });
  return distribution(0, mass);
}

/** Chances of the day of ovulation in her next whole cycle (day 1 the first of the period). */
export function nextOvulationDay(of: Posterior): DayDistribution {
  const width = longestCycle + 1;
  const nL = of.model.luteals.length;
  const mass = new Float64Array(width);
  of.cells.forEach((cell, i) => {
    const w = of.weights[i]!;
    if (w < 1e-4) return;
    if (of.luteal === null) {
      for (let d = 1; d < width; d += 1) mass[d]! += w * of.model.ovulationPlain[cell * width + d]!;
      return;
    }
    for (let l = 0; l < nL; l += 1) {
      const share = w * of.luteal[i * nL + l]!;
      if (share < 1e-5) continue;
      const row = (cell * nL + l) * width;
      for (let d = 1; d < 80; d += 1) mass[d]! += share * of.model.ovulation[row + d]!;
    }
  });
  return distribution(0, mass);
}
