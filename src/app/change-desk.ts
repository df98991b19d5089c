import { readMonths, readPriceCsv, seasonOf, useUp, writePriceCsv, type PantryItem, type PriceRow, type ScaleAim, type SeasonState } from '../core/dish/index.ts';
import { nutrient as nutrientOf } from '../core/foods/index.ts';
import { AppError } from '../errors.ts';
import { csvFaultText, money, scaledLineText, scaledTimeText, seasonText } from '../messages/change.ts';
import { figure } from '../messages/numbers.ts';
import { changeKept, type ChangeKept } from './change-kept.ts';
import type { AllergenReport, ChangeWords, CompareReport, CostReport, PriceListReport, ScaleReport, SwapReport, WishReport } from './change-report.ts';
import { changeContexts, type ChangeContext, type ChangeTables } from './change-tables.ts';
import { compareDishes } from './compare-dishes.ts';
import type { DishChoices } from './dish-choices.ts';
import type { DishTables } from './dish-tables.ts';
import { lookUpLine } from './line-lookup.ts';
import type { Clock, DishStore, Ids, ValueStore } from './ports.ts';
import { cheapestSources, lineToPrice, readPriceList, type PriceList } from './price-dish.ts';
import { reportAllergens } from './report-allergens.ts';
import { reportCost, reportPrices } from './report-cost.ts';
import { reportSwap, reportWish } from './report-swap.ts';
import { scaleDish } from './scale-dish.ts';
import type { SwapWish } from './search-swaps.ts';
import { workOutDish } from './work-out-dish.ts';

export interface DishText {
  readonly text: string;
  readonly choices: DishChoices;
}

export interface SeasonRow {
  readonly name: string;
  /** "6-9". */
  readonly months: string;
  readonly state: SeasonState;
  readonly words: string;
  /** Hers, not the table's. */
  readonly own: boolean;
}

export interface PantryReport {
  readonly items: readonly (PantryItem & { readonly readAs: string | null })[];
  readonly suggestions: readonly { readonly dishId: string; readonly name: string; readonly uses: readonly string[]; readonly toBuy: number; readonly firstUseBy: string | null }[];
}

/** Everything that the faces ask of a change. Works without a store too: then nothing of hers is known. */
export interface ChangeDesk {
  readonly options: { readonly allergenLists: readonly { readonly id: string; readonly name: string }[]; readonly diets: readonly { readonly id: string; readonly name: string }[]; readonly substances: readonly { readonly id: string; readonly name: string }[]; readonly regions: readonly { readonly region: string; readonly name: string }[] };
  settings(): Promise<ChangeWords>;
  saveSettings(settings: ChangeWords): Promise<ChangeWords>;
  /** By the list of her settings, or the one named; throws `bad-input` for one that is none. */
  allergens(dish: DishText, list?: string): Promise<AllergenReport>;
  swap(dish: DishText, lineId: string, limit: number): Promise<SwapReport>;
  wish(dish: DishText, wish: SwapWish): Promise<WishReport>;
  scale(dish: DishText, aim: ScaleAim): Promise<ScaleReport>;
  cost(dish: DishText): Promise<CostReport>;
  compare(dishes: readonly (DishText & { readonly name: string })[]): Promise<CompareReport>;
  prices(): Promise<PriceListReport>;
  savePrices(rows: readonly Omit<PriceRow, 'id'>[]): Promise<PriceListReport>;
  /** Adds the rows of a CSV text; a row for the same food, pack and shop replaces the older one. */
  bringPrices(csv: string): Promise<PriceListReport & { readonly faults: readonly string[]; readonly added: number }>;
  pricesCsv(): Promise<string>;
  cheapest(nutrient: string, amount: number): Promise<readonly { readonly food: string; readonly words: string }[]>;
  seasons(): Promise<readonly SeasonRow[]>;
  saveSeason(name: string, months: string | null): Promise<readonly SeasonRow[]>;
  pantry(): Promise<PantryReport>;
  savePantry(items: readonly Omit<PantryItem, 'id'>[]): Promise<PantryReport>;
}

export interface ChangeParts {
  readonly tables: () => Promise<DishTables> | DishTables;
  readonly change: ChangeTables;
  readonly values: ValueStore;
  readonly dishes: Pick<DishStore, 'list'>;
  readonly clock: Clock;
  readonly ids: Ids;
}

/** Contexts over tables that change only with her own foods, and price lists read once for their rows. */
function contextMaker(parts: ChangeParts, kept: ChangeKept): { now(): Promise<ChangeContext>; list(): Promise<{ list: PriceList; rows: readonly PriceRow[]; tables: DishTables }> } {
  let made: { tables: DishTables; make: ReturnType<typeof changeContexts> } | null = null;
  let read: { key: string; tables: DishTables; list: PriceList } | null = null;
  const list = async (): Promise<{ list: PriceList; rows: readonly PriceRow[]; tables: DishTables }> => {
    const [tables, rows] = [await parts.tables(), await kept.prices()];
    const key = JSON.stringify(rows);
    if (read?.key !== key || read.tables !== tables) read = { key, tables, list: readPriceList(rows, tables) };
    return { list: read.list, rows, tables };
  };
  return {
    list,
    async now() {
      const { list: priced, tables } = await list();
      if (made?.tables !== tables) made = { tables, make: changeContexts(tables, parts.change) };
      const settings = await kept.settings();
      const today = parts.clock.today();
      return made.make({
        prices: { list: priced.priced, today, staleDays: settings.staleDays }, currency: settings.currency, allergenList: settings.allergenList,
        region: settings.region, month: Number(today.slice(5, 7)), ownSeasons: await kept.seasons(),
      });
    },
  };
}

/** The change desk over its tables and her store. */
export function createChangeDesk(parts: ChangeParts): ChangeDesk {
  const kept = changeKept(parts.values);
  const contexts = contextMaker(parts, kept);
  const worked = async ({ text, choices }: DishText) => {
    const context = await contexts.now();
    return { context, dish: workOutDish(text, choices, context.tables) };
  };
  const pricesNow = async (): Promise<PriceListReport> => {
    const { list, rows } = await contexts.list();
    const { currency, staleDays } = await kept.settings();
    return reportPrices(rows, list, { currency, staleDays, today: parts.clock.today() });
  };
  const seasonsNow = async (): Promise<SeasonRow[]> => {
    const { settings, change } = await contexts.now();
    const table = change.seasons.find((s) => s.region === settings.region) ?? change.seasons[0];
    if (!table) return [];
    const all = { ...table.foods, ...settings.ownSeasons };
    return Object.keys(all).sort().map((name) => {
      const state = seasonOf(name, null, { table, own: settings.ownSeasons, month: settings.month });
      return { name, months: all[name] ?? '', state, words: seasonText(state), own: settings.ownSeasons[name] !== undefined };
    });
  };
  const pantryNow = async (): Promise<PantryReport> => {
    const { tables } = await contexts.now();
    const items = await kept.pantry();
    const foods = items.map((item) => {
      const found = lookUpLine(`${item.amount} ${item.food}`.trim(), tables);
      return { item, entryName: found?.match.entry?.name ?? null, code: found?.match.code ?? null, grams: item.amount === '' ? null : (found?.weighing.grams?.value ?? null) };
    });
    const saved = items.length === 0 ? [] : await parts.dishes.list({});
    const found = useUp(foods, saved.map((dish) => ({ dishId: dish.id, lines: workOutDish(dish.text, dish.choices, tables).lines.map(lineToPrice) })));
    return {
      items: foods.map(({ item, entryName }) => ({ ...item, readAs: entryName })),
      suggestions: found.map((d) => ({
        dishId: d.dishId, name: saved.find((s) => s.id === d.dishId)?.name ?? d.dishId, toBuy: d.toBuy, firstUseBy: d.firstUseBy,
        uses: d.uses.map((u) => `${u.item.food}${u.enough === false ? ' (not enough of it)' : ''}`),
      })),
    };
  };
  const { allergens } = parts.change;
  return {
    options: {
      allergenLists: allergens.lists.map(({ id, name }) => ({ id, name })), diets: allergens.diets.map(({ id, name }) => ({ id, name })),
      substances: allergens.substances.map(({ id, name }) => ({ id, name })), regions: parts.change.seasons.map(({ region, name }) => ({ region, name })),
    },
    settings: () => kept.settings(),
    async saveSettings(settings) {
      if (!allergens.lists.some((l) => l.id === settings.allergenList)) throw new AppError('bad-input', { what: 'There is no such allergen list.' });
      await kept.putSettings(settings);
      return kept.settings();
    },
    async allergens(text, list) {
      const { dish, context } = await worked(text);
      return reportAllergens(dish, list === undefined ? context : { ...context, settings: { ...context.settings, allergenList: list } });
    },
    async swap(text, lineId, limit) {
      const { dish, context } = await worked(text);
      return reportSwap(dish, lineId, limit, context);
    },
    async wish(text, wish) {
      const { dish, context } = await worked(text);
      return reportWish(dish, wish, context);
    },
    async scale(text, aim) {
      const context = await contexts.now();
      const scaled = scaleDish(text, aim, context.tables, parts.change.scaling);
      return {
        factor: scaled.factor, servings: scaled.servings, text: scaled.text, choices: scaled.choices,
        lines: scaled.lines.map((l) => ({ lineId: l.lineId, state: l.state, before: l.before, after: l.after, words: scaledLineText(l) })),
        times: scaled.times.map(scaledTimeText),
        warnings: scaled.findings.map((f) => `“${String(f.data['text'])}” could not be written for the new size. It stands as it was; change it by hand.`),
        words: scaled.factor === 1 ? 'This is the size that it has.' : `× ${figure(scaled.factor)}${scaled.servings === null ? '' : `, ${figure(scaled.servings)} portions`}. Amounts are rounded as a cook measures.`,
      };
    },
    async cost(text) {
      const { dish, context } = await worked(text);
      return reportCost(dish, context);
    },
    async compare(dishes) {
      if (dishes.length < 2) throw new AppError('bad-input', { what: 'Choose at least two dishes to compare.' });
      const context = await contexts.now();
      return compareDishes(dishes.map(({ name, text, choices }) => ({ name, statements: null, dish: workOutDish(text, choices, context.tables) })), context);
    },
    prices: pricesNow,
    async savePrices(rows) {
      await kept.putPrices(rows.map((row) => ({ ...row, id: parts.ids.fresh() })));
      return pricesNow();
    },
    async bringPrices(csv) {
      const { rows, faults } = readPriceCsv(csv, () => parts.ids.fresh());
      const same = (row: PriceRow): string => [row.food, row.pack, row.shop].map((t) => t.trim().toLowerCase()).join('|');
      const added = new Set(rows.map(same));
      await kept.putPrices([...(await kept.prices()).filter((row) => !added.has(same(row))), ...rows]);
      return { ...(await pricesNow()), faults: faults.map(csvFaultText), added: rows.length };
    },
    pricesCsv: async () => writePriceCsv(await kept.prices()),
    async cheapest(id, amount) {
      const { unit, name } = nutrientOf(id);
      const { settings, tables } = await contexts.now();
      return cheapestSources(nutrientOf(id).id, amount, settings.prices, tables).map(({ priced, cost, grams }) => ({
        food: priced.entryName ?? priced.row.food, words: `${money(cost, settings.currency)} for ${figure(amount)} ${unit} ${name.toLowerCase()} (${figure(grams)} g, uncooked)`,
      }));
    },
    seasons: seasonsNow,
    async saveSeason(name, months) {
      if (months !== null && readMonths(months) === null) throw new AppError('bad-input', { what: 'Write the months as numbers, for example 6-9 or 11-3.' });
      const rest = Object.entries(await kept.seasons()).filter(([food]) => food !== name);
      await kept.putSeasons(Object.fromEntries(months === null ? rest : [...rest, [name, months]]));
      return seasonsNow();
    },
    pantry: pantryNow,
    async savePantry(items) {
      await kept.putPantry(items.map((item) => ({ ...item, id: parts.ids.fresh() })));
      return pantryNow();
    },
  };
}
