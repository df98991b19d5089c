import type { FoodCode } from '../core/foods/index.ts';
import type { IntakeAuthority } from '../core/people/index.ts';
import type { DishChoices } from './dish-choices.ts';
import type { DishReport, Explanation } from './dish-report.ts';
import type { DishTables } from './dish-tables.ts';
import type { Store } from './ports.ts';

/** A food offered in the picker. */
export interface FoodOffer {
  readonly code: FoodCode;
  /** What the kitchen calls it, or the table's name where the kitchen has none. */
  readonly name: string;
  readonly tableName: string;
  readonly state: string | null;
  readonly table: string;
}

/** What can be chosen on the desk. */
export interface DeskOptions {
  readonly lifeStages: readonly { readonly id: string; readonly label: string; readonly authorities: readonly IntakeAuthority[] }[];
  readonly measures: readonly { readonly id: string; readonly label: string }[];
  readonly methods: readonly { readonly id: string; readonly label: string }[];
  readonly nutrients: readonly { readonly id: string; readonly name: string; readonly unit: string; readonly group: string }[];
  readonly usualChoices: DishChoices;
  readonly demos: readonly { readonly name: string; readonly text: string }[];
}

/** Everything that the faces ask for. The same object serves the CLI, the desk and other programs. */
export interface Desk {
  readonly store: Store;
  /** The tables with her own foods in them. */
  tables(): Promise<DishTables>;
  options(): DeskOptions;
  workOut(text: string, choices: DishChoices): Promise<DishReport>;
  /** The whole path of one nutrient of a portion; throws `unknown-nutrient`. */
  explain(text: string, choices: DishChoices, nutrient: string): Promise<Explanation>;
  searchFoods(query: string, limit: number): Promise<FoodOffer[]>;
}
