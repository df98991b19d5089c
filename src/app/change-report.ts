import type { AllergenState, DietVerdict, NutrientId } from '../core/foods/index.ts';
import type { PriceRow, PriceState, ScaledLineState, SeasonState } from '../core/dish/index.ts';
import type { DishChoices } from './dish-choices.ts';

/** What a dish holds, told by the allergen law of one place. */
export interface AllergenReport {
  readonly list: { readonly id: string; readonly name: string; readonly note: string; readonly source: string; readonly checked: string };
  readonly items: readonly AllergenItemReport[];
  /** Not on the list and told all the same. */
  readonly saidAnyway: readonly { readonly name: string; readonly state: AllergenState; readonly words: string }[];
  readonly diets: readonly { readonly id: string; readonly name: string; readonly verdict: DietVerdict; readonly words: string; readonly because: string }[];
  readonly fodmap: { readonly caution: string; readonly source: string; readonly lines: readonly { readonly lineId: string; readonly text: string; readonly kinds: readonly string[] }[] };
  readonly lines: readonly { readonly lineId: string; readonly text: string; readonly contains: readonly string[]; readonly may: readonly string[]; readonly unknown: boolean }[];
  readonly caution: string;
}

export interface AllergenItemReport {
  readonly id: string;
  readonly name: string;
  readonly clause: string;
  readonly state: AllergenState;
  readonly words: string;
  /** Which of its members, "walnut, almond". */
  readonly members: readonly string[];
  readonly reasons: readonly string[];
  readonly remark: string | null;
}

export interface SwapReport {
  readonly lineId: string;
  readonly line: string;
  readonly roles: readonly string[];
  readonly options: readonly SwapOptionReport[];
}

export interface SwapOptionReport {
  readonly name: string;
  readonly score: number;
  readonly why: readonly string[];
  /** The line as it would stand, null where it cannot be written. */
  readonly text: string | null;
  /** The whole recipe with it in; null likewise. */
  readonly recipe: string | null;
  readonly gramsBefore: number | null;
  readonly gramsAfter: number | null;
  readonly nutrients: readonly { readonly id: NutrientId; readonly name: string; readonly unit: string; readonly change: number | null; readonly words: string }[];
  readonly cost: { readonly change: number | null; readonly words: string };
  readonly allergens: readonly { readonly name: string; readonly before: AllergenState; readonly after: AllergenState; readonly words: string; readonly graver: boolean }[];
  readonly diets: readonly { readonly name: string; readonly words: string }[];
  readonly season: { readonly state: SeasonState; readonly words: string };
  readonly minutes: string | null;
  readonly fodmap: string | null;
}

export interface WishReport {
  readonly answers: readonly {
    readonly swaps: readonly { readonly lineId: string; readonly before: string; readonly after: string; readonly why: readonly string[] }[];
    readonly text: string;
    readonly nutrients: readonly { readonly id: NutrientId; readonly name: string; readonly words: string }[];
    readonly cost: string;
    readonly notSure: readonly string[];
  }[];
  /** What stands in the way when there is no answer. */
  readonly words: string;
}

export interface ScaleReport {
  readonly factor: number;
  readonly servings: number | null;
  readonly text: string;
  readonly choices: DishChoices;
  readonly lines: readonly { readonly lineId: string; readonly state: ScaledLineState; readonly before: string; readonly after: string; readonly words: string | null }[];
  readonly times: readonly string[];
  readonly warnings: readonly string[];
  readonly words: string;
}

export interface CostReport {
  readonly currency: string;
  readonly pot: string;
  readonly portion: string;
  readonly portionAmount: number;
  readonly missing: number;
  readonly stale: number;
  readonly words: string;
  readonly lines: readonly { readonly lineId: string; readonly text: string; readonly state: PriceState; readonly cost: string | null; readonly share: number; readonly words: string; readonly from: string | null }[];
  readonly packs: readonly { readonly food: string; readonly pack: string; readonly shop: string; readonly packs: number; readonly paid: string; readonly left: string; readonly leftCost: string }[];
  readonly paid: string;
  readonly leftCost: string;
}

export interface PriceListReport {
  readonly rows: readonly (PriceRow & { readonly readAs: string | null; readonly edibleG: number | null; readonly perKg: string | null; readonly ageDays: number | null; readonly stale: boolean; readonly problem: string | null })[];
}

export interface CompareReport {
  readonly columns: readonly { readonly name: string; readonly servings: string; readonly weightG: number; readonly energyKcal: number; readonly minutes: number | null; readonly cost: string; readonly costMissing: number; readonly lines: number; readonly statements: readonly string[] | null }[];
  readonly nutrients: readonly { readonly id: NutrientId; readonly name: string; readonly unit: string; readonly group: string; readonly cells: readonly CompareCell[]; readonly most: number | null }[];
  readonly allergens: readonly { readonly name: string; readonly cells: readonly { readonly state: AllergenState; readonly words: string }[]; readonly differ: boolean }[];
  readonly diets: readonly { readonly name: string; readonly cells: readonly { readonly verdict: DietVerdict; readonly words: string }[]; readonly differ: boolean }[];
  readonly onlyIn: readonly { readonly name: string; readonly lines: readonly string[] }[];
  readonly caution: string;
}

export interface CompareCell {
  /** Null where unknown. */
  readonly amount: number | null;
  readonly atLeast: boolean;
  readonly words: string;
  /** Against the first dish. */
  readonly change: string | null;
}

/** Her settings for changing dishes, as kept. */
export interface ChangeWords {
  readonly currency: string;
  readonly staleDays: number;
  readonly allergenList: string;
  readonly region: string;
}
