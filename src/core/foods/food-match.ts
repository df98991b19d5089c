import type { FoodCode } from './food.ts';
import type { FoodForm, KitchenEntry, Nearness } from './kitchen-name.ts';

/** Why a name was read as it was; words are in messages/foods.ts. */
export interface MatchNote {
  readonly code: MatchNoteCode;
  readonly data: Readonly<Record<string, string | number>>;
}

export const matchNoteCodes = [
  'name', 'own-food', 'slip-read', 'unknown-words', 'colour-ignored', 'part-ignored', 'other-order', 'second-food', 'form-asked', 'form-missing',
  'kitchen-note', 'table-name', 'several-meanings', 'no-table-food', 'no-food',
] as const;
export type MatchNoteCode = (typeof matchNoteCodes)[number];

/** Another food that the words could mean. */
export interface MatchAlternative {
  readonly name: string;
  readonly entry: KitchenEntry | null;
  readonly form: FoodForm | null;
  readonly code: FoodCode | null;
  readonly confidence: number;
}

/**
 * The food a line means. `code` is null when no table food stands for it: then the line has no
 * data, which is not the same as nothing in it. `confidence` runs from 0 to 1.
 */
export interface FoodMatch {
  readonly via: 'kitchen-name' | 'own' | 'search' | 'none';
  /** The kitchen entry, null for her own foods, for table foods found by search and for none. */
  readonly entry: KitchenEntry | null;
  readonly form: FoodForm | null;
  readonly code: FoodCode | null;
  readonly nearness: Nearness;
  /** What she should see beside the line; null when there is nothing to say. */
  readonly note: MatchNote | null;
  readonly confidence: number;
  readonly reasons: readonly MatchNote[];
  readonly alternatives: readonly MatchAlternative[];
}

/** What is known of the line beside the food's words. */
export interface MatchContext {
  readonly unit: string | null;
  readonly unitKind: 'mass' | 'volume' | 'length' | 'count' | null;
  /** False for "pepper, to taste": then the seasoning is meant, not the vegetable. */
  readonly hasAmount: boolean;
  /** Remarks of the line: `juice-only` and `zest-only` choose a form. */
  readonly remarks: readonly string[];
}
