import type { NutrientGroup, NutrientId, NutrientUnit } from '../core/foods/index.ts';
import type { Interval } from '../core/quantity/index.ts';
import type { DishChoices } from './dish-choices.ts';

/**
 * A dish worked out, as the faces show it and as `truepot dish --json` prints it. Words are
 * ready to read. Weights are grams (`…G`); nutrient amounts are in the nutrient's `unit`.
 * An `Interval` is a best estimate with the range in which 8 of 10 pots would lie.
 */
export interface DishReport {
  readonly title: string | null;
  readonly choices: DishChoices;
  readonly servings: ServingsReport;
  readonly lines: readonly LineReport[];
  readonly steps: readonly StepReport[];
  readonly pot: PotReport;
  readonly energy: EnergyReport;
  readonly nutrients: readonly NutrientReport[];
  /** The portion in plain sentences. */
  readonly reading: readonly string[];
  readonly findings: readonly FindingReport[];
  readonly cautions: readonly CautionReport[];
  readonly attributions: readonly string[];
}

export interface ServingsReport {
  readonly count: number;
  readonly range: Interval;
  readonly basis: 'chosen' | 'stated' | 'proposed';
  readonly of: string | null;
  /** "Serves 4, as the recipe says." */
  readonly words: string;
}

export interface LineReport {
  readonly id: string;
  /** Ties her corrections to the line's own words. */
  readonly key: string;
  readonly text: string;
  readonly span: { readonly start: number; readonly end: number };
  readonly section: string | null;
  readonly food: {
    readonly code: string | null;
    /** What the kitchen calls it. */
    readonly name: string;
    /** What the table calls it, null when there is none. */
    readonly tableName: string | null;
    readonly table: string | null;
    readonly state: string | null;
    readonly nearness: 'same' | 'near' | 'none';
    readonly note: string | null;
    readonly others: readonly { readonly code: string; readonly name: string }[];
  };
  /** Edible grams into the pot; null when the weight is not known. */
  readonly gramsG: Interval | null;
  /** How the grams came about, a sentence a step. */
  readonly gramsPath: readonly string[];
  readonly eatenShare: number;
  readonly eatenWords: string | null;
  readonly cooking: { readonly method: string | null; readonly minutes: number | null; readonly words: string };
  readonly corrected: readonly ('food' | 'grams' | 'eaten' | 'cooking')[];
  /** Sure of food and grams, 0 to 1. */
  readonly confidence: number;
  readonly findings: readonly FindingReport[];
}

export interface StepReport {
  readonly number: number;
  readonly text: string;
  readonly actions: readonly { readonly verb: string; readonly method: string | null; readonly minutes: Interval | null; readonly celsius: number | null; readonly lines: readonly string[] }[];
}

export interface PotReport {
  /** Everything that goes in, edible grams. */
  readonly rawWeightG: number;
  /** Eaten part after cooking. */
  readonly cookedWeightG: Interval;
  readonly portionWeightG: Interval;
  readonly portionVolumeMl: Interval;
  /** How the cooked weight came about, a sentence a step. */
  readonly weightPath: readonly string[];
  readonly linesWithoutWeight: number;
  readonly linesWithoutFood: number;
}

export interface EnergyReport {
  /** `partial`: some part that gives energy is not known, so the declared energy is at least this. */
  readonly state: 'complete' | 'partial' | 'unknown';
  /** A portion by the general factors of Regulation (EU) 1169/2011 Annex XIV. */
  readonly declaredKj: number;
  readonly declaredKcal: number;
  readonly rangeKcal: Interval;
  /** A portion by the table's own energy values. */
  readonly tableKcal: number;
  /** True when the two differ by more than 10 %: both are shown. */
  readonly differ: boolean;
  readonly words: string;
}

export interface NutrientReport {
  readonly id: NutrientId;
  readonly name: string;
  readonly unit: NutrientUnit;
  readonly group: NutrientGroup;
  /** `partial`: at least this much; `unknown`: no food of the dish has a value; `not-in-tables`: neither table has the nutrient. */
  readonly state: 'complete' | 'partial' | 'unknown' | 'not-in-tables';
  /** Share of the eaten weight without a value, 0 to 1. */
  readonly unknownShare: number;
  /** Null where unknown. */
  readonly portion: Interval | null;
  readonly per100g: number | null;
  readonly pot: number | null;
  readonly reference: { readonly amount: number; readonly kind: string; readonly share: number | null; readonly source: string; readonly locator: string; readonly checked: string; readonly note: string | null } | null;
  readonly top: readonly { readonly lineId: string; readonly name: string; readonly amount: number; readonly share: number }[];
  /** "84 mg", "at least 84 mg; 12 % of the weight has no value", "not in the tables". */
  readonly words: string;
}

export interface FindingReport {
  readonly code: string;
  readonly severity: 'question' | 'warning' | 'note';
  readonly lineId: string | null;
  readonly text: string;
}

export interface CautionReport {
  readonly id: string;
  readonly text: string;
  readonly why: string;
  readonly source: string;
}

/** The whole path of one number: from the sum down to the foods, grams, factors and sources behind it. */
export interface Explanation {
  readonly nutrient: NutrientId;
  readonly title: string;
  /** The sum in words. */
  readonly summary: readonly string[];
  readonly parts: readonly ExplanationPart[];
  /** What the range comes from, largest first. */
  readonly uncertainty: readonly { readonly words: string; readonly share: number }[];
}

export interface ExplanationPart {
  readonly lineId: string;
  readonly line: string;
  readonly food: string;
  /** In the nutrient's unit, one portion; null where nothing is known. */
  readonly portionAmount: number | null;
  readonly share: number | null;
  readonly steps: readonly { readonly words: string; readonly source: string | null }[];
}
