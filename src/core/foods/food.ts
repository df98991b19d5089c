import type { NutrientId } from './nutrient.ts';
import type { FoodValue } from './value.ts';

/** `sr28:09003`, `ifct2017:A001` or `own:…`: the table, then the table's own code. */
export type FoodCode = string;

/** A household measure that the table itself gives: this text weighs this much. */
export interface HouseholdMeasure {
  readonly text: string;
  readonly grams: number;
}

/** Kilocalories a gram that the table used for this food's energy (Atwater specific factors), where it says so. */
export interface EnergyFactors {
  readonly protein: number;
  readonly fat: number;
  readonly carbohydrate: number;
}

export interface Food {
  readonly code: FoodCode;
  readonly table: 'sr28' | 'ifct2017' | 'own';
  readonly name: string;
  readonly scientificName: string | null;
  readonly localNames: string | null;
  /** The table's own food group. */
  readonly group: string;
  /** Percent of the food as bought that is thrown away (peel, bone, core), with the table's words for it. */
  readonly refusePercent: number | null;
  readonly refuseText: string | null;
  readonly household: readonly HouseholdMeasure[];
  readonly energyFactors: EnergyFactors | null;
  /** The value of a nutrient in 100 g of the edible part. */
  value(nutrient: NutrientId): FoodValue;
}
