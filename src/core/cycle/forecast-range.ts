import { quantileOf, type CentralRange, type DayDistribution } from './distribution.ts';
import type { Posterior } from './posterior.ts';

/**
 * A range that promises eight in ten must hold eight in ten for the steady and for the
 * irregular, not only on average over all women. The plain central 80 % of the forecast does
 * not: after a handful of cycles everybody is pulled towards the middle, so it holds too many
 * days for the steady and too few for the irregular. Therefore ranges are drawn (a) with a prior
 * in which women's spreads differ more, and (b) at a level that, while her spread is still
 * uncertain, leans lower for a woman who looks steady and higher for one who looks irregular;
 * once her spread is known it is the level asked for; (c) late days being the longer tail, more
 * of what is left outside lies on the late side, which makes the range shorter. The figures are
 * set on simulated women and checked there (bench/cycle.ts).
 */
export function rangeLevel(of: Posterior, coverage: number): number {
  const { spreadLogDeviation, spreadReference, doubtShift, doubtLean, levelLeast, levelMost } = of.model.parameters.range;
  const nS = of.model.spreads.length;
  let mean = 0;
  let square = 0;
  for (let i = 0; i < of.cells.length; i += 1) {
    const log = Math.log(of.model.spreads[of.cells[i]! % nS]!);
    mean += of.rangeWeights[i]! * log;
    square += of.rangeWeights[i]! * log * log;
  }
  // 1 before any cycle, towards 0 as her own spread becomes known.
  const doubt = Math.sqrt(Math.max(0, square - mean * mean)) / spreadLogDeviation;
  const at80 = Math.min(levelMost, Math.max(levelLeast, 0.8 + doubt * (doubtLean * (mean - Math.log(spreadReference)) - doubtShift)));
  // Other coverages move in the same proportion of what is left outside.
  const outside = ((1 - coverage) * (1 - at80)) / 0.2;
  return Math.min(0.98, Math.max(0.3, 1 - outside));
}

/** The shown range of a forecast made with the range weights; ends lie inside days (see quantileOf). */
export function shownRange(of: Posterior, underRangeWeights: DayDistribution, coverage = 0.8): CentralRange {
  const outside = 1 - rangeLevel(of, coverage);
  const below = outside * of.model.parameters.range.earlyShare;
  return { low: quantileOf(underRangeWeights, below), high: quantileOf(underRangeWeights, 1 - outside + below) };
}
