import { lineKeys, readIngredientLine, scaleFactor, scaleRecipe, type LineCorrection, type ReadBack, type ScaleAim, type ScaledRecipe, type ScalingRules } from '../core/dish/index.ts';
import type { NutrientId } from '../core/foods/index.ts';
import type { DishChoices } from './dish-choices.ts';
import type { DishTables } from './dish-tables.ts';
import { workOutDish, type WorkedDish } from './work-out-dish.ts';

export interface ScaledDish extends ScaledRecipe {
  /** The dish's choices with portions and corrected grams scaled too, tied to the new lines. */
  readonly choices: DishChoices;
}

/** Reads one ingredient line back; what the reader finds in it. */
export function lineReader(tables: Pick<DishTables, 'vocabulary'>): ReadBack {
  return (text) => readIngredientLine(text, { start: 0, end: text.length }, tables.vocabulary);
}

function scaledCorrections(worked: WorkedDish, scaled: ScaledRecipe, tables: DishTables): LineCorrection[] {
  const after = tables.read(scaled.text);
  const keys = lineKeys(after.lines);
  return worked.lines.flatMap((l, i) => {
    const line = after.lines[i];
    const key = line === undefined ? undefined : keys.get(line.id);
    if (l.correction === null || key === undefined) return [];
    const factor = scaled.lines[i]?.factor ?? scaled.factor;
    return [{ ...l.correction, lineKey: key, ...(l.correction.grams === undefined ? {} : { grams: l.correction.grams * factor }) }];
  });
}

/** A dish for another number of portions, another pan, what is at hand, or a nutrient target. The words of each line stay; throws `bad-input` for an aim that cannot be met. */
export function scaleDish(dish: { readonly text: string; readonly choices: DishChoices }, aim: ScaleAim, tables: DishTables, rules: ScalingRules): ScaledDish {
  const worked = workOutDish(dish.text, dish.choices, tables);
  const { count } = worked.servings;
  const factor = scaleFactor(aim, {
    servings: count,
    // What is at hand is weighed as bought, with peel and bone.
    gramsOf: (lineId) => {
      const line = worked.lines.find((l) => l.line.id === lineId);
      return (line?.correction?.grams === undefined ? line?.weighing.gross?.value : undefined) ?? line?.grams?.value ?? null;
    },
    portionOf: (nutrient) => {
      const total = worked.totals.totals.get(nutrient as NutrientId);
      return total === undefined || total.state === 'unknown' ? null : total.known / count;
    },
  });
  // A nutrient target enlarges the portions; every other aim keeps them and changes their number.
  const portions = aim.kind === 'nutrient' ? count : aim.kind === 'portions' ? aim.count : count * factor;
  const scaled = scaleRecipe(worked.recipe, worked.lines, factor, { rules, units: tables.units, readBack: lineReader(tables), read: tables.read });
  return { ...scaled, servings: portions, choices: { ...dish.choices, servings: portions, cookedWeightG: dish.choices.cookedWeightG === null ? null : dish.choices.cookedWeightG * factor, corrections: scaledCorrections(worked, scaled, tables) } };
}
