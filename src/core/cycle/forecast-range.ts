import { quantileOf, type CentralRange, type DayDistribution } from './distribution.ts';
import type { Posterior } from './posterior.ts';

/**
 * A range that promises eight in ten must hold eight in ten for the steady and for the
 * irregular, not only on average over all women: the plain central 80 % of the forecast holds
 * too many days for the steady and too few for the irregular, because after a handful of
 * cycles everybody is pulled towards the middle. So ranges are drawn (a) with a prior in which
 * women's spreads differ more, and (b) at a level that rises a little with the spread she has
 * shown; (c) late days being the longer tail, more of what is left outside lies on the late
 * side, which makes the range shorter. All figures are set on simulated women (bench/cycle.ts) and checked there.
 */
export function rangeLevel(of: Posterior, coverage: number): number {
  const { levelAtReference, levelPerLogSpread, spreadReference } = of.model.parameters.range;
  const nS = of.model.spreads.length;
  let logSpread = 0;
  of.cells.forEach((cell, i) => (logSpread += of.rangeWeights[i]! * Math.log(of.model.spreads[cell % nS]!)));
  const at80 = levelAtReference + levelPerLogSpread * (logSpread - Math.log(spreadReference));
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
