/**
 * Truepot for other programs: the pure core, the use cases, and readers for the compiled tables.
 *
 * ```ts
 * const tables = readDishTables();
 * const dish = workOutDish('Serves 2\n200 g kale\n1 tin chickpeas', usualChoices, tables);
 * reportDish(dish, tables).reading;
 * ```
 */
export * as quantity from './core/quantity/index.ts';
export * as calendar from './core/calendar/index.ts';
export * as foods from './core/foods/index.ts';
export * as dish from './core/dish/index.ts';
export * as people from './core/people/index.ts';
export { AppError, type ErrorCode } from './errors.ts';
export { workOutDish, type WorkedDish, type WorkedLine } from './app/work-out-dish.ts';
export { reportDish } from './app/report-dish.ts';
export { explainNutrient } from './app/explain-nutrient.ts';
export { usualChoices, type DishChoices } from './app/dish-choices.ts';
export type * from './app/dish-report.ts';
export type { DishTables } from './app/dish-tables.ts';
export { readDishTables } from './adapters/tables/index.ts';
