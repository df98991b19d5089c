import { readFoodTable, readKitchenNames } from '../../src/adapters/tables/index.ts';
import { buildFoodIndex, matchFood, type FoodMatch, type MatchContext } from '../../src/core/foods/index.ts';

/** The real tables and kitchen names, for tests across rooms. */
export const table = readFoodTable();
export const kitchen = readKitchenNames();
export const index = buildFoodIndex(kitchen, table);

const plain: MatchContext = { unit: null, unitKind: null, hasAmount: true, remarks: [] };

export function match(name: string, qualifiers: readonly string[] = [], context: Partial<MatchContext> = {}): FoodMatch {
  return matchFood({ name, qualifiers }, { ...plain, ...context }, index);
}
