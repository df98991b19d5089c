import type { Kitchen, KitchenRules } from './kitchen.ts';
import type { StepHabits } from './step-habits.ts';

/** The compiled data/parameters/cooking/. */
export interface CookingTables {
  readonly rules: KitchenRules;
  readonly habits: StepHabits;
  readonly usualKitchen: Kitchen;
  /** Speaking rate until her own is measured, words a minute. */
  readonly wordsPerMinute: number;
  readonly deadAirSeconds: number;
}
