import { matchFood, type FoodIndex, type FoodMatch } from '../foods/index.ts';
import type { UnitTable } from '../quantity/index.ts';
import type { IngredientLine } from './recipe.ts';

/** The food that a line means, read with its unit and remarks. */
export function matchLine(line: IngredientLine, index: FoodIndex, units: UnitTable): FoodMatch {
  const unit = line.amount?.unit ?? null;
  const vague = unit === null ? false : (units.find(unit)?.vague ?? false);
  return matchFood(line.food, { unit, unitKind: unit === null ? null : (units.find(unit)?.kind ?? null), hasAmount: line.amount !== null && !(vague && unit === 'some'), remarks: line.remarks }, index);
}
