import { nutrientColumn, nutrientIds, valueKinds, type FoodEntry, type KnownKind, type MissingKind, type NutrientId, type ValueKind } from '../../src/core/foods/index.ts';

export interface Cell {
  kind: ValueKind;
  per100g: number;
  deviation: number;
}

/** A food being compiled: its entry and one cell a nutrient. */
export interface FoodRow {
  entry: FoodEntry;
  cells: Cell[];
}

export const missing = (kind: MissingKind): Cell => ({ kind, per100g: NaN, deviation: NaN });
export const known = (kind: KnownKind, per100g: number, deviation = NaN): Cell => ({ kind, per100g, deviation });
export const isMissing = (cell: Cell): boolean => Number.isNaN(cell.per100g);

export function emptyRow(entry: FoodEntry): FoodRow {
  return { entry, cells: nutrientIds.map(() => missing('not-in-table')) };
}

export function cell(row: FoodRow, nutrient: NutrientId): Cell {
  return row.cells[nutrientColumn(nutrient)]!;
}

export function setCell(row: FoodRow, nutrient: NutrientId, value: Cell): void {
  row.cells[nutrientColumn(nutrient)] = value;
}

export function kindCode(kind: ValueKind): number {
  return valueKinds.indexOf(kind);
}

/** Retinol activity equivalents, µg: retinol + beta-carotene/12 + (alpha-carotene + beta-cryptoxanthin)/24 (IOM 2001). */
export function retinolActivity(parts: { retinol: number; beta: number; alpha: number; cryptoxanthin: number }): number {
  return parts.retinol + parts.beta / 12 + (parts.alpha + parts.cryptoxanthin) / 24;
}
