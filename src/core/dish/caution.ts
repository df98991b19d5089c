import type { NutrientId } from '../foods/index.ts';

/** One row of data/parameters/dish/cautions.yaml. */
export interface CautionRule {
  readonly id: string;
  readonly text: string;
  readonly when: {
    readonly food?: readonly string[];
    readonly notFood?: readonly string[];
    readonly forms?: readonly string[];
    /** Only when the line gives more than this many grams to a portion. */
    readonly overG?: number;
    readonly nutrient?: NutrientId;
    readonly over?: number;
  };
  readonly stages?: readonly string[];
  readonly source: string;
  readonly locator: string;
  readonly checked: string;
}

/** A line as the rules look at it: names in lower case, grams eaten in one portion. */
export interface CautionLine {
  readonly lineId: string;
  readonly names: readonly string[];
  readonly form: string | null;
  readonly portionG: number;
}

export interface RaisedCaution {
  readonly rule: CautionRule;
  /** The line that raised it, or null when a nutrient of the portion did. */
  readonly lineId: string | null;
  readonly amount: number | null;
}

function lineRaises(rule: CautionRule, line: CautionLine): boolean {
  const { food, notFood = [], forms, overG = 0 } = rule.when;
  if (!food || line.portionG <= overG) return false;
  if (forms && !(line.form !== null && forms.includes(line.form))) return false;
  const has = (words: readonly string[]): boolean => words.some((word) => line.names.some((name) => name.includes(word.toLowerCase())));
  return has(food) && !has(notFood);
}

/** The cautions that a portion calls for, in the order of the rules. `portion` gives a nutrient's known amount in its unit, null when unknown. */
export function raisedCautions(rules: readonly CautionRule[], dish: { readonly lines: readonly CautionLine[]; readonly stage: string; portion(nutrient: NutrientId): number | null }): RaisedCaution[] {
  const raised: RaisedCaution[] = [];
  for (const rule of rules) {
    if (rule.stages && !rule.stages.includes(dish.stage)) continue;
    const { nutrient, over } = rule.when;
    if (nutrient !== undefined && over !== undefined) {
      const amount = dish.portion(nutrient);
      if (amount !== null && amount > over) raised.push({ rule, lineId: null, amount });
      continue;
    }
    const line = dish.lines.find((l) => lineRaises(rule, l));
    if (line) raised.push({ rule, lineId: line.lineId, amount: null });
  }
  return raised;
}
