import { matchLine, weighLine, type IngredientLine, type Weighing } from '../core/dish/index.ts';
import type { Food, FoodMatch } from '../core/foods/index.ts';
import type { DishTables } from './dish-tables.ts';
import type { MeasureSystem } from '../core/quantity/index.ts';

/** A line of text read, matched and weighed on its own, outside any recipe. */
export interface LookedUpLine {
  readonly line: IngredientLine;
  readonly match: FoodMatch;
  readonly food: Food | null;
  readonly weighing: Weighing;
}

/** Reads one line as an ingredient; null when there is none in it. */
export function lookUpLine(text: string, tables: DishTables, measures: MeasureSystem = 'uk'): LookedUpLine | null {
  const line = tables.read(`Ingredients\n${text.replace(/\s*\n\s*/g, ' ')}\n`).lines[0];
  if (!line) return null;
  const match = matchLine(line, tables.index, tables.units);
  const weighing = weighLine(line, match, { units: tables.units, foods: tables.foods, rules: tables.weighing }, { measures, servings: null });
  return { line, match, food: match.code === null ? null : tables.foods.find(match.code), weighing };
}
