import { swapRanker, type PriceContext, type ScalingRules, type SeasonTable, type SwapRanker, type SwapTables } from '../core/dish/index.ts';
import { allergenReader, type AllergenReader, type AllergenTables } from '../core/foods/index.ts';
import type { DishTables } from './dish-tables.ts';

/** Tables beside those of the dish that a change needs, loaded once by an adapter. */
export interface ChangeTables {
  readonly allergens: AllergenTables;
  readonly scaling: ScalingRules;
  readonly swaps: SwapTables;
  readonly seasons: readonly SeasonTable[];
}

/** Her own side of a change: prices, season, the law that allergens are told by. */
export interface ChangeSettings {
  readonly prices: PriceContext;
  /** A currency sign or code, shown before amounts. */
  readonly currency: string;
  /** Id of an allergen list. */
  readonly allergenList: string;
  readonly region: string;
  /** 1 to 12. */
  readonly month: number;
  readonly ownSeasons: Readonly<Record<string, string>>;
}

/** Tables made ready, and her settings: what every use case of changing a dish works with. */
export interface ChangeContext {
  readonly tables: DishTables;
  readonly change: ChangeTables;
  readonly reader: AllergenReader;
  readonly ranker: SwapRanker;
  readonly settings: ChangeSettings;
}

/** Makes the tables ready once; the result serves any settings. */
export function changeContexts(tables: DishTables, change: ChangeTables): (settings: ChangeSettings) => ChangeContext {
  const reader = allergenReader(change.allergens, tables.index.entries);
  const ranker = swapRanker(change.swaps, tables.index.entries, tables.foods);
  return (settings) => ({ tables, change, reader, ranker, settings });
}
