import { readFoodTable, readKitchenNames, readReaderVocabulary, readUnitTable, readWeighingRules } from '../../src/adapters/tables/index.ts';
import { eatenShare, matchLine, readRecipe, weighLine, type Eaten, type IngredientLine, type Recipe, type Weighing, type WeighTables } from '../../src/core/dish/index.ts';
import { buildFoodIndex, isFoodName, type FoodMatch } from '../../src/core/foods/index.ts';
import type { MeasureSystem } from '../../src/core/quantity/index.ts';

/** The whole way from a line to grams over the real tables. */
export const foods = readFoodTable();
export const index = buildFoodIndex(readKitchenNames(), foods);
export const units = readUnitTable();
export const tables: WeighTables = { units, foods, rules: readWeighingRules() };
const vocabulary = readReaderVocabulary((phrase) => isFoodName(phrase, index));

export interface WeighedLine {
  readonly line: IngredientLine;
  readonly match: FoodMatch;
  readonly weighing: Weighing;
  readonly eaten: Eaten;
}

export function readText(text: string): Recipe {
  return readRecipe(text, vocabulary);
}

export function weighText(text: string, settings: { measures: MeasureSystem; servings: number | null } = { measures: 'uk', servings: 4 }): WeighedLine[] {
  const recipe = readText(text);
  return recipe.lines.map((line) => {
    const match = matchLine(line, index, units);
    const weighing = weighLine(line, match, tables, settings);
    const eaten = eatenShare(line, match, { recipe, rules: tables.rules.eaten, grams: weighing.grams, servings: settings.servings ?? tables.rules.servingsUnsaid, countOptional: true });
    return { line, match, weighing, eaten };
  });
}
