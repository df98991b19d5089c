import type { Plate } from './plate.ts';

/** One row of data/parameters/statements/racc.yaml. */
export interface ReferenceAmountRow {
  readonly words: readonly string[];
  readonly grams: number;
  /** Grams when the food is weighed dry. */
  readonly dryGrams?: number;
  readonly group: 'none' | 'protein' | 'dairy' | 'grain' | 'vegetable';
  readonly meat?: boolean;
}

const spaced = (text: string): string => ` ${text.toLowerCase().replace(/[^\p{L}]+/gu, ' ')} `;

/** The row for a food's name; null when none fits. */
export function referenceRow(rows: readonly ReferenceAmountRow[], name: string): ReferenceAmountRow | null {
  const text = spaced(name);
  return rows.find((row) => row.words.some((word) => text.includes(` ${word} `) || text.includes(` ${word}s `) || text.includes(` ${word}es `))) ?? null;
}

// 21 CFR 101.13(l) and (m): a meal weighs 10 oz and holds three portions of 40 g from two food groups, a main dish 6 oz and two.
const ounceG = 28.35;
const portionOfGroupG = 40;

/** Meal, main dish or single food, by the weight of a portion and what is in it. */
export function usKindOf(portionG: number, parts: readonly { readonly group: ReferenceAmountRow['group']; readonly grams: number }[]): Plate['usKind'] {
  const counted = parts.filter((p) => p.group !== 'none');
  const portions = counted.reduce((sum, p) => sum + Math.floor(p.grams / portionOfGroupG), 0);
  const groups = new Set(counted.filter((p) => p.grams >= portionOfGroupG).map((p) => p.group)).size;
  if (portionG >= 10 * ounceG && portions >= 3 && groups >= 2) return 'meal';
  return portionG >= 6 * ounceG && portions >= 2 && groups >= 2 ? 'main-dish' : 'individual-food';
}
