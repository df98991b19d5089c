import type { NutrientId } from '../foods/index.ts';

/** What a portion gives of one nutrient, ready to be told. */
export interface Given {
  readonly nutrient: NutrientId;
  readonly state: 'complete' | 'partial' | 'unknown' | 'not-in-tables';
  readonly unknownShare: number;
  /** Whether some line has no weight at all. */
  readonly lineWithoutWeight: boolean;
  /** Share of a day's reference intake that the portion gives; null without a reference. */
  readonly referenceShare: number | null;
  /** Lines by what they give, largest first; shares of the known sum. */
  readonly top: readonly { readonly lineId: string; readonly share: number }[];
}

export interface ReadingItem {
  readonly nutrient: NutrientId;
  readonly referenceShare: number;
  readonly atLeast: boolean;
  /** Lines that together give more than half, at most three. */
  readonly mostlyFrom: readonly string[];
}

// Told only where nutrition talk names them: parts of a sum (retinol, forms of folate) would be told twice.
const tellable = new Set<NutrientId>([
  'protein', 'fibre', 'vitamin-a', 'vitamin-d', 'vitamin-e', 'vitamin-k', 'vitamin-c', 'thiamin', 'riboflavin', 'niacin', 'pantothenic-acid',
  'vitamin-b6', 'folate', 'folate-dfe', 'vitamin-b12', 'choline', 'calcium', 'iron', 'magnesium', 'phosphorus', 'potassium', 'zinc', 'copper', 'manganese', 'selenium',
]);

// What women of this age are most often short of, or ask for, is told before the rest.
const toldFirst = new Set<NutrientId>(['iron', 'magnesium', 'calcium', 'zinc', 'folate-dfe', 'folate', 'vitamin-b6', 'vitamin-b12', 'vitamin-d', 'vitamin-c', 'fibre', 'protein', 'potassium', 'choline', 'selenium']);
// A gap of less than this share of the weight does not make a sum an "at least".
const barelyUnknown = 0.01;

/** The lines that give most, until they pass half of the known sum; at most three. */
export function mostlyFrom(top: Given['top']): string[] {
  const lines: string[] = [];
  let sum = 0;
  for (const { lineId, share } of top.slice(0, 3)) {
    if (share <= 0) break;
    lines.push(lineId);
    sum += share;
    if (sum > 0.5) break;
  }
  return lines;
}

/**
 * The `count` nutrients to tell of: first those that are most asked for, then the rest, each by
 * the share of a day that the portion gives, none below `least` (a share). A partial sum is told as "at least"; sums that miss more than half of
 * the weight are not told.
 */
export function portionReading(given: readonly Given[], count: number, least: number): ReadingItem[] {
  return given
    .filter((g) => tellable.has(g.nutrient) && g.referenceShare !== null && g.referenceShare >= least)
    .filter((g) => g.state === 'complete' || (g.state === 'partial' && g.unknownShare <= 0.5))
    .sort((a, b) => Number(toldFirst.has(b.nutrient)) - Number(toldFirst.has(a.nutrient)) || (b.referenceShare ?? 0) - (a.referenceShare ?? 0))
    .slice(0, count)
    .sort((a, b) => (b.referenceShare ?? 0) - (a.referenceShare ?? 0))
    .map((g) => ({ nutrient: g.nutrient, referenceShare: g.referenceShare ?? 0, atLeast: g.state === 'partial' && (g.lineWithoutWeight || g.unknownShare >= barelyUnknown), mostlyFrom: mostlyFrom(g.top) }));
}
