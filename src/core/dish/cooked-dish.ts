import type { Food, NutrientId } from '../foods/index.ts';
import type { Interval } from '../quantity/index.ts';
import { cookLine, type CookedLine } from './cooked-line.ts';
import { cookPot, type CookedPot } from './cooked-pot.ts';
import type { CookedTables } from './cooked-tables.ts';
import type { KeptShare } from './portion.ts';
import type { Recipe } from './recipe.ts';
import { treatmentOf, type Treatment, type TreatmentOverride } from './treatment.ts';

export interface DishToCook {
  readonly recipe: Recipe;
  /** Every line of the recipe; food or grams null where they are not known. */
  readonly lines: readonly { readonly lineId: string; readonly food: Food | null; readonly grams: Interval | null; readonly eaten: Interval }[];
  readonly overrides?: ReadonlyMap<string, TreatmentOverride>;
  /** The weight of the whole cooked dish, where she weighed it. */
  readonly measuredGrams?: number | null;
  readonly panWidthCm?: number | null;
}

export interface CookedDish {
  readonly treatments: ReadonlyMap<string, Treatment>;
  /** Lines with a food and a weight. */
  readonly lines: ReadonlyMap<string, CookedLine>;
  readonly pot: CookedPot;
  /** For the sums of portion.ts: what is left of a nutrient of a line. */
  kept(lineId: string, nutrient: NutrientId): KeptShare;
}

const whole: KeptShare = { share: { low: 1, value: 1, high: 1 }, reference: null };
const leastYield = 0.2;
const mostYield = 5;

/**
 * The mixed method (FAO/INFOODS): losses on each ingredient; weight on each ingredient that cooks
 * on its own and on the whole pot where the liquid is eaten. A measured weight of the whole
 * dish overrides the estimate and, where lines cook by their own yields, moves those.
 */
export function cookDish(dish: DishToCook, tables: CookedTables): CookedDish {
  const foods = new Map(dish.lines.map((line) => [line.lineId, line.food]));
  const reading = { recipe: dish.recipe, foods, ...(dish.overrides ? { overrides: dish.overrides } : {}) };
  const treatments = new Map(dish.lines.map(({ lineId }) => [lineId, treatmentOf(lineId, reading, tables.parameters.minutesUnsaid)]));
  // A weight of nothing was not weighed.
  const measuredGrams = dish.measuredGrams != null && dish.measuredGrams > 0 ? dish.measuredGrams : null;
  const known = dish.lines.flatMap(({ lineId, food, grams, eaten }) => (food && grams ? [{ lineId, food, grams, eaten, treatment: treatments.get(lineId)! }] : []));
  const otherGrams = dish.lines.reduce((sum, { food, grams, eaten }) => sum + (food === null && grams ? grams.value * eaten.value : 0), 0);
  const weigh = (scale: number | null): { cooked: Map<string, CookedLine>; pot: CookedPot } => {
    const cooked = new Map(known.map((line) => {
      const usual = cookLine(line, tables);
      const own = usual.weightYield;
      // A yield of exactly 1 is of food that is not cooked: it stays as it is.
      if (scale === null || !own || own.value === 1) return [line.lineId, usual] as const;
      return [line.lineId, cookLine({ ...line, measuredYield: Math.min(mostYield, Math.max(leastYield, own.value * scale)) }, tables)] as const;
    }));
    const lines = known.map((line) => ({ cooked: cooked.get(line.lineId)!, treatment: line.treatment, eaten: line.eaten }));
    return { cooked, pot: cookPot({ lines, otherGrams, measuredGrams, panWidthCm: dish.panWidthCm ?? null }, tables) };
  };
  let { cooked, pot } = weigh(null);
  if (measuredGrams !== null) {
    const movable = pot.lines.reduce((sum, line) => sum + (line.gramsOut && cooked.get(line.lineId)!.weightYield?.value !== 1 ? line.gramsOut.value : 0), 0);
    const rest = pot.estimatedGrams.value - movable;
    // Where a pot with its liquid makes up most of the dish, it is the steam that was misjudged, not the yields.
    const ownDish = movable > 0 && pot.lines.every((line) => line.gramsOut !== null);
    if (ownDish && measuredGrams > rest) ({ cooked, pot } = weigh((measuredGrams - rest) / movable));
  }
  return {
    treatments,
    lines: cooked,
    pot,
    kept(lineId, nutrient) {
      const value = cooked.get(lineId)?.values.get(nutrient);
      if (!value) return whole;
      const { used } = value.kept;
      return { share: value.kept.share, reference: used.kind === 'none' ? null : `${used.source}: ${used.locator}` };
    },
  };
}
