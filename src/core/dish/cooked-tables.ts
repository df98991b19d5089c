import type { Interval } from '../quantity/index.ts';
import type { NutrientId } from '../foods/index.ts';
import type { CookedFamily } from './cooked-family.ts';
import type { CookedWay } from './cooked-way.ts';
import type { CookingMethod } from './recipe.ts';
import type { FittedModel } from './retention-model.ts';
import type { PublishedTable } from './retention-published.ts';

/** A figure with its range and where it stands. */
export interface CitedInterval extends Interval {
  readonly source: string;
  readonly locator: string;
}

/** Grams cooked from a gram raw, of the food itself (drained), with the water, fat and solids that moved. */
export interface WeightYield {
  readonly family: CookedFamily;
  readonly way: CookedWay;
  readonly kept: CitedInterval;
  /** Pairs behind it; 0 for figures of common practice. */
  readonly pairs: number;
  /** The figure of the other source, where there is one. */
  readonly other: { readonly value: number; readonly source: string } | null;
}

export interface CookedParameters {
  readonly evaporation: CitedInterval;
  readonly evaporationWithLid: CitedInterval;
  readonly evaporationLowHeat: CitedInterval;
  readonly evaporationBoiling: CitedInterval;
  readonly panWidth: CitedInterval;
  readonly mostWaterLost: CitedInterval;
  readonly density: CitedInterval;
  readonly solidsKeptWhenDrained: CitedInterval;
  readonly keptWithoutFactor: CitedInterval;
  readonly compositionSpreadOtherwise: CitedInterval;
  readonly time: {
    readonly nutrients: readonly NutrientId[];
    readonly least: number;
    readonly most: number;
    readonly minutes: Readonly<Record<CookedWay, number>>;
    readonly source: string;
    readonly locator: string;
  };
  readonly minutesUnsaid: Readonly<Record<CookingMethod, number>>;
}

/** Everything that cooking a line looks up. */
export interface CookedTables {
  readonly published: PublishedTable;
  readonly fitted: FittedModel;
  /** Key `family way`. */
  readonly yields: ReadonlyMap<string, WeightYield>;
  /** Standard deviation over mean within one food, median over the foods of IFCT 2017. */
  readonly compositionSpread: ReadonlyMap<NutrientId, number>;
  readonly parameters: CookedParameters;
}
