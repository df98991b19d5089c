import type { NutrientId } from '../foods/index.ts';

export const lawIds = ['eu', 'gb', 'us', 'codex'] as const;
export type LawId = (typeof lawIds)[number];

/** How far a rule was compared with its source: official text, a reproduction, or memory. */
export type Checked = 'text' | 'secondary' | 'memory';

/** Reference amounts a day that a law's conditions name, in the nutrient's unit. */
export interface ReferenceValues {
  readonly laws: readonly LawId[];
  readonly source: string;
  readonly locator: string;
  readonly checked: Checked;
  readonly from: string;
  readonly values: Readonly<Partial<Record<NutrientId, number>>>;
}

/** The law's reference amount of a nutrient; null when it has none. */
export function referenceValue(tables: readonly ReferenceValues[], law: LawId, nutrient: NutrientId): number | null {
  return tables.find((t) => t.laws.includes(law))?.values[nutrient] ?? null;
}
