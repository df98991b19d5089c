import type { CookingMethod } from './recipe.ts';
import type { Kept } from './factor.ts';
import type { PublishedTable } from './retention-published.ts';

/** The rows of the USDA table for alcohol stirred in and baked or simmered, by minutes. */
const byMinutes: readonly (readonly [minutes: number, code: string])[] = [[0, '5002'], [15, '5004'], [30, '5005'], [60, '5006'], [90, '5007'], [120, '5008'], [150, '5009']];

/** Alcohol left: a straight line between the published times, the last row beyond 2½ hours; all of it where nothing is heated. */
export function alcoholKept(cooking: { readonly method: CookingMethod; readonly minutes: number | null }, table: PublishedTable): Kept {
  const factor = (share: number, locator: string): Kept['used'] => ({ kind: 'published', share, source: table.source, locator });
  const at = (code: string): number => table.rows.get(code)?.kept.alcohol ?? 1;
  if (cooking.method === 'raw' || cooking.method === 'soaked') {
    return { share: { low: 1, value: 1, high: 1 }, used: { kind: 'none', share: 1, source: 'common-practice', locator: 'not cooked' }, other: null, why: 'not-cooked', deviation: 0, time: 1 };
  }
  const minutes = cooking.minutes ?? 0;
  const after = byMinutes.findIndex(([m]) => m >= minutes);
  const [right, left] = after === -1 ? [byMinutes.at(-1)!, byMinutes.at(-1)!] : [byMinutes[after]!, byMinutes[Math.max(0, after - 1)]!];
  const span = right[0] - left[0];
  const share = span === 0 ? at(right[1]) : at(left[1]) + ((at(right[1]) - at(left[1])) * (minutes - left[0])) / span;
  const locator = left[1] === right[1] ? `row ${right[1]}` : `between rows ${left[1]} and ${right[1]}`;
  const deviation = 0.2;
  return { share: { low: share * 0.77, value: share, high: Math.min(1, share * 1.29) }, used: factor(share, locator), other: null, why: 'by-minutes', deviation, time: 1 };
}
