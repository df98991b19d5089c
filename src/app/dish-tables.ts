import type { CautionRule, CookedTables, EnergyFactor, ReaderVocabulary, Recipe, ServingParameters, WeighingRules } from '../core/dish/index.ts';
import type { FoodIndex, FoodTable } from '../core/foods/index.ts';
import type { ReferenceIntakes } from '../core/people/index.ts';
import type { UnitTable } from '../core/quantity/index.ts';

/** A source that data/ cites. */
export interface Source {
  readonly id: string;
  readonly title: string;
  readonly publisher: string;
  readonly year: number | null;
  readonly attribution?: string;
  readonly from_memory?: boolean;
}

/** Everything that a dish is worked out with, loaded once by an adapter. */
export interface DishTables {
  readonly foods: FoodTable;
  readonly index: FoodIndex;
  readonly units: UnitTable;
  readonly vocabulary: ReaderVocabulary;
  readonly weighing: WeighingRules;
  readonly cooked: CookedTables;
  readonly intakes: ReferenceIntakes;
  readonly energyFactors: readonly EnergyFactor[];
  readonly servings: ServingParameters;
  readonly cautions: readonly CautionRule[];
  readonly sources: ReadonlyMap<string, Source>;
  /** Reads plain text, a saved page or JSON-LD, whichever the text is. */
  readonly read: (text: string) => Recipe;
}

/** "USDA National Nutrient Database …, 2015: 11233 1 cup" for a source id and locator. */
export function sourceText(tables: Pick<DishTables, 'sources'>, id: string | null, locator: string | null): string | null {
  if (id === null) return null;
  const source = tables.sources.get(id);
  const title = source ? `${source.title}${source.year === null ? '' : ` (${source.year})`}` : id;
  return locator === null || locator === '' ? title : `${title}: ${locator}`;
}
