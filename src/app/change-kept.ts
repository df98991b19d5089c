import type { PantryItem, PriceRow } from '../core/dish/index.ts';
import type { ChangeWords } from './change-report.ts';
import type { ValueStore } from './ports.ts';

/** Names under which her prices, pantry, months and settings are kept. */
const names = { prices: 'change prices', pantry: 'change pantry', seasons: 'change seasons', settings: 'change settings' } as const;

export const usualChangeWords: ChangeWords = { currency: '£', staleDays: 180, allergenList: 'eu', region: 'uk' };

/** Her side of a change, kept in the store as small values. */
export interface ChangeKept {
  prices(): Promise<readonly PriceRow[]>;
  putPrices(rows: readonly PriceRow[]): Promise<void>;
  pantry(): Promise<readonly PantryItem[]>;
  putPantry(items: readonly PantryItem[]): Promise<void>;
  /** Months by kitchen name, hers only. */
  seasons(): Promise<Readonly<Record<string, string>>>;
  putSeasons(months: Readonly<Record<string, string>>): Promise<void>;
  settings(): Promise<ChangeWords>;
  putSettings(settings: ChangeWords): Promise<void>;
}

export function changeKept(values: ValueStore): ChangeKept {
  return {
    prices: async () => ((await values.get(names.prices)) as readonly PriceRow[] | null) ?? [],
    putPrices: (rows) => values.put(names.prices, rows),
    pantry: async () => ((await values.get(names.pantry)) as readonly PantryItem[] | null) ?? [],
    putPantry: (items) => values.put(names.pantry, items),
    seasons: async () => ((await values.get(names.seasons)) as Readonly<Record<string, string>> | null) ?? {},
    putSeasons: (months) => values.put(names.seasons, months),
    settings: async () => ({ ...usualChangeWords, ...((await values.get(names.settings)) as Partial<ChangeWords> | null) }),
    putSettings: (settings) => values.put(names.settings, settings),
  };
}
