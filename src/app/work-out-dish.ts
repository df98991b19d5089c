import {
  cookDish, decideServings, declaredEnergy, eatenShare, lineKeys, matchLine, potTotals, raisedCautions, weighLine,
  type CookedDish, type DeclaredEnergy, type Eaten, type IngredientLine, type LineCorrection, type PotLine, type PotTotals, type RaisedCaution, type Recipe, type Servings, type TreatmentOverride, type Weighing,
} from '../core/dish/index.ts';
import type { Food, FoodMatch, NutrientId } from '../core/foods/index.ts';
import { exactly, type Interval } from '../core/quantity/index.ts';
import type { DishChoices } from './dish-choices.ts';
import type { DishTables } from './dish-tables.ts';

/** One line with everything that was found out about it, her corrections applied. */
export interface WorkedLine {
  readonly line: IngredientLine;
  readonly key: string;
  readonly correction: LineCorrection | null;
  readonly match: FoodMatch;
  readonly food: Food | null;
  readonly weighing: Weighing;
  /** Edible grams into the pot. */
  readonly grams: Interval | null;
  readonly eaten: Eaten;
  readonly eatenShare: Interval;
}

/** A dish worked out, before it is put into words. */
export interface WorkedDish {
  readonly recipe: Recipe;
  readonly choices: DishChoices;
  readonly lines: readonly WorkedLine[];
  readonly lineById: ReadonlyMap<string, WorkedLine>;
  readonly cooked: CookedDish;
  readonly totals: PotTotals;
  readonly servings: Servings;
  /** Of the whole pot. */
  readonly energy: DeclaredEnergy;
  readonly cautions: readonly RaisedCaution[];
}

function correctedMatch(match: FoodMatch, correction: LineCorrection | null, tables: DishTables): FoodMatch {
  if (correction?.food === undefined) return match;
  const base = { entry: match.entry, form: match.form, note: null, confidence: 1, reasons: [], alternatives: match.alternatives, via: 'search' as const };
  if (correction.food === 'none') return { ...base, entry: null, form: null, via: 'none', code: null, nearness: 'none' };
  const food = tables.foods.find(correction.food);
  if (food === null) return match; // A food of her own that has gone: the reading stands, and a finding says so.
  const sameEntry = match.entry !== null && Object.values(match.entry.forms).some((form) => form.code === food.code);
  return { ...base, entry: sameEntry ? match.entry : null, form: sameEntry ? match.form : null, via: food.table === 'own' ? 'own' : 'search', code: food.code, nearness: 'same' };
}

function workOutLine(line: IngredientLine, at: { readonly key: string; readonly recipe: Recipe; readonly choices: DishChoices }, tables: DishTables): WorkedLine {
  const { recipe, choices, key } = at;
  const correction = choices.corrections.find((c) => c.lineKey === key) ?? null;
  const match = correctedMatch(matchLine(line, tables.index, tables.units), correction, tables);
  const servings = choices.servings ?? recipe.servings?.count.value ?? null;
  const weighing = weighLine(line, match, { units: tables.units, foods: tables.foods, rules: tables.weighing }, { measures: choices.measures, servings });
  const grams = correction?.grams === undefined ? weighing.grams : exactly(correction.grams);
  const eaten = eatenShare(line, match, { recipe, rules: tables.weighing.eaten, grams, servings: servings ?? tables.weighing.servingsUnsaid, countOptional: choices.countOptional });
  return {
    line, key, correction, match, weighing, grams, eaten,
    food: match.code === null ? null : tables.foods.find(match.code),
    eatenShare: correction?.eaten === undefined ? eaten.share : exactly(correction.eaten),
  };
}

/** Names under which cautions look a line up, lower case: the table's, the kitchen's and the line's own. */
function cautionNames(worked: WorkedLine): string[] {
  return [worked.food?.name, worked.match.entry?.name, worked.line.food.name].filter((name) => name !== undefined).map((name) => name.toLowerCase());
}

function treatmentOverrides(lines: readonly WorkedLine[]): ReadonlyMap<string, TreatmentOverride> {
  return new Map(lines.flatMap(({ line, correction }) => {
    if (correction?.method === undefined) return [];
    return [[line.id, { method: correction.method, ...(correction.minutes === undefined ? {} : { minutes: correction.minutes }) }] as const];
  }));
}

/** Works a recipe's text out: reads it, finds each food, weighs it, cooks it, and adds up what the pot and a portion give. Pure; the same text and choices give the same dish. */
export function workOutDish(text: string, choices: DishChoices, tables: DishTables): WorkedDish {
  const recipe = tables.read(text);
  const keys = lineKeys(recipe.lines);
  const lines = recipe.lines.map((line) => workOutLine(line, { key: keys.get(line.id) ?? line.id, recipe, choices }, tables));
  const cooked = cookDish({
    recipe,
    lines: lines.map((worked) => ({ lineId: worked.line.id, food: worked.food, grams: worked.grams, eaten: worked.eatenShare })),
    overrides: treatmentOverrides(lines),
    measuredGrams: choices.cookedWeightG,
  }, tables.cooked);
  const totals = potTotals(lines.map((worked): PotLine => {
    const { id } = worked.line;
    return { lineId: id, food: worked.food, grams: worked.grams, eaten: worked.eatenShare, kept: (nutrient) => cooked.kept(id, nutrient) };
  }), cooked.pot.cookedGrams.value);
  const known = (nutrient: NutrientId): number | null => {
    const total = totals.totals.get(nutrient);
    return total === undefined || total.state === 'unknown' ? null : total.known;
  };
  const energy = declaredEnergy(known, tables.energyFactors);
  const servings = decideServings({ chosen: choices.servings, stated: recipe.servings }, { energyKcal: energy.energyKcal, weightG: cooked.pot.cookedGrams.value }, tables.servings);
  const cautions = raisedCautions(tables.cautions, {
    stage: choices.lifeStage,
    lines: lines.map((worked) => ({
      lineId: worked.line.id,
      names: cautionNames(worked),
      form: worked.match.form,
      portionG: ((worked.grams?.value ?? 0) * worked.eatenShare.value) / servings.count,
    })),
    portion: (nutrient) => {
      const amount = known(nutrient);
      return amount === null ? null : amount / servings.count;
    },
  });
  return { recipe, choices, lines, lineById: new Map(lines.map((worked) => [worked.line.id, worked])), cooked, totals, servings, energy, cautions };
}
