import type { Day } from '../calendar/index.ts';
import { dayFromPeriod, type RatingParameters } from './daily-ratings.ts';
import type { DayEntry } from './record.ts';
import { studentPoint } from './student-t.ts';

/** An item on one day from the period, over her cycles. */
export interface CurvePoint {
  /** −1 the day before the period, 1 its first day; no day 0. */
  readonly day: number;
  readonly cycles: number;
  readonly mean: number;
  /** 95 % interval of the mean over cycles; null under the cycles needed. */
  readonly low: number | null;
  readonly high: number | null;
}

/** The mean of an item by day from the period, with an interval from the spread between cycles. Days nobody rated have no point. */
export function ratingCurve(parameters: RatingParameters, days: readonly DayEntry[], starts: readonly Day[], item: string): CurvePoint[] {
  const { before, after, cyclesNeeded } = parameters.curve;
  const byDay = new Map(days.map((d) => [d.day, d.ratings.get(item)]));
  const points: CurvePoint[] = [];
  for (let day = -before; day <= after; day += 1) {
    if (day === 0) continue;
    const ratings = starts.flatMap((start) => {
      const rating = byDay.get(dayFromPeriod(start, day));
      return rating === undefined ? [] : [rating];
    });
    const n = ratings.length;
    if (n === 0) continue;
    const mean = ratings.reduce((a, b) => a + b, 0) / n;
    const deviation = Math.sqrt(ratings.reduce((a, b) => a + (b - mean) ** 2, 0) / Math.max(1, n - 1));
    const half = n >= cyclesNeeded ? (studentPoint(n - 1) * deviation) / Math.sqrt(n) : null;
    points.push({ day, cycles: n, mean, low: half === null ? null : Math.max(parameters.scale.least, mean - half), high: half === null ? null : Math.min(parameters.scale.most, mean + half) });
  }
  return points;
}
