import { addDays, type Day } from '../calendar/index.ts';
import type { DayEntry } from './record.ts';

/** data/parameters/cycle/daily-ratings.yaml. Windows in days from the period: −1 the day before, 1 the first day; there is no day 0. */
export interface RatingParameters {
  readonly scale: { readonly least: number; readonly most: number };
  readonly premenstrual: { readonly from: number; readonly to: number };
  readonly postmenstrual: { readonly from: number; readonly to: number };
  readonly ratingsNeeded: number;
  readonly cyclesNeeded: number;
  readonly change: number;
  readonly postmenstrualMost: number;
  readonly severe: number;
  readonly severeDays: number;
  readonly symptomsNeeded: number;
  readonly coreNeeded: number;
  readonly coreWords: readonly string[];
  readonly curve: { readonly before: number; readonly after: number; readonly cyclesNeeded: number };
  readonly menuChange: { readonly cyclesNeeded: number; readonly falseDiscovery: number };
}

/** The calendar day that stands `day` days from a period that starts on `start`. */
export function dayFromPeriod(start: Day, day: number): Day {
  return addDays(start, day > 0 ? day - 1 : day);
}

/** How one item did in the two windows about one period. */
export interface ItemInCycle {
  readonly item: string;
  readonly premenstrualMean: number;
  readonly postmenstrualMean: number;
  /** Share of her range of the scale: (pre − post) / (her highest rating ever − 1); null when she never rated above 1. */
  readonly change: number | null;
  readonly passes: boolean;
  readonly core: boolean;
}

/** The windows about one period. `rated: false`: too few ratings in one of them. */
export interface RatedCycle {
  readonly start: Day;
  readonly rated: boolean;
  readonly items: readonly ItemInCycle[];
  /** Whether enough items pass, one of them a core one. */
  readonly passes: boolean;
}

/** `too-few-cycles` until two cycles with enough ratings in both windows are there; then whether two cycles met the rule. A summary for a clinician, never a diagnosis. */
export interface RatingSummary {
  readonly cycles: readonly RatedCycle[];
  readonly ratedCycles: number;
  readonly answer: 'no-ratings' | 'too-few-cycles' | 'met' | 'not-met';
}

export function itemNames(days: readonly DayEntry[]): string[] {
  return [...new Set(days.flatMap((d) => [...d.ratings.keys()]))];
}

export function isCoreItem(parameters: RatingParameters, item: string): boolean {
  const lower = item.toLowerCase();
  return parameters.coreWords.some((word) => lower.includes(word));
}

/** Ratings of an item in a window about a start. */
export function ratingsIn(days: readonly DayEntry[], item: string, start: Day, window: { readonly from: number; readonly to: number }): number[] {
  const first = dayFromPeriod(start, window.from);
  const last = dayFromPeriod(start, window.to);
  return days.flatMap((d) => (d.day >= first && d.day <= last && d.ratings.has(item) ? [d.ratings.get(item)!] : []));
}

export const meanRating = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0) / xs.length;

/** Reads daily ratings by the rules of Eisenlohr-Moul and others (2017). */
export function ratingSummary(parameters: RatingParameters, days: readonly DayEntry[], starts: readonly Day[]): RatingSummary {
  const items = itemNames(days);
  if (items.length === 0) return { cycles: [], ratedCycles: 0, answer: 'no-ratings' };
  const most = new Map(items.map((item) => [item, Math.max(...days.flatMap((d) => (d.ratings.has(item) ? [d.ratings.get(item)!] : [])))]));
  const cycles = starts.map((start): RatedCycle => {
    const read = items.flatMap((item): ItemInCycle[] => {
      const pre = ratingsIn(days, item, start, parameters.premenstrual);
      const post = ratingsIn(days, item, start, parameters.postmenstrual);
      if (pre.length < parameters.ratingsNeeded || post.length < parameters.ratingsNeeded) return [];
      const range = most.get(item)! - parameters.scale.least;
      const change = range > 0 ? (meanRating(pre) - meanRating(post)) / range : null;
      // Sums of tenths: a change of exactly 30 % passes.
      const passes = change !== null && change >= parameters.change - 1e-9 && Math.max(...post) <= parameters.postmenstrualMost && Math.max(...pre) >= parameters.severe && pre.filter((r) => r >= parameters.severe).length >= parameters.severeDays;
      return [{ item, premenstrualMean: meanRating(pre), postmenstrualMean: meanRating(post), change, passes, core: isCoreItem(parameters, item) }];
    });
    const passing = read.filter((i) => i.passes);
    return { start, rated: read.length > 0, items: read, passes: passing.length >= parameters.symptomsNeeded && passing.filter((i) => i.core).length >= parameters.coreNeeded };
  });
  const rated = cycles.filter((c) => c.rated);
  const answer = rated.length < parameters.cyclesNeeded ? 'too-few-cycles' : rated.filter((c) => c.passes).length >= parameters.cyclesNeeded ? 'met' : 'not-met';
  return { cycles: rated, ratedCycles: rated.length, answer };
}
