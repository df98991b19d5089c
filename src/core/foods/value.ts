/**
 * How a table came to a value. `tabulated`: the table gives a figure without saying whether
 * it was analysed or calculated. `assumed-zero`: nobody measured it, and the food cannot hold
 * it (cholesterol in a plant). `label`: from a pack. `curated`: added by Truepot from a cited
 * source. Missing is never zero: `not-measured` is an empty cell, `not-in-table` a nutrient
 * that the whole table lacks, `withheld` a printed figure that cannot be right and is not used
 * (data/tables/withheld-values.csv says why).
 */
export const valueKinds = ['not-measured', 'not-in-table', 'analysed', 'calculated', 'tabulated', 'assumed-zero', 'label', 'curated', 'withheld'] as const;
export type ValueKind = (typeof valueKinds)[number];
export type KnownKind = Exclude<ValueKind, 'not-measured' | 'not-in-table' | 'withheld'>;
export type MissingKind = Extract<ValueKind, 'not-measured' | 'not-in-table' | 'withheld'>;

/** A value in 100 g of the edible part, in the nutrient's unit; `deviation` is the table's standard deviation where it gives one. */
export interface KnownValue {
  readonly kind: KnownKind;
  readonly per100g: number;
  readonly deviation: number | null;
  /** Where the figure stands, when that is not the food's own table entry. */
  readonly source: string | null;
}
export interface MissingValue {
  readonly kind: MissingKind;
  /** Why a printed figure is withheld. */
  readonly reason?: string | undefined;
}
export type FoodValue = KnownValue | MissingValue;

export function isKnown(value: FoodValue): value is KnownValue {
  return value.kind !== 'not-measured' && value.kind !== 'not-in-table' && value.kind !== 'withheld';
}
