import { day, daysBetween } from '../calendar/index.ts';
import { pricePerGram, type PricedFood } from './price-list.ts';

/** One line to be priced: edible grams as it goes into the pot, whether or not all of it is eaten. */
export interface LineToPrice {
  readonly lineId: string;
  readonly entryName: string | null;
  readonly form: string | null;
  readonly code: string | null;
  readonly grams: number | null;
  /** Water and the like cost nothing. */
  readonly free: boolean;
}

export type PriceState = 'priced' | 'stale' | 'other-form' | 'free' | 'no-price' | 'no-weight';

export interface LineCost {
  readonly lineId: string;
  readonly state: PriceState;
  /** Cost of what goes into the pot; null where not known. */
  readonly cost: number | null;
  readonly priced: PricedFood | null;
  /** Days since the price was noted; null without a price. */
  readonly ageDays: number | null;
}

/** What has to be bought, and what is left in the packs. */
export interface PackCost {
  readonly priced: PricedFood;
  readonly lineIds: readonly string[];
  readonly usedG: number;
  readonly packs: number;
  readonly paid: number;
  readonly leftG: number;
  readonly leftCost: number;
}

export interface DishCost {
  readonly lines: readonly LineCost[];
  readonly packs: readonly PackCost[];
  /** Sum of the known costs of what is used; "at least" where `missing` is above 0. */
  readonly pot: number;
  readonly portion: number;
  /** What the whole packs cost. */
  readonly paid: number;
  readonly leftCost: number;
  /** Lines without a price or weight. */
  readonly missing: number;
  readonly stale: number;
}

export interface PriceContext {
  readonly list: readonly PricedFood[];
  /** YYYY-MM-DD. */
  readonly today: string;
  /** Older prices are stale. */
  readonly staleDays: number;
}

const ageOf = (priced: PricedFood, context: PriceContext): number => daysBetween(day(priced.row.date), day(context.today));
const isFresh = (priced: PricedFood, context: PriceContext): boolean => ageOf(priced, context) <= context.staleDays;

/** The price to use for a food: its own form before another, fresh before stale, then the cheapest gram. */
export function priceFor(line: Pick<LineToPrice, 'entryName' | 'form' | 'code'>, context: PriceContext): { readonly priced: PricedFood; readonly otherForm: boolean } | null {
  const same = context.list.filter((p) => (line.code !== null && p.code === line.code && (line.entryName === null || p.entryName === line.entryName)) || (line.entryName !== null && p.entryName === line.entryName && p.form === line.form));
  const other = same.length > 0 ? [] : context.list.filter((p) => line.entryName !== null && p.entryName === line.entryName);
  const found = same.length > 0 ? same : other;
  const fresh = found.filter((p) => isFresh(p, context));
  const best = (fresh.length > 0 ? fresh : found).reduce<PricedFood | null>((a, b) => (a === null || pricePerGram(b) < pricePerGram(a) ? b : a), null);
  return best ? { priced: best, otherForm: same.length === 0 } : null;
}

/** What one line costs. */
export function lineCost(line: LineToPrice, context: PriceContext): LineCost {
  const none = { lineId: line.lineId, cost: null, priced: null, ageDays: null };
  if (line.free) return { ...none, state: 'free', cost: 0 };
  const found = priceFor(line, context);
  if (!found) return { ...none, state: 'no-price' };
  const ageDays = ageOf(found.priced, context);
  const told = { lineId: line.lineId, priced: found.priced, ageDays };
  if (line.grams === null) return { ...told, state: 'no-weight', cost: null };
  const state = found.otherForm ? 'other-form' : ageDays > context.staleDays ? 'stale' : 'priced';
  return { ...told, state, cost: line.grams * pricePerGram(found.priced) };
}

/** Prices a dish from her own list. Nothing is guessed: a line without a price makes the sum "at least". */
export function dishCost(lines: readonly LineToPrice[], portions: number, context: PriceContext): DishCost {
  const costs = lines.map((line) => lineCost(line, context));
  const byPack = new Map<string, { priced: PricedFood; lineIds: string[]; usedG: number }>();
  costs.forEach((cost, i) => {
    const grams = lines[i]?.grams ?? null;
    if (cost.priced === null || grams === null || cost.cost === null) return;
    const pack = byPack.get(cost.priced.row.id) ?? { priced: cost.priced, lineIds: [], usedG: 0 };
    byPack.set(cost.priced.row.id, { ...pack, lineIds: [...pack.lineIds, cost.lineId], usedG: pack.usedG + grams });
  });
  const packs = [...byPack.values()].map(({ priced, lineIds, usedG }): PackCost => {
    const count = Math.max(1, Math.ceil(usedG / priced.edibleG - 1e-9));
    const leftG = count * priced.edibleG - usedG;
    return { priced, lineIds, usedG, packs: count, paid: count * priced.row.price, leftG, leftCost: leftG * pricePerGram(priced) };
  });
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
  const pot = sum(costs.map((c) => c.cost ?? 0));
  return {
    lines: costs, packs, pot, portion: pot / portions,
    paid: sum(packs.map((p) => p.paid)), leftCost: sum(packs.map((p) => p.leftCost)),
    missing: costs.filter((c) => c.cost === null).length,
    stale: costs.filter((c) => c.ageDays !== null && c.ageDays > context.staleDays).length,
  };
}

/** What 100 units of a nutrient cost in a food, from its price and its known value in 100 g; null when either is missing or it has none. */
export function priceOfNutrient(priced: PricedFood, per100g: number | null, amount: number): number | null {
  if (per100g === null || !(per100g > 0)) return null;
  return (pricePerGram(priced) * 100 * amount) / per100g;
}
