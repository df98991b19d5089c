import type { Day } from '../calendar/index.ts';

/** Ids of data/parameters/people/life-states.yaml. */
export type LifeStateId =
  | 'combined-pill' | 'continuous-hormones' | 'progestogen-pill' | 'implant-or-injection' | 'hormonal-iud' | 'copper-iud'
  | 'pregnant' | 'breastfeeding' | 'perimenopause' | 'after-menopause' | 'no-periods'
  | 'eating-disorder-history' | 'diabetes-medicine' | 'low-energy-signs';

/** Whether phases can be spoken of in a state: as usual, with a warning, or not at all. */
export type PhaseUse = 'yes' | 'with-care' | 'none';

export interface LifeStateKind {
  readonly id: LifeStateId;
  readonly label: string;
  readonly phases: PhaseUse;
  /** Words by which people name it, lower case. */
  readonly words: readonly string[];
  readonly source: string;
  readonly locator: string;
}

/** A state of hers with the days that it holds (both included; null: open). */
export interface LifeState {
  readonly id: LifeStateId;
  readonly from: Day | null;
  readonly to: Day | null;
}

/** What is known of a woman apart from her record. Unknown is null, never a guess. */
export interface Person {
  /** Full years. */
  readonly age: number | null;
  readonly bodyWeightKg: number | null;
  readonly states: readonly LifeState[];
}

export const unknownPerson: Person = { age: null, bodyWeightKg: null, states: [] };

/** Ids of the states that hold on a day. */
export function statesOn(person: Person, on: Day): LifeStateId[] {
  return person.states.filter((s) => (s.from === null || s.from <= on) && (s.to === null || s.to >= on)).map((s) => s.id);
}

export interface PhaseAnswer {
  readonly use: PhaseUse;
  /** The states that say so. */
  readonly because: readonly LifeStateKind[];
}

/** Whether phases can be spoken of for her on a day, and which states decide it. */
export function phaseAnswer(kinds: readonly LifeStateKind[], person: Person, on: Day): PhaseAnswer {
  const held = new Set(statesOn(person, on));
  const ofUse = (use: PhaseUse): LifeStateKind[] => kinds.filter((k) => k.phases === use && held.has(k.id));
  for (const use of ['none', 'with-care'] as const) {
    const because = ofUse(use);
    if (because.length > 0) return { use, because };
  }
  return { use: 'yes', because: [] };
}
