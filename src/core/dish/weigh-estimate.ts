import type { Interval } from '../quantity/index.ts';

export const weighStepKinds = [
  'amount', 'stated-weight', 'stated-each', 'stated-total', 'unit-size', 'fill', 'size', 'kitchen-density', 'table-density', 'usual-density', 'kitchen-piece', 'table-piece',
  'usual-piece', 'length', 'fruit-juice', 'fruit-zest', 'drained', 'refuse', 'no-refuse', 'usual-amount', 'servings',
] as const;
export type WeighStepKind = (typeof weighStepKinds)[number];

/** One factor on the way from the words to grams. The factors of one amount multiply to its grams. */
export interface WeighStep {
  readonly kind: WeighStepKind;
  readonly data: Readonly<Record<string, string | number>>;
  readonly factor: number;
  /** The unit of the factor: "g", "g/ml", "1". */
  readonly unit: string;
  /** Half the 80 % range as a share of the factor. */
  readonly spread: number;
  /** Source id and place; null for what the line itself says. */
  readonly source: string | null;
  readonly locator: string | null;
}

/** Grams on the way, with the factors so far. `gross` still holds peel and bone. */
export interface Estimate {
  readonly grams: number;
  readonly spread: number;
  readonly basis: 'gross' | 'net';
  readonly steps: readonly WeighStep[];
  /** 0 to 1. */
  readonly confidence: number;
}

/** Spreads of independent factors combine in quadrature (JCGM 100:2008, 5.1.6, for products of powers one). */
export function combinedSpread(...spreads: readonly number[]): number {
  return Math.hypot(...spreads);
}

// A weight is never nothing: however wide the spread, this share of the estimate stays.
const leastLow = 0.2;

/** The 80 % range of a weight in grams. */
export function weightRange(grams: number, spread: number): Interval {
  return { low: grams * Math.max(leastLow, 1 - spread), value: grams, high: grams * (1 + spread) };
}

/** Half the width of a range as a share of its best estimate. */
export function spreadOf(range: Interval): number {
  return range.value > 0 ? Math.max(0, (range.high - range.low) / 2 / range.value) : 0;
}

/** The estimate with one more factor. */
export function times(estimate: Estimate, step: WeighStep, change: { readonly basis?: Estimate['basis']; readonly confidence?: number } = {}): Estimate {
  return {
    grams: estimate.grams * step.factor,
    spread: combinedSpread(estimate.spread, step.spread),
    basis: change.basis ?? estimate.basis,
    steps: [...estimate.steps, step],
    confidence: estimate.confidence * (change.confidence ?? 1),
  };
}
