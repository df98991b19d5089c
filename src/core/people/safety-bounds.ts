import type { Day } from '../calendar/index.ts';
import { statesOn, type LifeStateId, type Person } from './life-state.ts';

/** Kinds of advice that a bound can forbid. */
export type BoundedAdvice = 'fasting' | 'low-energy' | 'low-carbohydrate';

/** Whom she is sent to; the words are in messages/cycle.ts. */
export type ReferralLine = 'midwife-or-doctor' | 'doctor-or-dietitian' | 'eating-disorder-service' | 'diabetes-team';

export interface SafetyRule {
  readonly id: string;
  readonly states: readonly LifeStateId[];
  /** Holds for everyone under this age in years; null: age does not matter. */
  readonly underAge: number | null;
  readonly forbids: readonly BoundedAdvice[];
  /** Plain food advice in place of any scheme. */
  readonly plain: boolean;
  readonly refer: ReferralLine;
  readonly source: string;
  readonly locator: string;
}

export interface SafetyFloors {
  /** kcal a day. */
  readonly energyKcal: number;
  /** g per kg of body weight a day. */
  readonly proteinGPerKg: number;
  /** g a day. */
  readonly carbohydrateG: number;
  /** Hours without food, the night counted, that are not called fasting. */
  readonly plainPauseHours: number;
}

export interface SafetyParameters {
  readonly rules: readonly SafetyRule[];
  readonly floors: SafetyFloors;
}

/** What holds for one woman on one day. */
export interface SafetyBounds {
  readonly rules: readonly SafetyRule[];
  readonly forbids: ReadonlySet<BoundedAdvice>;
  /** True: she gets plain food advice and a referral line, and no scheme. */
  readonly plain: boolean;
  readonly floors: SafetyFloors;
  /** g a day from her body weight; null when that is not known. */
  readonly proteinFloorG: number | null;
}

/** The bounds for a woman on a day. An unknown age sets no bound, and the faces ask for it. */
export function boundsFor(parameters: SafetyParameters, person: Person, on: Day): SafetyBounds {
  const held = new Set(statesOn(person, on));
  const rules = parameters.rules.filter((r) => r.states.some((s) => held.has(s)) || (r.underAge !== null && person.age !== null && person.age < r.underAge));
  return {
    rules,
    forbids: new Set(rules.flatMap((r) => r.forbids)),
    plain: rules.some((r) => r.plain),
    floors: parameters.floors,
    proteinFloorG: person.bodyWeightKg === null ? null : parameters.floors.proteinGPerKg * person.bodyWeightKg,
  };
}
