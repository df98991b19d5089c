import { dishCost, priceOfNutrient, type DishCost, type LineToPrice, type PriceContext, type PricedFood, type PriceProblem, type PriceRow } from '../core/dish/index.ts';
import { isKnown, type NutrientId } from '../core/foods/index.ts';
import { readIsoDate } from '../core/calendar/index.ts';
import type { DishTables } from './dish-tables.ts';
import { lookUpLine } from './line-lookup.ts';
import type { WorkedDish, WorkedLine } from './work-out-dish.ts';

/** Her price rows with food and pack found; rows that cannot be used are told, none is dropped in silence. */
export interface PriceList {
  readonly priced: readonly PricedFood[];
  readonly problems: readonly PriceProblem[];
}

function priceRow(row: PriceRow, tables: DishTables): PricedFood | PriceProblem {
  if (!(row.price > 0)) return { row, code: 'bad-price' };
  if (readIsoDate(row.date) === null) return { row, code: 'bad-date' };
  const found = lookUpLine(`${row.pack} ${row.food}`, tables);
  if (!found || (found.match.entry === null && found.match.code === null)) return { row, code: 'food-not-known' };
  const { grams, gross } = found.weighing;
  // "A heap" would be weighed by guess: a pack has a figure.
  if (grams === null || !(grams.value > 0) || found.line.amount === null || !/\d/.test(row.pack)) return { row, code: 'pack-not-known' };
  return { row, entryName: found.match.entry?.name ?? null, form: found.match.form, code: found.match.code, grossG: gross?.value ?? grams.value, edibleG: grams.value };
}

/** Finds the food and the edible grams of every price row, as an ingredient line is read and weighed. */
export function readPriceList(rows: readonly PriceRow[], tables: DishTables): PriceList {
  const all = rows.map((row) => priceRow(row, tables));
  return { priced: all.filter((p): p is PricedFood => 'edibleG' in p), problems: all.filter((p): p is PriceProblem => 'code' in p && !('edibleG' in p)) };
}

const free = /^(water|ice|pasta water)$/;

/** A worked line as the price list asks for it. */
export function lineToPrice(worked: WorkedLine): LineToPrice {
  const { match, line, grams } = worked;
  return { lineId: line.id, entryName: match.entry?.name ?? null, form: match.form, code: match.code, grams: grams?.value ?? null, free: free.test(match.entry?.name ?? '') };
}

/** What the pot, a portion and the packs cost by her own list. */
export function priceDish(worked: WorkedDish, prices: PriceContext): DishCost {
  return dishCost(worked.lines.map(lineToPrice), worked.servings.count, prices);
}

/** A food of the list with what an amount of a nutrient costs in it, cheapest first; raw foods as the table gives them. */
export function cheapestSources(nutrient: NutrientId, amount: number, prices: PriceContext, tables: DishTables): readonly { readonly priced: PricedFood; readonly cost: number; readonly grams: number }[] {
  return prices.list.flatMap((priced) => {
    const food = priced.code === null ? null : tables.foods.find(priced.code);
    const value = food?.value(nutrient);
    const per100g = value && isKnown(value) ? value.per100g : null;
    const cost = priceOfNutrient(priced, per100g, amount);
    return cost === null || per100g === null ? [] : [{ priced, cost, grams: (amount * 100) / per100g }];
  }).sort((a, b) => a.cost - b.cost);
}
