import type { Future } from '../cycle/index.ts';
import type { Scheme } from './scheme.ts';
import { fixedRuleHolds, ruleHolds } from './windows.ts';

/** How far a fixed-day scheme and the anchored one part ways for this woman. */
export interface FixedComparison {
  /** Days of a cycle on which they differ: mean and eight-in-ten range over cycles that may come. */
  readonly days: { readonly mean: number; readonly low: number; readonly high: number };
  readonly cycleLength: number;
  readonly share: number;
  /** Per rule: mean days a cycle on which the fixed scheme gives it and the anchored does not, and the other way about. */
  readonly rules: readonly { readonly ruleId: string; readonly fixedOnly: number; readonly anchoredOnly: number }[];
  /** Cycles counted. */
  readonly cycles: number;
}

/** Counts, in every whole cycle of every future, the days on which the two schemes give other rules; null when the scheme has no rules or no whole cycle comes. */
export function compareFixed(scheme: Scheme, futures: readonly Future[]): FixedComparison | null {
  if (scheme.rules.length === 0) return null;
  const differing: number[] = [];
  const fixedOnly = scheme.rules.map(() => 0);
  const anchoredOnly = scheme.rules.map(() => 0);
  let lengths = 0;
  for (const future of futures)
    for (const cycle of future) {
      let count = 0;
      for (let day = 1; day <= cycle.length; day += 1) {
        let differs = false;
        scheme.rules.forEach((rule, i) => {
          const fixed = fixedRuleHolds(scheme, rule, day);
          const anchored = ruleHolds(scheme, rule, cycle, day);
          if (fixed === anchored) return;
          differs = true;
          if (fixed) fixedOnly[i]! += 1;
          else anchoredOnly[i]! += 1;
        });
        if (differs) count += 1;
      }
      lengths += cycle.length;
      differing.push(count);
    }
  if (differing.length === 0) return null;
  differing.sort((a, b) => a - b);
  const n = differing.length;
  const at = (q: number): number => differing[Math.min(n - 1, Math.floor(q * n))]!;
  const mean = differing.reduce((a, b) => a + b, 0) / n;
  return {
    days: { mean, low: at(0.1), high: at(0.9) },
    cycleLength: lengths / n,
    share: (mean * n) / lengths,
    rules: scheme.rules.map((rule, i) => ({ ruleId: rule.id, fixedOnly: fixedOnly[i]! / n, anchoredOnly: anchoredOnly[i]! / n })),
    cycles: n,
  };
}
