import { AppError, assert } from '../../errors.ts';
import type { EnergyFactors, Food, FoodCode, HouseholdMeasure } from './food.ts';
import { nutrientColumn, nutrientIds, type NutrientId } from './nutrient.ts';
import { valueKinds, type FoodValue, type KnownKind } from './value.ts';

/** One food of the compiled table without its numbers. */
export interface FoodEntry {
  readonly code: FoodCode;
  readonly table: Food['table'];
  readonly name: string;
  readonly scientificName: string | null;
  readonly localNames: string | null;
  readonly group: string;
  readonly refusePercent: number | null;
  readonly refuseText: string | null;
  readonly household: readonly HouseholdMeasure[];
  readonly energyFactors: EnergyFactors | null;
}

/**
 * The composition tables, compiled: row i of `values`, `kinds` and `deviations` belongs to
 * `entries[i]`, with one column a nutrient in the order of `nutrientIds`. A value is per 100 g
 * of the edible part; where its kind is missing the cell holds NaN.
 */
export interface CompiledFoods {
  readonly nutrients: readonly string[];
  readonly entries: readonly FoodEntry[];
  readonly values: Float64Array;
  readonly kinds: Uint8Array;
  readonly deviations: Float64Array;
  /** Curated and withheld values: key `code nutrient`, value the source text or the reason. */
  readonly cellSources: ReadonlyMap<string, string>;
}

/** The foods of all tables, looked up by code. */
export interface FoodTable {
  readonly foods: readonly Food[];
  /** The food with that code, or null. */
  find(code: FoodCode): Food | null;
  /** The food with that code; throws `unknown-food`. */
  get(code: FoodCode): Food;
  /** The same table with these foods added; a food of the same code is replaced. */
  with(foods: readonly Food[]): FoodTable;
}

function rowFood(compiled: CompiledFoods, row: number, entry: FoodEntry, cited: ReadonlySet<string>): Food {
  const width = compiled.nutrients.length;
  const sourceOf = (nutrient: NutrientId): string | undefined => (cited.has(entry.code) ? compiled.cellSources.get(`${entry.code} ${nutrient}`) : undefined);
  return {
    ...entry,
    value(nutrient: NutrientId): FoodValue {
      const cell = row * width + nutrientColumn(nutrient);
      const kind = valueKinds[compiled.kinds[cell] ?? -1];
      assert(kind !== undefined, `cell ${cell} has an unknown kind`);
      if (kind === 'not-measured' || kind === 'not-in-table') return { kind };
      if (kind === 'withheld') return { kind, reason: sourceOf(nutrient) };
      const deviation = compiled.deviations[cell] ?? NaN;
      return {
        kind: kind satisfies KnownKind,
        per100g: compiled.values[cell] ?? NaN,
        deviation: Number.isNaN(deviation) ? null : deviation,
        source: sourceOf(nutrient) ?? null,
      };
    },
  };
}

function tableOf(foods: readonly Food[]): FoodTable {
  const byCode = new Map(foods.map((food) => [food.code, food]));
  return {
    foods,
    find: (code) => byCode.get(code) ?? null,
    get(code) {
      const food = byCode.get(code);
      if (!food) throw new AppError('unknown-food', { code });
      return food;
    },
    with(added) {
      const codes = new Set(added.map((food) => food.code));
      return tableOf([...foods.filter((food) => !codes.has(food.code)), ...added]);
    },
  };
}

/** The table behind compiled rows; throws `bad-table` when its columns are not those of this version. */
export function foodTable(compiled: CompiledFoods): FoodTable {
  if (compiled.nutrients.join() !== nutrientIds.join()) throw new AppError('bad-table', { what: 'the nutrient columns are of another version' });
  const cells = compiled.entries.length * nutrientIds.length;
  if (compiled.values.length !== cells || compiled.kinds.length !== cells) throw new AppError('bad-table', { what: 'the number of cells does not fit the foods' });
  // Foods with a cited cell; the rest need no look-up.
  const cited = new Set([...compiled.cellSources.keys()].map((key) => key.slice(0, key.lastIndexOf(' '))));
  return tableOf(compiled.entries.map((entry, row) => rowFood(compiled, row, entry, cited)));
}
