import type { BoundedAdvice, SafetyBounds } from '../people/index.ts';
import type { RuleAdvice, Scheme, SchemeRule } from './scheme.ts';

/** Something a bound took out of a scheme or raised to a floor. */
export interface BoundedChange {
  readonly ruleId: string;
  readonly what: BoundedAdvice | 'low-protein';
  readonly done: 'removed' | 'raised-to-floor';
  /** The figure asked for, if it was one. */
  readonly asked: number | null;
  readonly floor: number | null;
  /** Ids of the safety rules that hold; empty for the floors that hold for everybody. */
  readonly because: readonly string[];
}

export interface BoundedScheme {
  readonly scheme: Scheme;
  readonly changes: readonly BoundedChange[];
  /** True: the scheme has given way to plain food advice and a referral. */
  readonly plain: boolean;
}

const lessOf = (advice: RuleAdvice, what: string): boolean => advice.emphasis.some((e) => e.what === what && e.direction === 'less');

/**
 * Holds a scheme to the bounds of one woman. Where a rule for her says so, all of the scheme
 * gives way to plain food advice: the rules that remain are none. For everybody else figures
 * under the floors are raised to them.
 */
export function boundScheme(scheme: Scheme, bounds: SafetyBounds): BoundedScheme {
  const changes: BoundedChange[] = [];
  const because = (kind: BoundedAdvice): string[] => bounds.rules.filter((r) => r.forbids.includes(kind)).map((r) => r.id);
  const rules = scheme.rules.map((rule): SchemeRule => {
    let advice = rule.advice;
    const take = (what: BoundedChange['what'], done: BoundedChange['done'], figures: { asked: number | null; floor: number | null }): void => {
      changes.push({ ruleId: rule.id, what, done, ...figures, because: what === 'low-protein' ? [] : because(what) });
    };
    const { floors, proteinFloorG, forbids } = bounds;
    if (forbids.has('fasting') && advice.fastingHours !== null && advice.fastingHours > floors.plainPauseHours) {
      take('fasting', 'removed', { asked: advice.fastingHours, floor: null });
      advice = { ...advice, fastingHours: null };
    }
    if (forbids.has('low-energy') && lessOf(advice, 'energy')) {
      take('low-energy', 'removed', { asked: null, floor: null });
      advice = { ...advice, emphasis: advice.emphasis.filter((e) => e.what !== 'energy' || e.direction !== 'less') };
    }
    if (forbids.has('low-carbohydrate') && lessOf(advice, 'carbohydrate')) {
      take('low-carbohydrate', 'removed', { asked: null, floor: null });
      advice = { ...advice, emphasis: advice.emphasis.filter((e) => e.what !== 'carbohydrate' || e.direction !== 'less') };
    }
    if (advice.energyKcal !== null && advice.energyKcal < floors.energyKcal) {
      take('low-energy', forbids.has('low-energy') ? 'removed' : 'raised-to-floor', { asked: advice.energyKcal, floor: floors.energyKcal });
      advice = { ...advice, energyKcal: forbids.has('low-energy') ? null : floors.energyKcal };
    }
    if (advice.carbohydrateG !== null && advice.carbohydrateG < floors.carbohydrateG && forbids.has('low-carbohydrate')) {
      take('low-carbohydrate', 'removed', { asked: advice.carbohydrateG, floor: floors.carbohydrateG });
      advice = { ...advice, carbohydrateG: null };
    }
    if (advice.proteinG !== null && proteinFloorG !== null && advice.proteinG < proteinFloorG) {
      take('low-protein', 'raised-to-floor', { asked: advice.proteinG, floor: proteinFloorG });
      advice = { ...advice, proteinG: proteinFloorG };
    }
    return advice === rule.advice ? rule : { ...rule, advice };
  });
  return { scheme: { ...scheme, rules: bounds.plain ? [] : rules }, changes, plain: bounds.plain };
}
