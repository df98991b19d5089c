import type { Interval } from '../quantity/index.ts';
import type { CookingMethod, Recipe } from './recipe.ts';
import type { ScalingRules, TimeCode } from './scaling-rules.ts';

/** What another size of pot does to the time of one action; common practice, so a hint and never a new figure in the text. */
export interface ScaledTime {
  readonly step: number;
  readonly verb: string;
  readonly method: CookingMethod;
  readonly code: TimeCode;
  readonly before: Interval | null;
  /** Null where no time is stated, or where the same time holds in more batches. */
  readonly after: Interval | null;
  readonly source: string;
  readonly locator: string;
}

const times = (range: Interval, by: number): Interval => ({ low: range.low * by, value: range.value * by, high: range.high * by });

/** Hints for every timed treatment of the method; none for a small change of size. */
export function scaledTimes(recipe: Recipe, factor: number, rules: ScalingRules): readonly ScaledTime[] {
  if (factor < rules.tellFrom && factor > 1 / rules.tellFrom) return [];
  const seen = new Set<string>();
  return recipe.steps.flatMap((step) => step.actions.flatMap((action): ScaledTime[] => {
    const { method } = action;
    if (method === null) return [];
    const rule = rules.times.find((r) => r.methods.includes(method));
    const key = `${step.number} ${method} ${action.minutes?.value ?? ''}`;
    if (!rule || rule.code === 'same' || seen.has(key) || (rule.code === 'batches' && factor < 1)) return [];
    seen.add(key);
    const after = action.minutes === null || rule.code === 'batches' ? null : times(action.minutes, factor ** rule.exponent);
    return [{ step: step.number, verb: action.verb, method, code: rule.code, before: action.minutes, after, source: rule.source, locator: rule.locator }];
  }));
}
