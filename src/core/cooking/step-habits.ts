import type { PanSize, Place } from './kitchen.ts';

/** How a kind of step is usually done: minutes (shortest, usual, longest), attention (or minutes between looks), places. */
export interface StepHabit {
  readonly minutes: readonly [number, number, number];
  readonly attention: 'none' | 'hands' | 'stir' | number;
  readonly ring?: boolean | undefined;
  readonly oven?: number | undefined;
  readonly place?: Place | undefined;
  readonly burns?: boolean | undefined;
  readonly talk?: boolean | undefined;
  readonly pause?: boolean | undefined;
  /** Minutes ahead of the step that needs it, least and most. */
  readonly ahead?: readonly [number, number] | undefined;
}

/** The compiled data/parameters/cooking/steps.yaml. */
export interface StepHabits {
  readonly kinds: Readonly<Record<string, StepHabit>>;
  readonly verbs: Readonly<Record<string, StepHabit>>;
  readonly linePrep: { readonly minutes: readonly [number, number, number]; readonly words: readonly string[] };
  readonly constantWords: readonly string[];
  readonly everyWords: Readonly<Record<string, number>>;
  readonly aheadFrom: number;
  readonly panWithin: number;
  /** The same where food is frying in the pan, and where it lies in a liquid that can be turned down. */
  readonly fryWithin: number;
  readonly simmerWithin: number;
  readonly hurried: { readonly words: readonly string[]; readonly minutes: number };
  readonly grains: readonly string[];
  readonly poultry: readonly string[];
  readonly pans: Readonly<Record<PanSize, readonly string[]>>;
  /** Kind of each verb ("cook", "prepare" …), from the words of the recipe reader. */
  readonly verbKinds: Readonly<Record<string, string>>;
}

/** The habit of a verb, else of its kind, else of preparing. */
export function habitOf(verb: string, habits: StepHabits): StepHabit {
  return habits.verbs[verb] ?? habits.kinds[habits.verbKinds[verb] ?? 'prepare'] ?? { minutes: [2, 4, 6], attention: 'hands' };
}
