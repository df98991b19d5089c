import { foldWord, readWords, type Food, type FoodMatch, type FoodTable } from '../foods/index.ts';
import type { MeasureSystem, UnitTable } from '../quantity/index.ts';
import type { Amount, IngredientLine } from './recipe.ts';
import { spreadOf, type Estimate, type WeighStep } from './weigh-estimate.ts';
import type { FoodNames, WeighingRules } from './weighing-rules.ts';

/** The tables that weighing reads. */
export interface WeighTables {
  readonly units: UnitTable;
  readonly foods: FoodTable;
  readonly rules: WeighingRules;
}

export interface WeighSettings {
  /** Whose cups and spoons the line means. */
  readonly measures: MeasureSystem;
  /** How many the recipe serves, null when nothing says so. */
  readonly servings: number | null;
}

/** One amount of one line, with all that its weight depends on. */
export interface WeighContext {
  readonly line: IngredientLine;
  readonly amount: Amount;
  readonly match: FoodMatch;
  readonly food: Food | null;
  readonly names: FoodNames;
  /** Folded words of the name and its qualifiers: states such as "chopped". */
  readonly words: ReadonlySet<string>;
  readonly tables: WeighTables;
  readonly settings: WeighSettings;
}

/** The names under which rules look a food up; a line without a food keeps its own words. */
export function foodNames(line: IngredientLine, match: FoodMatch, food: Food | null): FoodNames {
  const entryNames = match.entry ? [match.entry.name, ...match.entry.also] : [line.food.name];
  // The juice of a lemon is looked up as lemon juice too.
  const names = match.entry && (match.form === 'juice' || match.form === 'oil') ? [...entryNames, `${match.entry.name} ${match.form}`] : entryNames;
  return { names: food && !match.entry ? [...names, food.name] : names, group: food?.group ?? '' };
}

export function stateWords(line: IngredientLine): ReadonlySet<string> {
  return new Set([line.food.name, ...line.food.qualifiers].flatMap((text) => readWords(text).parts.flat()).map(foldWord));
}

export function weighContext(at: { line: IngredientLine; amount: Amount; match: FoodMatch }, tables: WeighTables, settings: WeighSettings): WeighContext {
  const food = at.match.code === null ? null : tables.foods.find(at.match.code);
  return { ...at, food, names: foodNames(at.line, at.match, food), words: stateWords(at.line), tables, settings };
}

/** The count of units as written: the first factor of every path. */
export function countStep(context: WeighContext, kind: 'amount' | 'stated-total', quantity = context.amount.quantity): WeighStep {
  return { kind, data: { text: context.amount.text, count: quantity.value, unit: context.amount.unit ?? 'piece' }, factor: quantity.value, unit: '1', spread: spreadOf(quantity), source: null, locator: null };
}

export function startWith(step: WeighStep, basis: Estimate['basis'], confidence: number): Estimate {
  return { grams: step.factor, spread: step.spread, basis, steps: [step], confidence };
}
