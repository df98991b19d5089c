import type { NutrientId } from '../foods/index.ts';
import type { Interval } from '../quantity/index.ts';

/**
 * What a portion holds of one nutrient, in the nutrient's unit. `partial`: at least this much, part of
 * the weight has no value. `unknown`: nothing is known, which is never zero; `portion` is then null.
 */
export interface PlateAmount {
  readonly state: 'complete' | 'partial' | 'unknown';
  readonly portion: Interval | null;
}

/** One food of the dish, as eaten. */
export interface PlateFood {
  readonly name: string;
  /** Names under which it may be spoken of, lower case. */
  readonly names: readonly string[];
  /** Grams that go into one portion, raw edible weight; null when unknown. */
  readonly portionG: number | null;
  /** Reference amount customarily consumed (21 CFR 101.12) of this kind of food, grams; null when not known. */
  readonly raccG: number | null;
  /** What this food gives to one portion, in the nutrient's unit. Absent: not known. */
  readonly gives: Readonly<Partial<Record<NutrientId, number>>>;
}

/** `unknown` where nobody has said: a claim that rests on it is then unknown too. */
export type Said = 'yes' | 'no' | 'unknown';

/** A dish as the rules of statements look at it. Built from a worked-out dish in app/. */
export interface Plate {
  readonly title: string;
  readonly form: 'solid' | 'liquid';
  /** Weight of one portion as eaten, grams. */
  readonly portionG: Interval;
  /** Grams in a millilitre, for liquids. */
  readonly gramsPerMl: number;
  readonly amounts: Readonly<Partial<Record<NutrientId, PlateAmount>>>;
  readonly foods: readonly PlateFood[];
  /** Sold in a pack that holds one portion: almost never true of a plated dish. */
  readonly singlePortionPack: boolean;
  readonly addedSugars: Said;
  readonly addedSalt: Said;
  /** The United States category: a single food, a main dish or a meal (21 CFR 101.13(l) and (m)). */
  readonly usKind: 'individual-food' | 'main-dish' | 'meal';
  /** Reference amount customarily consumed of the dish, grams (21 CFR 101.12). */
  readonly raccG: number;
  readonly meatOrFish: boolean;
  readonly allergens: readonly string[] | null;
}
