import { assert } from '../../errors.ts';

/**
 * Chances over consecutive whole numbers (days, or lengths in days): `mass[i]` is the chance of
 * `first + i`. The masses sum to one.
 */
export interface DayDistribution {
  readonly first: number;
  readonly mass: Float64Array;
}

/** Scales masses to a sum of one and drops empty ends. */
export function distribution(first: number, mass: ArrayLike<number>): DayDistribution {
  let total = 0;
  let from = -1;
  let to = -1;
  for (let i = 0; i < mass.length; i += 1) {
    const m = mass[i]!;
    if (m > 0) {
      if (from < 0) from = i;
      to = i;
      total += m;
    }
  }
  assert(total > 0 && Number.isFinite(total), `a distribution wants mass, got ${total}`);
  const kept = new Float64Array(to - from + 1);
  for (let i = from; i <= to; i += 1) kept[i - from] = mass[i]! / total;
  return { first: first + from, mass: kept };
}

/** The same chances, every value moved by `by` days. */
export function shifted(of: DayDistribution, by: number): DayDistribution {
  return { first: of.first + by, mass: of.mass };
}

/** The chance of exactly `value`. */
export function chanceOf(of: DayDistribution, value: number): number {
  return of.mass[value - of.first] ?? 0;
}

/** The chance of a value from `low` to `high`, both included. */
export function chanceBetween(of: DayDistribution, low: number, high: number): number {
  let sum = 0;
  for (let v = Math.max(low, of.first); v <= Math.min(high, of.first + of.mass.length - 1); v += 1) sum += chanceOf(of, v);
  return sum;
}

/** The mean, in the unit of the values. */
export function meanOf(of: DayDistribution): number {
  let sum = 0;
  for (let i = 0; i < of.mass.length; i += 1) sum += of.mass[i]! * (of.first + i);
  return sum;
}

/** The standard deviation, in the unit of the values. */
export function deviationOf(of: DayDistribution): number {
  const mean = meanOf(of);
  let sum = 0;
  for (let i = 0; i < of.mass.length; i += 1) sum += of.mass[i]! * (of.first + i - mean) ** 2;
  return Math.sqrt(sum);
}

/**
 * The point below which the share `q` lies when each value's mass is spread evenly over
 * [value − ½, value + ½]. Interpolating inside a day keeps an 80 % interval at 80 %: whole
 * days alone could only over-cover or under-cover.
 */
export function quantileOf(of: DayDistribution, q: number): number {
  let sum = 0;
  for (let i = 0; i < of.mass.length; i += 1) {
    const m = of.mass[i]!;
    if (sum + m >= q && m > 0) return of.first + i - 0.5 + (q - sum) / m;
    sum += m;
  }
  return of.first + of.mass.length - 0.5;
}

/** The smallest value that at least half the mass does not exceed: the best single day under absolute error. */
export function medianOf(of: DayDistribution): number {
  let sum = 0;
  for (let i = 0; i < of.mass.length; i += 1) {
    sum += of.mass[i]!;
    if (sum >= 0.5 - 1e-12) return of.first + i;
  }
  return of.first + of.mass.length - 1;
}

/** A central range with ends inside days (see quantileOf). */
export interface CentralRange {
  readonly low: number;
  readonly high: number;
}

/** The share of the day `value` (spread over ± ½) that the range covers: 0, 1 or between at the two boundary days. */
export function coveredShare(range: CentralRange, value: number): number {
  return Math.max(0, Math.min(1, Math.min(range.high, value + 0.5) - Math.max(range.low, value - 0.5)));
}

/**
 * Whole days for saying: the exact range rounded, then drawn out or in, a day at a time at the
 * likelier or the less likely end, until the forecast itself gives the days a chance between
 * `least` and `most`. What is said to one woman must be true for her, too.
 */
export function wholeDayRange(of: DayDistribution, exact: CentralRange, least: number, most: number): { first: number; last: number; chance: number } {
  let first = Math.round(exact.low);
  let last = Math.max(first, Math.round(exact.high));
  let chance = chanceBetween(of, first, last);
  while (chance < least) {
    const [before, after] = [chanceOf(of, first - 1), chanceOf(of, last + 1)];
    if (before === 0 && after === 0) break;
    if (before > after) first -= 1;
    else last += 1;
    chance += Math.max(before, after);
  }
  while (last > first) {
    const end = Math.min(chanceOf(of, first), chanceOf(of, last));
    if (chance <= most || chance - end < least) break;
    if (chanceOf(of, first) < chanceOf(of, last)) first += 1;
    else last -= 1;
    chance -= end;
  }
  return { first, last, chance };
}

/** Continuous ranked probability score against what happened (Matheson & Winkler 1976), in days; smaller is better. */
export function crps(of: DayDistribution, happened: number): number {
  let cumulative = 0;
  let score = 0;
  const from = Math.min(of.first, happened);
  const to = Math.max(of.first + of.mass.length - 1, happened);
  for (let v = from; v < to; v += 1) {
    cumulative += chanceOf(of, v);
    score += (cumulative - (v >= happened ? 1 : 0)) ** 2;
  }
  return score;
}
