import { isKnown, nutrientIds, type Food, type NutrientId } from '../foods/index.ts';
import { exactly, type Interval } from '../quantity/index.ts';
import { cookedFamily, type CookedFamily } from './cooked-family.ts';
import type { CitedInterval, CookedTables } from './cooked-tables.ts';
import { cookedWay, type CookedWay } from './cooked-way.ts';
import type { Kept } from './factor.ts';
import { absorbsItsWater, compositionOf, concentrationAt, deviationsOf80, keptShare } from './retention.ts';
import { combinedKept } from './retention-parts.ts';
import type { Treatment, TreatmentStage } from './treatment.ts';

/** Standard deviations in logs, by where they come from. */
export interface ValueDeviation {
  /** Foods of one name differ: IFCT's own standard deviation where it has one, else the usual one of the nutrient. */
  readonly composition: number;
  readonly weight: number;
  readonly factor: number;
}

/** One nutrient of one line, raw and cooked, for the whole weight of the line. */
export interface CookedValue {
  readonly nutrient: NutrientId;
  /** In 100 g of the food as it goes in. */
  readonly rawPer100g: number;
  readonly kept: Kept;
  /** In the nutrient's unit, with the 80 % range from composition, weight and factor. */
  readonly amount: Interval;
  readonly deviation: ValueDeviation;
}

export interface CookedLine {
  readonly lineId: string;
  readonly food: Food;
  readonly family: CookedFamily;
  readonly way: CookedWay | null;
  readonly grams: Interval;
  /** Grams out of a gram in, of the food itself; null where it shares a pot and its liquid. */
  readonly weightYield: CitedInterval | null;
  /** Known nutrients only: a nutrient that the table does not know is absent, not zero. */
  readonly values: ReadonlyMap<NutrientId, CookedValue>;
}

export interface LineToCook {
  readonly lineId: string;
  readonly food: Food;
  /** Grams of edible part as it goes into the pot. */
  readonly grams: Interval;
  readonly treatment: Treatment;
  /** A measured weight yield, grams out of a gram in, in place of the table's. */
  readonly measuredYield?: number | null;
}

const unchanged: CitedInterval = { ...exactly(1), source: 'common-practice', locator: 'not cooked, or only warmed' };

const driest = 20;
/** Dried pulses and the like: they take up the water that they cook in, listed or not. */
const isDry = (food: Food): boolean => {
  const water = food.value('water');
  return ['pulses', 'soya', 'pasta'].includes(cookedFamily(food)) && isKnown(water) && water.per100g < driest;
};

/** The weight yield of a food cooked that way; null where it stays in a liquid that is eaten. */
export function yieldOf(food: Food, treatment: Pick<Treatment, 'method' | 'liquid' | 'alreadyCooked'>, tables: CookedTables): CitedInterval | null {
  const way = cookedWay(treatment.method, treatment.liquid);
  if (way === null || way === 'reheated' || treatment.alreadyCooked) return treatment.liquid === 'kept' ? null : unchanged;
  const found = tables.yields.get(`${cookedFamily(food)} ${way}`);
  if (treatment.liquid === 'kept' && !absorbsItsWater(food) && !isDry(food)) return null;
  return found?.kept ?? (treatment.liquid === 'kept' ? null : unchanged);
}

/** Standard deviation in logs of a range that 8 in 10 fall into. */
export function deviationOfRange(range: Interval): number {
  if (!(range.low > 0) || !(range.high > range.low)) return 0;
  return Math.log(range.high / range.low) / (2 * deviationsOf80);
}

const times = (a: Kept, b: Kept): Kept => {
  const share = { low: a.share.low * b.share.low, value: a.share.value * b.share.value, high: a.share.high * b.share.high };
  return { ...a, share, deviation: Math.hypot(a.deviation, b.deviation) };
};

/** Stages beside the main one that take something more: boiled in water first, then kept hot or warmed again. */
function furtherStages(treatment: Treatment): TreatmentStage[] {
  const main = treatment.method;
  if (treatment.alreadyCooked) return treatment.stages.filter((stage) => stage.method === 'kept-hot');
  return treatment.stages.filter((stage) => stage.method !== main && ((stage.liquid === 'drained' && treatment.liquid !== 'drained') || stage.method === 'kept-hot' || stage.method === 'reheated'));
}

function keptOfLine(nutrient: NutrientId, line: LineToCook, concentration: number | null, tables: CookedTables): Kept {
  const { food, treatment } = line;
  const minutesOf = (stage: { minutes: Interval | null }): number | null => stage.minutes?.value ?? null;
  const cooking = { food, method: treatment.method, liquid: treatment.liquid, minutes: minutesOf(treatment), concentration };
  if (nutrient === 'alcohol') {
    // Every minute over heat counts for alcohol, whichever stage it is.
    const minutes = treatment.stages.reduce((sum, stage) => sum + (minutesOf(stage) ?? tables.parameters.minutesUnsaid[stage.method]), 0);
    return keptShare(nutrient, { ...cooking, minutes }, tables);
  }
  const main = keptShare(nutrient, cooking, tables);
  return furtherStages(treatment).reduce((kept, stage) => times(kept, keptShare(nutrient, { food, method: stage.method, liquid: stage.liquid, minutes: minutesOf(stage), concentration: null }, tables)), main);
}

/** A line cooked: what comes out of it, nutrient by nutrient, each with its factor and its doubt. */
export function cookLine(line: LineToCook, tables: CookedTables): CookedLine {
  const { food, treatment, grams } = line;
  const way = cookedWay(treatment.method, treatment.liquid);
  const measured = line.measuredYield ?? null;
  const weightYield = measured === null ? yieldOf(food, treatment, tables) : { ...exactly(measured), source: 'measured', locator: 'weighed by her' };
  const concentration = measured !== null && measured > 0 && way !== null ? concentrationAt(measured, food, way, tables) : null;
  const single = (nutrient: NutrientId): Kept => keptOfLine(nutrient, line, concentration, tables);
  const weight = deviationOfRange(grams);
  const values = new Map<NutrientId, CookedValue>();
  for (const nutrient of nutrientIds) {
    const value = food.value(nutrient);
    if (nutrient === 'water' || !isKnown(value)) continue;
    const kept = combinedKept(nutrient, food, single);
    const own = value.deviation !== null && value.per100g > 0 ? Math.sqrt(Math.log(1 + (value.deviation / value.per100g) ** 2)) : null;
    const deviation = { composition: value.per100g === 0 ? 0 : (own ?? compositionOf(nutrient, tables)), weight, factor: kept.deviation };
    const amount = (grams.value * value.per100g * kept.share.value) / 100;
    const reach = Math.exp(deviationsOf80 * Math.hypot(deviation.composition, deviation.weight, deviation.factor));
    values.set(nutrient, { nutrient, rawPer100g: value.per100g, kept, amount: { low: amount / reach, value: amount, high: amount * reach }, deviation });
  }
  return { lineId: line.lineId, food, family: cookedFamily(food), way, grams, weightYield, values };
}
