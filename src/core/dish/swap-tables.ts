import type { FoodForm } from '../foods/index.ts';

/** The parts that a food can play in a dish. */
export const dishRoles = ['body', 'starch', 'fat', 'liquid', 'crunch', 'sour', 'heat', 'sweet', 'aroma', 'protein', 'binding', 'salt'] as const;
export type DishRole = (typeof dishRoles)[number];

/** What stays the same when one food takes another's place. */
export const keptQualities = ['weight', 'volume', 'cooked weight', 'sweetness', 'sourness', 'salt', 'heat', 'thickening', 'flavour', 'fat', 'protein', 'lift'] as const;
export type KeptQuality = (typeof keptQualities)[number];

/** Foods that can take each other's place; data/tables/swaps/families.yaml, common practice. */
export interface SwapFamily {
  readonly id: string;
  readonly roles: readonly DishRole[];
  readonly keeps: KeptQuality;
  /** False where members are only loosely alike. */
  readonly tight: boolean;
  /** Kitchen names; foods in one group are nearest to each other. A name may stand in several groups. */
  readonly groups: readonly (readonly string[])[];
  /** Of the kept quality in a gram, by `name` or `name/form`; 1 where none is given. */
  readonly strength: Readonly<Record<string, number>>;
  /** Cooking minutes, by `name` or `name/form`. */
  readonly minutes: Readonly<Record<string, number>>;
}

export interface SwapTables {
  readonly families: readonly SwapFamily[];
}

/** The value of a member in a family, for its form first. */
export function ofMember(values: Readonly<Record<string, number>>, name: string, form: FoodForm | null): number | null {
  return (form === null ? undefined : values[`${name}/${form}`]) ?? values[name] ?? null;
}
