import { buildFoodIndex, nutrients, ownFood, searchFoods, stateOf, type OwnFood } from '../core/foods/index.ts';
import { cookingMethods } from '../core/dish/index.ts';
import { authoritiesFor } from '../core/people/index.ts';
import { measureSystems } from '../core/quantity/index.ts';
import { cookingMethodText } from '../messages/cooking-method.ts';
import { measureSystemText } from '../messages/measures.ts';
import type { Desk, DeskOptions } from './desk.ts';
import type { DishTables } from './dish-tables.ts';
import { usualChoices } from './dish-choices.ts';
import { explainNutrient } from './explain-nutrient.ts';
import type { Store } from './ports.ts';
import { reportDish } from './report-dish.ts';
import { workOutDish } from './work-out-dish.ts';

/** The tables with her own foods in them; the same foods give the same object, as the index is dear to build. */
function withOwnFoods(tables: DishTables): (own: readonly OwnFood[]) => DishTables {
  let last: { key: string; tables: DishTables } = { key: '[]', tables };
  return (own) => {
    const key = JSON.stringify(own);
    if (key !== last.key) {
      const foods = tables.foods.with(own.map(ownFood));
      last = { key, tables: { ...tables, foods, index: buildFoodIndex(tables.index.entries, foods) } };
    }
    return last.tables;
  };
}

function deskOptions(tables: DishTables, demos: DeskOptions['demos']): DeskOptions {
  return {
    lifeStages: tables.intakes.stages.map((stage) => ({ ...stage, authorities: authoritiesFor(tables.intakes, stage.id) })),
    measures: measureSystems.map((id) => ({ id, label: measureSystemText(id) })),
    methods: cookingMethods.map((id) => ({ id, label: cookingMethodText(id) })),
    nutrients: nutrients.map(({ id, name, unit, group }) => ({ id, name, unit, group })),
    usualChoices,
    demos,
  };
}

/** The desk over its tables and its store; everything that the faces ask for. */
export function createDesk(tables: DishTables, store: Store, demos: DeskOptions['demos']): Desk {
  const tablesFor = withOwnFoods(tables);
  const ownTables = async (): Promise<DishTables> => tablesFor(await store.ownFoods.list());
  const options = deskOptions(tables, demos);
  return {
    store,
    tables: ownTables,
    options: () => options,
    async workOut(text, choices) {
      const now = await ownTables();
      return reportDish(workOutDish(text, choices, now), now);
    },
    async explain(text, choices, nutrient) {
      const now = await ownTables();
      return explainNutrient(workOutDish(text, choices, now), nutrient, now);
    },
    async searchFoods(query, limit) {
      const now = await ownTables();
      const seen = new Set<string>();
      // A kitchen name and the table food behind it are one offer; the kitchen name comes first.
      return searchFoods(query, now.index, limit * 2).flatMap((hit) => {
        const food = hit.code === null ? null : now.foods.find(hit.code);
        if (food === null || seen.has(food.code) || seen.size >= limit) return [];
        seen.add(food.code);
        return [{ code: food.code, name: hit.name, tableName: food.name, state: hit.state ?? stateOf(food.name), table: food.table }];
      });
    },
  };
}
