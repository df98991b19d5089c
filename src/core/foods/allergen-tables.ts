import type { FoodForm } from './kitchen-name.ts';

/** An allergen or what a diet asks about; ids stand in data/parameters/foods/allergen-lists.yaml. */
export type SubstanceId = string;

export interface Substance {
  readonly id: SubstanceId;
  readonly name: string;
  readonly kind: 'allergen' | 'diet';
  /** Words that name it, lower case. */
  readonly words: readonly string[];
}

/** One entry of a legal list, with the clause that names it. */
export interface AllergenListItem {
  readonly id: string;
  readonly name: string;
  readonly clause: string;
  readonly members: readonly SubstanceId[];
  readonly except: string | null;
  readonly remark: string | null;
}

/** The allergens that the law of one place names. */
export interface AllergenList {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  /** How the clauses were checked. */
  readonly checked: string;
  readonly note: string;
  readonly items: readonly AllergenListItem[];
}

/** `single`: one food with nothing added; `made`: few fixed ingredients; `ready`: makers' recipes differ, so what is not named is unknown. */
export type CompositionBasis = 'single' | 'made' | 'ready';

/** What a food is known to hold. With basis `ready`, every substance not named here is unknown. */
export interface Composition {
  readonly basis: CompositionBasis;
  readonly contains: readonly SubstanceId[];
  /** In some recipes or kinds. */
  readonly may: readonly SubstanceId[];
  /** From shared fields, mills or lines. */
  readonly cross: readonly SubstanceId[];
  readonly why: string | null;
}

/** What a form of a food adds; no areas means all. */
export interface AllergenFormRule extends Partial<Omit<Composition, 'why'>> {
  readonly forms: readonly FoodForm[];
  readonly areas: readonly string[];
  readonly why: string;
}

/** Words of a line that add something. */
export interface AllergenTreatment extends Omit<Composition, 'cross'> {
  readonly words: readonly string[];
}

/** Words that deny something: what they deny becomes "may", never "not". */
export interface AllergenClaim {
  readonly words: readonly string[];
  readonly lowers: readonly SubstanceId[];
}

/** What the group and name of a table food prove, where the kitchen has no name for it. */
export interface TableFoodRule extends Composition {
  readonly table: string;
  readonly group: string;
  readonly name: string | null;
}

export interface Diet {
  readonly id: string;
  readonly name: string;
  readonly brokenBy: readonly SubstanceId[];
  /** Makes the diet uncertain where it is contained. */
  readonly doubtful: readonly SubstanceId[];
  readonly source: string;
  readonly locator: string;
}

export interface FodmapNotes {
  readonly source: string;
  readonly locator: string;
  readonly except: readonly string[];
  readonly notes: readonly { readonly kind: string; readonly words: readonly string[] }[];
}

/** Everything that allergens and diets are inferred with. */
export interface AllergenTables {
  readonly substances: readonly Substance[];
  readonly lists: readonly AllergenList[];
  /** Told in plain words whatever the list says. */
  readonly saidAnyway: readonly SubstanceId[];
  /** By kitchen name; a kitchen name that is not here is unknown. */
  readonly entries: Readonly<Record<string, Composition>>;
  readonly forms: readonly AllergenFormRule[];
  readonly treatments: readonly AllergenTreatment[];
  readonly claims: readonly AllergenClaim[];
  readonly neutral: readonly string[];
  readonly readAs: Readonly<Record<string, string>>;
  readonly tableFoods: readonly TableFoodRule[];
  readonly diets: readonly Diet[];
  readonly fodmap: FodmapNotes;
}
