import type { Day } from '../calendar/index.ts';
import { itemNames, meanRating, ratingsIn, type RatingParameters } from './daily-ratings.ts';
import type { DayEntry } from './record.ts';
import { studentPoint } from './student-t.ts';

/** One item before and after a change of menu; each cycle counts once, by its mean in the days before the period. */
export type MenuChangeItem =
  | { readonly kind: 'too-few'; readonly item: string; readonly before: number; readonly after: number; readonly needed: number }
  | {
      readonly kind: 'compared';
      readonly item: string;
      readonly before: number;
      readonly after: number;
      /** Mean after less mean before, points of the scale; below nought is better. */
      readonly difference: number;
      readonly low: number;
      readonly high: number;
      /** Chance of a difference this big if the order of her cycles meant nothing (exact permutation, two-sided). */
      readonly chance: number;
      /** The same after allowing for all items looked at (Benjamini & Hochberg 1995). */
      readonly adjusted: number;
      readonly clear: boolean;
    };

/**
 * Before and after a change of menu, one woman, no control: even a clear difference may be time,
 * season or hope. With fewer than the cycles needed on a side it says so and nothing else.
 */
export function menuChange(parameters: RatingParameters, days: readonly DayEntry[], starts: readonly Day[], changed: Day): MenuChangeItem[] {
  const { cyclesNeeded, falseDiscovery } = parameters.menuChange;
  const raw = itemNames(days).map((item) => {
    const means = starts.flatMap((start) => {
      const ratings = ratingsIn(days, item, start, parameters.premenstrual);
      // A window that straddles the change belongs to neither side.
      const first = start + parameters.premenstrual.from;
      if (ratings.length < parameters.ratingsNeeded || (first < changed && start > changed)) return [];
      return [{ after: first >= changed, mean: meanRating(ratings) }];
    });
    return { item, before: means.filter((m) => !m.after).map((m) => m.mean), after: means.filter((m) => m.after).map((m) => m.mean) };
  });
  const tested = raw.filter((r) => r.before.length >= cyclesNeeded && r.after.length >= cyclesNeeded).map((r) => ({ ...r, chance: permutationChance(r.before, r.after) }));
  const adjusted = benjaminiHochberg(tested.map((t) => t.chance));
  return raw.map((r): MenuChangeItem => {
    const index = tested.findIndex((t) => t.item === r.item);
    if (index < 0) return { kind: 'too-few', item: r.item, before: r.before.length, after: r.after.length, needed: cyclesNeeded };
    const difference = meanRating(r.after) - meanRating(r.before);
    const half = welchHalf(r.before, r.after);
    return { kind: 'compared', item: r.item, before: r.before.length, after: r.after.length, difference, low: difference - half, high: difference + half, chance: tested[index]!.chance, adjusted: adjusted[index]!, clear: adjusted[index]! <= falseDiscovery };
  });
}

const variance = (xs: readonly number[]): number => xs.reduce((a, b) => a + (b - meanRating(xs)) ** 2, 0) / (xs.length - 1);

/** Half the 95 % interval of a difference of means (Welch 1947). */
function welchHalf(a: readonly number[], b: readonly number[]): number {
  const [va, vb] = [variance(a) / a.length, variance(b) / b.length];
  if (va + vb === 0) return 0;
  const freedom = (va + vb) ** 2 / (va ** 2 / (a.length - 1) + vb ** 2 / (b.length - 1));
  return studentPoint(freedom) * Math.sqrt(va + vb);
}

/** Share of the ways to split her cycles in two groups of these sizes whose means differ at least as much. Above 16 cycles the newest 16 are used. */
export function permutationChance(before: readonly number[], after: readonly number[]): number {
  const a = before.slice(-8);
  const b = after.slice(0, 8);
  const all = [...a, ...b];
  const seen = Math.abs(meanRating(b) - meanRating(a));
  const total = all.reduce((x, y) => x + y, 0);
  let ways = 0;
  let asBig = 0;
  for (let mask = 0; mask < 2 ** all.length; mask += 1) {
    let count = 0;
    let sum = 0;
    for (let i = 0; i < all.length; i += 1)
      if (mask & (1 << i)) {
        count += 1;
        sum += all[i]!;
      }
    if (count !== a.length) continue;
    ways += 1;
    if (Math.abs((total - sum) / b.length - sum / a.length) >= seen - 1e-9) asBig += 1;
  }
  return asBig / ways;
}

/** Chances adjusted for how many were looked at (false discovery rate). */
export function benjaminiHochberg(chances: readonly number[]): number[] {
  const order = chances.map((chance, i) => ({ chance, i })).sort((a, b) => a.chance - b.chance);
  const out = chances.map(() => 1);
  let least = 1;
  for (let rank = order.length; rank >= 1; rank -= 1) {
    const { chance, i } = order[rank - 1]!;
    least = Math.min(least, (chance * order.length) / rank);
    out[i] = least;
  }
  return out;
}
