import type { NutrientId } from '../foods/index.ts';

/** An amount as a sentence states it: a figure in a unit, or a share of a day. */
export type StatedAmount =
  | { readonly kind: 'amount'; readonly value: number; readonly unit: 'g' | 'mg' | 'µg' | 'kcal'; readonly bound: Bound }
  | { readonly kind: 'share'; readonly value: number; readonly bound: Bound };
type Bound = 'about' | 'at-least' | 'at-most';

const words: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10, eleven: 11, twelve: 12, fifteen: 15, twenty: 20, thirty: 30, forty: 40, fifty: 50, sixty: 60, seventy: 70, eighty: 80, ninety: 90, hundred: 100 };
const shares: readonly (readonly [RegExp, number])[] = [
  [/\btwo[- ]thirds\b/, 2 / 3], [/\bthree[- ]quarters\b/, 0.75], [/\b(a )?third\b/, 1 / 3], [/\b(a )?quarter\b/, 0.25], [/\bhalf\b/, 0.5], [/\b(a )?fifth\b/, 0.2], [/\b(a )?tenth\b/, 0.1],
  [/\btwo days/, 2], [/\bthree days/, 3], [/\bdouble\b|\btwice\b/, 2], [/\btriple\b|\bthree times\b/, 3],
];

function numberIn(text: string): number | null {
  const digits = /(\d+(?:[.,]\d+)?)/.exec(text)?.[1];
  if (digits !== undefined) return Number(digits.replace(',', '.'));
  const word = Object.keys(words).find((w) => new RegExp(`\\b${w}\\b`).test(text));
  return word === undefined ? null : (words[word] ?? null);
}

/** Reads the amount in a stretch of a sentence; null when it states none. */
export function statedAmount(span: string): StatedAmount | null {
  const text = span.toLowerCase();
  const bound: Bound = /\b(more than|over|at least|exceeds?|smash|enough|all|every|covers?|meets?|plenty)\b/.test(text) ? 'at-least' : /\b(under|only|just|less than|fewer than|below|at most|up to)\b/.test(text) ? 'at-most' : 'about';
  const number = numberIn(text);
  if (number !== null && /%|per ?cent/.test(text)) return { kind: 'share', value: number / 100, bound };
  const unit = /\b\d*\s*(kcals?|calories?|kilocalories|cals)\b/.test(text) ? 'kcal' : /\d\s*(µg|mcg|ug)\b|microgram/.test(text) ? 'µg' : /\d\s*mg\b|milligram/.test(text) ? 'mg' : /\d\s*g\b|\bgrams?\b|gramme/.test(text) ? 'g' : null;
  if (number !== null && unit !== null) return { kind: 'amount', value: number, unit, bound };
  const share = shares.find(([pattern]) => pattern.test(text));
  if (share) return { kind: 'share', value: share[1], bound };
  if (/\b(whole|entire|full|day'?s|day’s|daily|all|every|enough|covers?|meets?|need|needs|for the day|for today)\b/.test(text)) return { kind: 'share', value: 1, bound: bound === 'at-most' ? 'at-most' : 'at-least' };
  return null;
}

const inGrams: Readonly<Record<string, number>> = { g: 1, mg: 1e-3, 'µg': 1e-6 };

/** A stated figure in the nutrient's own unit; null when the two cannot be compared. */
export function inUnit(value: number, from: string, to: string, nutrient: NutrientId): number | null {
  if (from === 'kcal' || to === 'kcal') return from === to && nutrient === 'energy' ? value : null;
  const a = inGrams[from];
  const b = inGrams[to];
  return a === undefined || b === undefined ? null : (value * a) / b;
}
