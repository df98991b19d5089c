import type { Food, NutrientId } from '../foods/index.ts';
import type { Interval } from '../quantity/index.ts';
import { cookedFamily, cookedGroup, cookedKingdom } from './cooked-family.ts';
import type { CookedTables } from './cooked-tables.ts';
import { cookedWay, fittedWay, type CookedWay, type FittedWay, type LiquidFate } from './cooked-way.ts';
import type { CookingMethod } from './recipe.ts';
import { fittedShare, logRise, type FittedSpread, type ModelCase } from './retention-model.ts';
import { publishedRow, type PublishedRow } from './retention-published.ts';
import { timeExponent } from './retention-time.ts';
import { alcoholKept } from './retention-alcohol.ts';
import type { Factor, FactorWhy, Kept } from './factor.ts';

/** How a line is cooked, in the terms of the factor tables. */
export interface Cooking {
  readonly food: Food;
  readonly method: CookingMethod;
  readonly liquid: LiquidFate;
  readonly minutes: number | null;
  readonly stirred?: boolean;
  /** Log of dry matter in 100 g cooked over raw; null: take the family's usual one. */
  readonly concentration: number | null;
}

/** A normal 80 % interval reaches 1.2816 standard deviations either way. */
export const deviationsOf80 = 1.2816;
const sure: Interval = { low: 1, value: 1, high: 1 };

const fatLike = new Set<NutrientId>(['saturates', 'monounsaturates', 'polyunsaturates', 'trans-fat', 'linoleic', 'alpha-linolenic', 'epa-dha']);
const fittedAs: Partial<Record<NutrientId, NutrientId>> = { 'food-folate': 'folate', 'folic-acid': 'folate', starch: 'carbohydrate' };
const minerals = new Set<NutrientId>(['calcium', 'iron', 'magnesium', 'phosphorus', 'potassium', 'sodium', 'zinc', 'copper', 'manganese', 'selenium', 'iodine', 'chromium', 'molybdenum', 'fluoride', 'chloride', 'ash']);
/** Kept whole by the convention of every recipe calculation: the anchor of the fit, and what heat does not touch. */
const keptWhole = new Set<NutrientId>(['protein', 'cholesterol', 'caffeine']);

const saltierThan = 20_000;
function isSaltOrFat(food: Food): boolean {
  const sodium = food.value('sodium');
  return cookedFamily(food) === 'fats' || ('per100g' in sodium && sodium.per100g > saltierThan);
}

export function absorbsItsWater(food: Food): boolean {
  const family = cookedFamily(food);
  return ['cereals', 'fruit'].includes(cookedGroup(family)) && family !== 'pasta';
}

export function modelCaseOf(food: Food, way: FittedWay, concentration: number): ModelCase {
  const family = cookedFamily(food);
  const [water, fat] = [food.value('water'), food.value('fat')];
  const dry = 100 - ('per100g' in water ? water.per100g : 0);
  return { family, way, concentration, fatShare: dry > 0 && 'per100g' in fat ? Math.min(1, fat.per100g / dry) : 0 };
}

/** Share of a plant's dry matter that stays in it: some goes with water that is poured away. 1 elsewhere. */
export function solidsKept(food: Food, way: CookedWay, tables: CookedTables): number {
  const drained = way === 'boiled-drained' || way === 'braised-drained';
  return drained && cookedKingdom(cookedFamily(food)) === 'plant' ? tables.parameters.solidsKeptWhenDrained.value : 1;
}

/** The concentration at which a line of this weight yield stands: what is kept whole rises per 100 g by one over the yield. */
export function concentrationAt(weightYield: number, food: Food, way: CookedWay, tables: CookedTables): number | null {
  const fitted = fittedWay(way, absorbsItsWater(food));
  if (!fitted) return null;
  const at = (concentration: number): number => logRise(tables.fitted.solids, modelCaseOf(food, fitted, concentration), null);
  // The model is a straight line in concentration within its bounds.
  const slope = (at(0.5) - at(-0.5)) || 1;
  return (-Math.log(weightYield / solidsKept(food, way, tables)) - at(0)) / slope;
}

const deviationOf = (spread: FittedSpread): number => (spread.high - spread.low) / (2 * deviationsOf80);

/** The factor's own part of the scatter: raw and cooked samples each bring the spread of composition along. */
function factorDeviation(spread: FittedSpread, composition: number): number {
  const total = deviationOf(spread);
  return Math.sqrt(Math.max(total * total - 2 * composition * composition, (0.3 * total) ** 2));
}

interface Choice {
  readonly used: Factor;
  readonly other: Factor | null;
  readonly why: FactorWhy;
  readonly deviation: number;
}

function usualConcentration(cooking: Cooking, way: CookedWay, tables: CookedTables): number {
  const usual = tables.yields.get(`${cookedFamily(cooking.food)} ${way}`);
  return (usual && concentrationAt(usual.kept.value, cooking.food, way, tables)) ?? 0;
}

function fittedFactor(nutrient: NutrientId, cooking: Cooking, way: CookedWay, tables: CookedTables): { factor: Factor; deviation: number } | null {
  const fitted = fittedWay(way, absorbsItsWater(cooking.food));
  const model = tables.fitted.nutrients.get(fittedAs[nutrient] ?? nutrient);
  if (!fitted || !model) return null;
  const published = publishedRow(tables.published, cooking.food, way)?.kept[nutrient] ?? 1;
  const modelCase = modelCaseOf(cooking.food, fitted, cooking.concentration ?? usualConcentration(cooking, way, tables));
  const share = fittedShare(model.coefficients, modelCase, published) * solidsKept(cooking.food, way, tables);
  const locator = `${nutrient}, ${modelCase.family}, ${fitted}`;
  const spread = model.spread[cookedKingdom(modelCase.family)];
  return { factor: { kind: 'fitted', share, source: tables.fitted.source, locator }, deviation: factorDeviation(spread, compositionOf(nutrient, tables)) };
}

function publishedFactor(nutrient: NutrientId, row: PublishedRow | null, cooking: Cooking, tables: CookedTables): { factor: Factor; deviation: number } | null {
  const share = row?.kept[nutrient];
  if (!row || share === undefined) return null;
  const spread = tables.fitted.nutrients.get(fittedAs[nutrient] ?? nutrient)?.publishedSpread[cookedKingdom(cookedFamily(cooking.food))];
  return {
    factor: { kind: 'published', share, source: tables.published.source, locator: `row ${row.code}` },
    deviation: spread ? factorDeviation(spread, compositionOf(nutrient, tables)) : 0.15,
  };
}

export function compositionOf(nutrient: NutrientId, tables: CookedTables): number {
  return tables.compositionSpread.get(nutrient) ?? tables.parameters.compositionSpreadOtherwise.value;
}

function choose(nutrient: NutrientId, cooking: Cooking, way: CookedWay, tables: CookedTables): Choice {
  const { keptWithoutFactor } = tables.parameters;
  const row = publishedRow(tables.published, cooking.food, way);
  const published = publishedFactor(nutrient, row, cooking, tables);
  const fitted = fittedFactor(nutrient, cooking, way, tables);
  const pick = (one: { factor: Factor; deviation: number }, two: typeof one | null, why: FactorWhy): Choice => ({ used: one.factor, other: two?.factor ?? null, why, deviation: one.deviation });
  if (published && fitted) {
    const use = tables.fitted.nutrients.get(fittedAs[nutrient] ?? nutrient)!.use;
    return use === 'fitted' ? pick(fitted, published, 'better-on-held-out-families') : pick(published, fitted, 'better-on-held-out-families');
  }
  if (fitted) return pick(fitted, null, 'only-source');
  if (published) return pick(published, null, cooking.liquid === 'kept' ? 'liquid-is-eaten' : way === 'reheated' ? 'warmed-only' : 'only-source');
  if (way === 'reheated') return pick({ factor: none(1, 'warming'), deviation: 0.05 }, null, 'warmed-only');
  if (cooking.liquid === 'kept') {
    if (minerals.has(nutrient)) return pick({ factor: none(1, 'minerals stay in a liquid that is eaten'), deviation: 0.03 }, null, 'stays-in-the-pot');
    const dry = fittedFactor(nutrient, cooking, cookedKingdom(cookedFamily(cooking.food)) === 'plant' ? 'steamed' : 'roasted', tables);
    if (dry) return pick(dry, null, 'nearest-way-without-leaching');
  }
  const low = cooking.liquid === 'drained' ? keptWithoutFactor.low : Math.sqrt(keptWithoutFactor.low);
  return pick({ factor: none(keptWithoutFactor.value, keptWithoutFactor.locator), deviation: -Math.log(low) / deviationsOf80 }, null, 'no-factor-known');
}

const none = (share: number, locator: string): Factor => ({ kind: 'none', share, source: 'common-practice', locator });

function uncooked(why: FactorWhy): Kept {
  return { share: sure, used: none(1, 'not cooked'), other: null, why, deviation: 0, time: 1 };
}

function fixed(why: FactorWhy): Kept {
  return { share: sure, used: none(1, 'kept whole by convention'), other: null, why, deviation: 0.02, time: 1 };
}

/**
 * What is left of a nutrient after one way of cooking, with the 80 % range of the factor. The
 * share is of the raw food's content, never above 1: cooking makes no nutrient.
 */
export function keptShare(nutrient: NutrientId, cooking: Cooking, tables: CookedTables): Kept {
  const way = cookedWay(cooking.method, cooking.liquid);
  if (nutrient === 'alcohol') return alcoholKept(cooking, tables.published);
  if (way === null) return uncooked('not-cooked');
  if (keptWhole.has(nutrient)) return fixed('only-source');
  if (isSaltOrFat(cooking.food) && (minerals.has(nutrient) || nutrient === 'fat' || fatLike.has(nutrient))) return fixed('only-source'); // what stays in the water or the pan is the share eaten
  if (fatLike.has(nutrient)) return { ...keptShare('fat', cooking, tables), why: 'moves-with-the-fat' };
  if (cooking.liquid === 'kept' && ['fat', 'carbohydrate', 'sugars', 'starch', 'fibre'].includes(nutrient)) return fixed('liquid-is-eaten');
  const choice = choose(nutrient, cooking, way, tables);
  const time = timeExponent(nutrient, way, cooking.minutes, tables.parameters);
  const used = time === 1 ? choice.used : { ...choice.used, share: choice.used.share ** time };
  const reach = deviationsOf80 * choice.deviation;
  const share = { low: used.share * Math.exp(-reach), value: used.share, high: Math.min(1, used.share * Math.exp(reach)) };
  return { share, used, other: choice.other, why: choice.why, deviation: choice.deviation, time };
}
