import type { FoodCode } from './food.ts';

/**
 * The states a kitchen word can point at. `raw` means fresh or uncooked, `dried` the dry good
 * as bought (pulses, herbs, fruit), `canned` drained unless the entry says otherwise.
 */
export const foodForms = [
  'raw', 'dried', 'canned', 'cooked', 'frozen', 'ground', 'whole', 'smoked', 'roasted', 'toasted', 'pickled', 'salted',
  'juice', 'peel', 'oil', 'flour', 'powder', 'paste', 'flakes', 'sprouted', 'instant', 'wholemeal', 'low-fat', 'skimmed', 'sweetened', 'unsalted',
] as const;
export type FoodForm = (typeof foodForms)[number];

/**
 * How near the table's food is to what the word means: `same`, or `near` (a named relative,
 * with a note that she sees), or `none` (the tables have no such food: a line with no data).
 */
export type Nearness = 'same' | 'near' | 'none';

export interface KitchenFood {
  readonly code: FoodCode | null;
  readonly nearness: Nearness;
  /** Shown with the line when nearness is not `same`, or when the entry needs a word. */
  readonly note: string | null;
}

/** One thing a cook asks for, under all its kitchen names, with the table food of each form. */
export interface KitchenEntry {
  /** The British kitchen name, singular unless always plural: `aubergine`, `chickpeas`, `double cream`. */
  readonly name: string;
  /** Other names: American, Indian (romanised), older, common misspellings that are words. Plurals and typos are found by rule. */
  readonly also: readonly string[];
  readonly area: string;
  /** The form meant when the line names none. */
  readonly usual: FoodForm;
  readonly forms: Readonly<Partial<Record<FoodForm, KitchenFood>>>;
  /** Weights of countable units and handfuls, grams of edible part unless `gross`. */
  readonly pieces: readonly PieceWeight[];
  /** Grams in a millilitre, by state word ('' is the plain one: 'chopped', 'grated', 'packed', 'ground'). */
  readonly densities: readonly BulkDensity[];
  /** Part of the food as bought that is thrown away, percent; null where the table's own figure serves. */
  readonly refusePercent: number | null;
}

export interface PieceWeight {
  /** A unit id of data/units.yaml of kind count: `piece`, `clove`, `bunch`, `sprig`, `slice`, `tin`, `handful` … */
  readonly unit: string;
  readonly size: 'small' | 'medium' | 'large' | null;
  readonly form: FoodForm | null;
  readonly grams: number;
  /** Half the range in which 8 in 10 would lie, as a share of the weight (0.2 = ± 20 %). */
  readonly spread: number;
  /** `gross`: with peel and bone, so refuse still comes off; `net`: edible part as it goes into the pot. */
  readonly basis: 'gross' | 'net';
  readonly source: string;
  readonly locator: string;
}

export interface BulkDensity {
  readonly state: string;
  readonly form: FoodForm | null;
  readonly gramsAMillilitre: number;
  readonly spread: number;
  readonly source: string;
  readonly locator: string;
}
