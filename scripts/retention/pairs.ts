import { isKnown, type Food, type NutrientId } from '../../src/core/foods/index.ts';
import { cookedFamily, cookedGroup, cookedKingdom, type CookedFamily } from '../../src/core/dish/cooked-family.ts';
import { fittedWay, type CookedWay, type FittedWay } from '../../src/core/dish/cooked-way.ts';
import { publishedRow, type PublishedRow, type PublishedTable } from '../../src/core/dish/retention-published.ts';

/**
 * Raw and cooked entries of SR28 that name the same food. The rules are the ones documented in
 * docs/how-a-cooked-value-is-worked-out.md: a description is cut at its commas, the words of
 * state are taken out, and what is left must be the same words in the same food group.
 */
export interface CookedPair {
  readonly raw: Food;
  readonly cooked: Food;
  readonly family: CookedFamily;
  readonly way: CookedWay;
  readonly fitted: FittedWay;
  readonly published: PublishedRow | null;
}

/** How many cooked entries each rule took out, in the order of the rules. */
export type RuleCounts = Map<string, number>;

export interface PairSet {
  readonly pairs: readonly CookedPair[];
  readonly counts: RuleCounts;
  /** The pairs that the last rule (evidently calculated) took out. */
  readonly calculated: readonly CookedPair[];
}

const stateWords =
  /^(raw|cooked|boiled|drained|without salt( added)?|with salt( added)?|no salt added|with added salt|without added salt|dry heat|moist heat|roasted|braised|broiled|grilled|baked|pan-fried|fried|stewed|simmered|steamed|microwaved|toasted|stir-fried|heated|dry roasted|oil roasted|pan-broiled|pan-broiled crumbles|crumbles|fast roasted|slow roasted|fast fried|cooked with water|unprepared|prepared|dry|uncooked|unheated|cooked in skin|flesh|baked or broiled|cooked simmered|patty cooked|steaks|boiled with salt|dried|dry-roasted|unenriched|enriched|from fresh|cooked without skin|without skin|skin only)$/;
const rawWords = /^(raw|uncooked|unprepared|dry|unheated|dried)$/;
const cookedWords = /cooked|boil|roast|brais|broil|grill|bak|fr[iy]ed|stew|simmer|steam|microw|toast|heated/;
const addedThings = /with salt|salt added|with added salt|batter|flour|breaded|candied|with sugar|stuffing|glaze|added solution|with gravy|enhanced|oil roasted|oil-roasted/;
const saltLeftOut = /without salt added|no salt added|without added salt|without salt/g;

function parse(name: string): { stem: string; state: string[] } {
  const tokens = name
    .replace('boiled. drained', 'boiled, drained')
    .replace('drained without salt', 'drained, without salt')
    .replace(/\s*\((includes|may have|not previously)[^)]*\)/gi, '')
    .split(', ')
    .map((token) => token.trim());
  const state = tokens.filter((token) => stateWords.test(token));
  const stem = tokens.filter((token) => !stateWords.test(token)).map((token) => token.toLowerCase()).sort();
  return { stem: stem.join('|'), state };
}

/** The way of cooking that a description names; `cooked` alone is boiled for plants and roasted for flesh. */
function wayOf(state: string, family: CookedFamily): CookedWay {
  const plant = cookedKingdom(family) === 'plant';
  const absorbs = ['cereals', 'fruit'].includes(cookedGroup(family)) && family !== 'pasta';
  if (/microwav|steamed/.test(state)) return 'steamed';
  if (/brais|stewed|simmered/.test(state)) return plant ? (absorbs ? 'boiled-kept' : 'boiled-drained') : 'braised-drained';
  if (/boil(?!er)|cooked with water|moist heat/.test(state) && !/pan-broiled|broiled/.test(state)) return plant ? (absorbs ? 'boiled-kept' : 'boiled-drained') : 'braised-drained';
  if (/fried/.test(state)) return /stir-fried/.test(state) ? 'stir-fried' : 'fried';
  if (/broil|grill|toast/.test(state)) return 'grilled';
  if (/roast|bak|dry heat/.test(state)) return 'roasted';
  if (!plant) return /crumbles/.test(state) ? 'fried' : 'roasted';
  return absorbs ? 'boiled-kept' : 'boiled-drained';
}

const enrichment = (name: string): string => (/unenriched/.test(name) ? 'unenriched' : /enriched/.test(name) ? 'enriched' : 'plain');

/** Decimals that SR28's abbreviated file prints for a nutrient; half of the last place is the rounding error. */
const decimals: Partial<Record<NutrientId, number>> = {
  calcium: 0, magnesium: 0, phosphorus: 0, potassium: 0, sodium: 0, folate: 0, 'food-folate': 0, retinol: 0, 'beta-carotene': 0, iron: 2, zinc: 2, protein: 2, fat: 2, water: 2,
  copper: 3, manganese: 3, thiamin: 3, riboflavin: 3, niacin: 3, 'pantothenic-acid': 3, 'vitamin-b6': 3, selenium: 1, 'vitamin-c': 1, choline: 1, 'vitamin-k': 1, 'vitamin-b12': 2, 'vitamin-e': 2, carbohydrate: 2, sugars: 2, fibre: 1,
};

export function halfPlace(nutrient: NutrientId): number {
  return 0.5 * 10 ** -(decimals[nutrient] ?? 0);
}

export function amount(food: Food, nutrient: NutrientId): number | null {
  const value = food.value(nutrient);
  return isKnown(value) ? value.per100g : null;
}

const dry = (food: Food): number | null => {
  const water = amount(food, 'water');
  return water === null ? null : 100 - water;
};

/** Dry matter in 100 g cooked over that in 100 g raw. */
export function dryMatterRatio(pair: Pick<CookedPair, 'raw' | 'cooked'>): number {
  return dry(pair.cooked)! / dry(pair.raw)!;
}

const tested: NutrientId[] = ['magnesium', 'potassium', 'phosphorus', 'zinc', 'copper', 'manganese', 'iron', 'calcium', 'thiamin', 'vitamin-b6', 'niacin', 'riboflavin', 'pantothenic-acid', 'selenium', 'folate', 'choline'];

/**
 * How much likelier the cooked entry is raw × a factor in steps of 5 % ÷ one yield than an analysis
 * of its own: a log likelihood ratio over the nutrients. A nutrient scores where the implied share
 * lies, within the rounding of the two printed figures, on the published factor or on a multiple of 5 %.
 */
export function calculatedScore(pair: CookedPair): number {
  const items = tested.flatMap((nutrient) => {
    const [x, y] = [amount(pair.raw, nutrient), amount(pair.cooked, nutrient)];
    const half = halfPlace(nutrient);
    if (!x || !y || x - half <= 0) return [];
    const [low, high] = [(y - half) / (x + half), (y + half) / (x - half)];
    return high / low > 1.08 ? [] : [{ nutrient, low, high }];
  });
  if (items.length < 5) return -Infinity;
  const yields = [1 / dryMatterRatio(pair)];
  const [p, q] = [amount(pair.raw, 'protein'), amount(pair.cooked, 'protein')];
  if (p && q) yields.push(p / q);
  for (const { nutrient, low, high } of items) if (['magnesium', 'zinc', 'manganese', 'potassium'].includes(nutrient)) for (const kept of [1, 0.95, 0.9]) yields.push((2 * kept) / (low + high));
  const steps = Array.from({ length: 20 }, (_, i) => (i + 1) / 20);
  let best = -Infinity;
  for (const weightYield of yields) {
    let score = 0;
    for (const { nutrient, low, high } of items) {
      const [a, b] = [low * weightYield * 0.995, high * weightYield * 1.005];
      const published = pair.published?.kept[nutrient];
      const named = published === undefined ? [1, 0.95, 0.9, 0.85] : [published];
      const chance = published === undefined ? Math.min(0.9, Math.max(0.25, (b - a) / 0.05)) : Math.min(0.9, Math.max(0.2, (b - a) / 0.3));
      if (named.some((f) => a <= f && f <= b)) score += Math.log(0.9 / chance);
      else if (steps.some((f) => a <= f && f <= b)) score += 0.5 * Math.log(0.9 / Math.max(0.45, Math.min(0.9, (b - a) / 0.05)));
      else score += Math.log(0.1 / (1 - Math.max(chance, 0.3)));
    }
    best = Math.max(best, score);
  }
  return best;
}

/** A score above this is taken for calculated: the scores fall into two heaps with few between 0 and 4. */
export const calculatedFrom = 4;

/** Half the last printed place may be at most this share of both values, or the pair says nothing about that nutrient. */
export const coarsest = 0.05;

/** Whether both printed values are fine enough to say something; `bound` Infinity takes every pair of values above zero. */
export function fineEnough(pair: CookedPair, nutrient: NutrientId, bound = coarsest): boolean {
  const [x, y] = [amount(pair.raw, nutrient), amount(pair.cooked, nutrient)];
  return x !== null && y !== null && x > 0 && y > 0 && halfPlace(nutrient) <= bound * Math.min(x, y);
}

export function cookedPairs(foods: readonly Food[], table: PublishedTable): PairSet {
  const counts: RuleCounts = new Map();
  const count = (rule: string): void => void counts.set(rule, (counts.get(rule) ?? 0) + 1);
  const sr28 = foods.filter((food) => food.table === 'sr28');
  const raws = new Map<string, Food[]>();
  for (const food of sr28) {
    const { stem, state } = parse(food.name);
    if (!state.some((t) => rawWords.test(t)) || state.some((t) => /^(cooked|boiled|roasted|heated|baked)/.test(t))) continue;
    const key = `${food.group}|${stem}`;
    raws.set(key, [...(raws.get(key) ?? []), food]);
  }
  const pairs: CookedPair[] = [];
  const calculated: CookedPair[] = [];
  for (const cooked of sr28) {
    const { stem, state } = parse(cooked.name);
    if (state.some((t) => rawWords.test(t)) || !cookedWords.test(state.join(', '))) continue;
    const candidates = raws.get(`${cooked.group}|${stem}`);
    if (!candidates) {
      count('cooked entries without a raw entry of the same words');
      continue;
    }
    count('cooked entries with a raw entry of the same words');
    if (addedThings.test(cooked.name.toLowerCase().replace(saltLeftOut, ''))) {
      count('- salt, sugar, fat, batter or solution added');
      continue;
    }
    const raw = candidates.find((food) => enrichment(food.name) === enrichment(cooked.name)) ?? candidates.find((food) => enrichment(cooked.name) === 'plain' || enrichment(food.name) === 'plain');
    if (!raw || (enrichment(cooked.name) === 'unenriched' && enrichment(raw.name) !== 'unenriched')) {
      count('- enriched against unenriched');
      continue;
    }
    if (dry(raw) === null || dry(cooked) === null || !amount(raw, 'protein') || !amount(cooked, 'protein')) {
      count('- no water or no protein');
      continue;
    }
    const family = cookedFamily(raw);
    const way = wayOf(state.join(', '), family);
    const fitted = fittedWay(way, true);
    if (!fitted) continue;
    const pair: CookedPair = { raw, cooked, family, way, fitted, published: publishedRow(table, raw, way, family) };
    if (calculatedScore(pair) > calculatedFrom) {
      count('- evidently calculated from the raw entry by factors, not analysed');
      calculated.push(pair);
      continue;
    }
    pairs.push(pair);
  }
  counts.set('= pairs kept', pairs.length);
  return { pairs, counts, calculated };
}
