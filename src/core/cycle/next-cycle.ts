import { medianOf, type CentralRange, type DayDistribution } from './distribution.ts';
import { shownRange } from './forecast-range.ts';
import type { CycleModel } from './model.ts';
import { posterior, type Posterior, type Told } from './posterior.ts';
import { nextLength } from './predict.ts';

/** The forecast of a next whole cycle's length, seen from its first day. */
export interface NextCycle {
  readonly posterior: Posterior;
  readonly length: DayDistribution;
  readonly range: CentralRange;
  /** How much the range was drawn in by the rule of `heldRange` (1: not at all). */
  readonly held: number;
}

/**
 * Forecasts the next whole cycle. A cycle that came on the very day forecast can never make the
 * range wider: days being whole, and old cycles counting less, Bayes's rule alone would now and
 * then let it grow by a few hundredths of a day, and by days where a record leaves two readings
 * open (long cycles, or forgotten starts). There the range before it is kept.
 */
export function nextCycle(model: CycleModel, told: Told): NextCycle {
  const known = posterior(model, told);
  return fromKnown(told, known, nextLength(known));
}

function fromKnown(told: Told, known: Posterior, length: DayDistribution): NextCycle {
  const plain = shownRange(known, nextLength(known, 'range'));
  const free: NextCycle = { posterior: known, length, range: plain, held: 1 };
  const newest = told.cycles.at(-1);
  // A cycle on the day forecast moves the forecast but little: where it lies far off, most of the work is spared.
  const little = 2 + (plain.high - plain.low) / 10;
  if (!newest || Math.abs(newest.length - medianOf(length)) > little) return free;
  const before = { ...told, cycles: told.cycles.slice(0, -1) };
  const knownBefore = posterior(known.model, before);
  const lengthBefore = nextLength(knownBefore);
  if (medianOf(lengthBefore) !== newest.length) return free;
  const past = fromKnown(before, knownBefore, lengthBefore).range;
  const held = Math.min(1, (past.high - past.low) / (plain.high - plain.low));
  return { ...free, range: heldRange(plain, medianOf(length), held), held };
}

/** Draws a range in towards a day inside it by the factor `held`. */
export function heldRange(range: CentralRange, towards: number, held: number): CentralRange {
  const middle = Math.min(range.high, Math.max(range.low, towards));
  return { low: middle - (middle - range.low) * held, high: middle + (range.high - middle) * held };
}
