import { isNutrientId, nutrient, type NutrientId } from '../foods/index.ts';
import type { Condition } from './condition.ts';
import { judgeCondition, type Judged } from './judge-condition.ts';
import type { Checked, LawId, ReferenceValues } from './law.ts';
import type { Plate } from './plate.ts';

/** What a nutrition claim says of its nutrient. */
export const claimKinds = ['source', 'high', 'low', 'very-low', 'free', 'none-added', 'reduced', 'increased', 'light', 'lean', 'extra-lean'] as const;
export type ClaimKind = (typeof claimKinds)[number];

/** A nutrient, or one of the groups of fats that laws name. */
export type ClaimNutrient = NutrientId | 'omega-3' | 'unsaturated';

/** One nutrition claim of a law, a row of data/parameters/statements/nutrition-claims.yaml. */
export interface NutritionRule {
  readonly id: string;
  readonly laws: readonly LawId[];
  readonly clause: string;
  readonly source: string;
  readonly checked: Checked;
  /** The day from which the rule applies. */
  readonly from: string;
  readonly claim: ClaimKind;
  readonly nutrient: ClaimNutrient | 'subject';
  /** Which nutrients `subject` runs over. */
  readonly subjects?: 'reference-values' | 'vitamins-and-minerals';
  /** What must be said beside the claim, an id of the messages. */
  readonly tell?: string;
  readonly when: Condition;
}

/** One claim held against the dish under one law. */
export interface NutritionFinding {
  readonly law: LawId;
  readonly rule: NutritionRule;
  readonly nutrient: ClaimNutrient;
  readonly judged: Judged;
}

export interface NutritionInput {
  readonly plate: Plate;
  readonly rules: readonly NutritionRule[];
  readonly references: readonly ReferenceValues[];
  readonly other: Plate | null;
  /** The day for which it is asked, YYYY-MM-DD: rules that apply later are left out. */
  readonly on: string;
}

function subjectsOf(rule: NutritionRule, law: LawId, references: readonly ReferenceValues[]): readonly (NutrientId | null)[] {
  if (rule.nutrient !== 'subject') return [null];
  const values = references.find((r) => r.laws.includes(law))?.values ?? {};
  const all = Object.keys(values).filter(isNutrientId);
  return rule.subjects === 'vitamins-and-minerals' ? all.filter((id) => ['vitamin', 'mineral'].includes(nutrient(id).group)) : all;
}

/** Every nutrition claim of a law held against the dish, with how each stands. */
export function nutritionFindings(law: LawId, input: NutritionInput): NutritionFinding[] {
  return input.rules
    .filter((rule) => rule.laws.includes(law) && rule.from <= input.on)
    .flatMap((rule) => subjectsOf(rule, law, input.references).map((subject): NutritionFinding => ({
      law,
      rule,
      nutrient: rule.nutrient === 'subject' ? (subject ?? 'energy') : rule.nutrient,
      judged: judgeCondition(rule.when, { plate: input.plate, law, subject, references: input.references, other: input.other }),
    })));
}
