import { exactly, type Interval } from '../quantity/index.ts';
import { isKnown, nutrientIds, type Food, type NutrientId, type ValueKind } from '../foods/index.ts';

/** What is left of a nutrient after cooking, 0 to 1 (a little above 1 where the pot adds some), and where the figure stands. */
export interface KeptShare {
  readonly share: Interval;
  /** Source id and locator of the factor, or null when no factor is applied. */
  readonly reference: string | null;
}

/** One line on its way into the sums: weights in grams of edible part as it goes into the pot. */
export interface PotLine {
  readonly lineId: string;
  /** Null when the tables have no such food: the line weighs, and gives no data. */
  readonly food: Food | null;
  /** Null when the weight is not known. */
  readonly grams: Interval | null;
  /** Share of the line that is eaten. */
  readonly eaten: Interval;
  kept(nutrient: NutrientId): KeptShare;
}

/** What one line gives to one nutrient of the whole pot. */
export interface Contribution {
  readonly lineId: string;
  readonly kind: ValueKind | 'no-food' | 'no-weight';
  /** Grams eaten of the line, as weighed into the pot. */
  readonly gramsEaten: number;
  readonly per100g: number | null;
  readonly deviation: number | null;
  readonly valueSource: string | null;
  readonly kept: KeptShare;
  /** In the nutrient's unit, whole pot; null where the value is missing. */
  readonly amount: number | null;
}

/**
 * The sum of one nutrient over the pot. `known` adds only what is known; `unknownShare` is the
 * share of the eaten weight without a value (0 to 1). `partial` sums are "at least"; `unknown`
 * means that no line has a value; lines without a weight make every sum partial.
 */
export interface NutrientTotal {
  readonly nutrient: NutrientId;
  readonly known: number;
  readonly state: 'complete' | 'partial' | 'unknown';
  readonly unknownShare: number;
  readonly contributions: readonly Contribution[];
}

export interface PotTotals {
  /** Grams of the lines that are eaten, as they went into the pot. */
  readonly weightEatenG: number;
  readonly linesWithoutWeight: readonly string[];
  readonly linesWithoutFood: readonly string[];
  readonly totals: ReadonlyMap<NutrientId, NutrientTotal>;
}

const nothingLost: KeptShare = { share: exactly(1), reference: null };

function contribution(line: PotLine, nutrient: NutrientId): Contribution {
  const { lineId } = line;
  // Written out whole each time: this runs for every line and nutrient, and copying an object is what it would spend its time on.
  const without = (kind: Contribution['kind'], gramsEaten: number, valueSource: string | null): Contribution => ({ lineId, kind, gramsEaten, per100g: null, deviation: null, valueSource, kept: nothingLost, amount: null });
  if (line.grams === null) return without('no-weight', 0, null);
  const gramsEaten = line.grams.value * line.eaten.value;
  if (line.food === null) return without('no-food', gramsEaten, null);
  const value = line.food.value(nutrient);
  if (!isKnown(value)) return without(value.kind, gramsEaten, value.reason ?? null);
  const kept = line.kept(nutrient);
  const amount = (gramsEaten * value.per100g * kept.share.value) / 100;
  return { lineId, kind: value.kind, gramsEaten, per100g: value.per100g, deviation: value.deviation, valueSource: value.source, kept, amount };
}

/**
 * The water of the cooked pot: what went in, more or less by as much as the pot's weight changed.
 * Fat that runs off and solids that leach are small beside the water, and are not told apart here.
 */
function cookedWater(total: NutrientTotal, weightEatenG: number, cookedWeightG: number): NutrientTotal {
  if (total.state === 'unknown') return total;
  return { ...total, known: Math.max(0, total.known + cookedWeightG - weightEatenG) };
}

/**
 * Adds the lines up, nutrient by nutrient. The order of the lines does not matter; missing values
 * stay missing. `cookedWeightG` is the weight of the eaten pot after cooking; without it nothing boils away.
 */
export function potTotals(lines: readonly PotLine[], cookedWeightG: number | null = null): PotTotals {
  const linesWithoutWeight = lines.filter((line) => line.grams === null && line.eaten.value > 0).map((line) => line.lineId);
  const linesWithoutFood = lines.filter((line) => line.food === null && line.eaten.value > 0).map((line) => line.lineId);
  const eatenLines = lines.filter((line) => line.eaten.value > 0);
  const weightEatenG = eatenLines.reduce((sum, line) => sum + (line.grams?.value ?? 0) * line.eaten.value, 0);
  const totals = new Map<NutrientId, NutrientTotal>();
  for (const nutrient of nutrientIds) {
    const contributions = eatenLines.map((line) => contribution(line, nutrient));
    const knownOnes = contributions.filter((c) => c.amount !== null);
    const unknownG = contributions.reduce((sum, c) => sum + (c.amount === null ? c.gramsEaten : 0), 0);
    const missing = contributions.some((c) => c.amount === null && (c.gramsEaten > 0 || c.kind === 'no-weight'));
    totals.set(nutrient, {
      nutrient,
      known: knownOnes.reduce((sum, c) => sum + (c.amount ?? 0), 0),
      state: !missing ? 'complete' : knownOnes.some((c) => c.gramsEaten > 0) ? 'partial' : 'unknown',
      unknownShare: weightEatenG > 0 ? unknownG / weightEatenG : 0,
      contributions,
    });
  }
  const water = totals.get('water');
  if (water && cookedWeightG !== null) totals.set('water', cookedWater(water, weightEatenG, cookedWeightG));
  return { weightEatenG, linesWithoutWeight, linesWithoutFood, totals };
}
