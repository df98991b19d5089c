import { dishAllergens } from '../core/dish/index.ts';
import { allergenList, listedAllergens, nutrients as allNutrients, toldDiets } from '../core/foods/index.ts';
import { allergenCaution, allergenStateText, dietVerdictText } from '../messages/allergens.ts';
import { changeText, money } from '../messages/change.ts';
import { figure } from '../messages/numbers.ts';
import type { CompareCell, CompareReport } from './change-report.ts';
import type { ChangeContext } from './change-tables.ts';
import { priceDish } from './price-dish.ts';
import type { WorkedDish } from './work-out-dish.ts';

export interface DishToCompare {
  readonly name: string;
  readonly dish: WorkedDish;
  /** What may be said of it, where that is worked out; null where it is not. */
  readonly statements: readonly string[] | null;
}

/** Minutes that the method states, one after the other; null where it states none. */
function statedMinutes(dish: WorkedDish): number | null {
  const minutes = dish.recipe.steps.flatMap((s) => s.actions.map((a) => a.minutes?.value ?? 0)).reduce((a, b) => a + b, 0);
  return minutes > 0 ? minutes : null;
}

function cells(dishes: readonly DishToCompare[], of: (dish: WorkedDish) => { amount: number | null; atLeast: boolean }, unit: string): CompareCell[] {
  const first = dishes[0] ? of(dishes[0].dish).amount : null;
  return dishes.map(({ dish }, i) => {
    const { amount, atLeast } = of(dish);
    return {
      amount, atLeast, words: amount === null ? 'not known' : `${atLeast ? '≥ ' : ''}${figure(amount)} ${unit}`,
      change: i === 0 || amount === null || first === null ? null : changeText(amount - first, unit),
    };
  });
}

/** Two or more dishes, or versions of one, side by side: a portion's nutrients, cost, allergens, diets, time and what may be said. */
export function compareDishes(dishes: readonly DishToCompare[], context: ChangeContext): CompareReport {
  const list = allergenList(context.change.allergens, context.settings.allergenList);
  const told = dishes.map(({ dish }) => dishAllergens(dish.lines.map((l) => ({ line: l.line, match: l.match, food: l.food })), dish.recipe, context.reader).states);
  const listedIn = told.map((states) => listedAllergens(list, states));
  const dietsIn = told.map((states) => toldDiets(context.change.allergens, states));
  const foodsIn = dishes.map(({ dish }) => new Set(dish.lines.map((l) => l.match.entry?.name ?? l.line.food.name.toLowerCase())));
  const differ = (values: readonly string[]): boolean => new Set(values).size > 1;
  return {
    columns: dishes.map(({ name, dish, statements }) => {
      const cost = priceDish(dish, context.settings.prices);
      const unpriced = cost.lines.every((l) => l.cost === null || l.state === 'free');
      return {
        name, statements, lines: dish.lines.length, servings: `${figure(dish.servings.count)} ${dish.servings.of ?? (dish.servings.count === 1 ? 'portion' : 'portions')}`,
        weightG: dish.cooked.pot.cookedGrams.value / dish.servings.count, energyKcal: dish.energy.energyKcal / dish.servings.count, minutes: statedMinutes(dish),
        cost: unpriced ? 'no prices' : `${cost.missing > 0 ? 'at least ' : ''}${money(cost.portion, context.settings.currency)}`, costMissing: cost.missing,
      };
    }),
    nutrients: allNutrients.filter((n) => n.id !== 'water' && n.id !== 'ash').flatMap((n) => {
      const row = cells(dishes, (dish) => {
        const total = dish.totals.totals.get(n.id);
        return { amount: total === undefined || total.state === 'unknown' ? null : total.known / dish.servings.count, atLeast: total?.state === 'partial' };
      }, n.unit);
      if (row.every((c) => c.amount === null)) return [];
      const amounts = row.map((c) => c.amount ?? Number.NEGATIVE_INFINITY);
      const top = Math.max(...amounts);
      return [{ id: n.id, name: n.name, unit: n.unit, group: n.group, cells: row, most: differ(row.map((c) => String(c.amount))) ? amounts.indexOf(top) : null }];
    }),
    allergens: list.items.map((item, i) => {
      const states = listedIn.map((l) => l[i]?.state ?? 'unknown');
      return { name: item.name, cells: states.map((state) => ({ state, words: allergenStateText(state) })), differ: differ(states) };
    }),
    diets: context.change.allergens.diets.map((diet, i) => {
      const verdicts = dietsIn.map((d) => d[i]?.verdict ?? 'unknown');
      return { name: diet.name, cells: verdicts.map((verdict) => ({ verdict, words: dietVerdictText(verdict) })), differ: differ(verdicts) };
    }),
    onlyIn: dishes.map(({ name, dish }, i) => ({
      name,
      lines: dish.lines.filter((l) => foodsIn.some((foods, j) => j !== i && !foods.has(l.match.entry?.name ?? l.line.food.name.toLowerCase()))).map((l) => l.line.text),
    })),
    caution: allergenCaution,
  };
}
