import type { Interval } from '../quantity/index.ts';

/** A place in the text that was read: character offsets, end excluded. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export type PieceSize = 'small' | 'medium' | 'large';

/**
 * One amount as written. `quantity` is how many units (a range keeps both ends, `value` is the
 * midpoint); `unit` an id of data/units.yaml, null for bare counts ("2 onions"). `each` is a
 * weight or volume stated for one unit ("2 x 400 g cans", "1 tin (400 g)"); `total` one stated for all of them.
 */
export interface Amount {
  readonly quantity: Interval;
  readonly unit: string | null;
  readonly size: PieceSize | null;
  readonly fill: 'scant' | 'level' | 'heaped' | null;
  readonly each: StatedMeasure | null;
  readonly total: StatedMeasure | null;
  /** True when the writer gave no figure ("a handful", "some", "a good glug"). */
  readonly vague: boolean;
  readonly text: string;
}

export interface StatedMeasure {
  readonly quantity: Interval;
  /** A unit id of kind mass, volume or length. */
  readonly unit: string;
}

/** A food as a line names it, before it is looked up. */
export interface NamedFood {
  /** The food words only: "plum tomatoes", "double cream". */
  readonly name: string;
  /** Words of state and cutting, lower case: "chopped", "tinned", "cooked", "to serve". */
  readonly qualifiers: readonly string[];
}

/** What a line says about being eaten, in the writer's words; what is eaten is decided in eaten.ts. */
export type LineRemark = 'optional' | 'to-taste' | 'to-serve' | 'garnish' | 'for-frying' | 'for-greasing' | 'for-dusting' | 'plus-extra' | 'divided' | 'juice-only' | 'zest-only' | 'juice-and-zest';

export interface IngredientLine {
  /** Stable within the recipe: `l1`, `l2` … */
  readonly id: string;
  readonly text: string;
  readonly span: Span;
  readonly section: string | null;
  readonly amount: Amount | null;
  /** "plus 1 tbsp to serve": further amounts of the same food. */
  readonly more: readonly Amount[];
  readonly food: NamedFood;
  /** "1 leek or 2 small onions": the first is used, the others kept. */
  readonly instead: readonly { readonly amount: Amount | null; readonly food: NamedFood }[];
  readonly remarks: readonly LineRemark[];
  /** Sure of the reading, 0 to 1. */
  readonly confidence: number;
}

export type Heat = 'none' | 'low' | 'medium' | 'high' | 'oven' | 'boiling';

/** Kinds of treatment a step can give; the retention and yield tables are keyed by these. */
export const cookingMethods = [
  'raw', 'boiled-drained', 'boiled-kept', 'simmered', 'steamed', 'stewed', 'poached', 'blanched', 'roasted', 'baked', 'grilled',
  'stir-fried', 'fried', 'deep-fried', 'toasted', 'microwaved', 'pressure-cooked', 'reheated', 'kept-hot', 'soaked',
] as const;
export type CookingMethod = (typeof cookingMethods)[number];

export interface StepAction {
  /** The verb as a base form: "simmer", "roast", "stir". */
  readonly verb: string;
  readonly method: CookingMethod | null;
  readonly minutes: Interval | null;
  readonly celsius: number | null;
  readonly heat: Heat | null;
  readonly lid: boolean | null;
  /** "until golden": the writer's sign that it is done. */
  readonly until: string | null;
  /** Ids of the lines that this action takes up ("add the peppers"), or all so far ("everything"). */
  readonly lines: readonly string[];
  /** Lines already in the vessel when this action starts, including those it adds. */
  readonly inPot: readonly string[];
  readonly span: Span;
}

export interface MethodStep {
  readonly number: number;
  readonly text: string;
  readonly span: Span;
  readonly actions: readonly StepAction[];
}

export interface StatedServings {
  readonly count: Interval;
  readonly text: string;
  /** "makes 12 pancakes": what is counted, null for people. */
  readonly of: string | null;
}

/** Something the reader wants her to know or decide; words are in messages/. */
export interface Finding {
  readonly code: string;
  readonly lineId: string | null;
  readonly data: Readonly<Record<string, string | number>>;
  readonly severity: 'question' | 'warning' | 'note';
}

/** A recipe as read, nothing looked up yet. */
export interface Recipe {
  readonly title: string | null;
  readonly servings: StatedServings | null;
  readonly lines: readonly IngredientLine[];
  readonly steps: readonly MethodStep[];
  readonly findings: readonly Finding[];
  /** The text that spans point into. */
  readonly text: string;
}
