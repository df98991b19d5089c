import type { ChangeDesk, DishText, PantryReport, SeasonRow } from '../../app/change-desk.ts';
import type { AllergenReport, ChangeWords, CompareReport, CostReport, PriceListReport, ScaleReport, SwapReport, WishReport } from '../../app/change-report.ts';
import type { SwapWish } from '../../app/search-swaps.ts';
import type { PantryItem, PriceRow, ScaleAim } from '../../core/dish/index.ts';
import { call } from '../api.ts';

const post = <T>(path: string, body: unknown, signal?: AbortSignal): Promise<T> => call<T>(path, { method: 'POST', body, ...(signal ? { signal } : {}) });

export type BroughtPrices = PriceListReport & { readonly faults: readonly string[]; readonly added: number };

export const changeApi = {
  options: () => call<ChangeDesk['options']>('/change/options'),
  settings: () => call<ChangeWords>('/change/settings'),
  saveSettings: (settings: ChangeWords) => call<ChangeWords>('/change/settings', { method: 'PUT', body: settings }),
  allergens: (dish: DishText, signal: AbortSignal) => post<AllergenReport>('/change/allergens', dish, signal),
  swap: (dish: DishText, lineId: string, signal: AbortSignal) => post<SwapReport>('/change/swap', { ...dish, lineId, limit: 12 }, signal),
  wish: (dish: DishText, wish: Partial<SwapWish>) => post<WishReport>('/change/wish', { ...dish, wish }),
  scale: (dish: DishText, aim: ScaleAim) => post<ScaleReport>('/change/scale', { ...dish, aim }),
  cost: (dish: DishText, signal: AbortSignal) => post<CostReport>('/change/cost', dish, signal),
  compare: (dishes: readonly (DishText & { name: string })[]) => post<CompareReport>('/change/compare', { dishes }),
  prices: () => call<PriceListReport>('/prices'),
  savePrices: (rows: readonly Omit<PriceRow, 'id'>[]) => call<PriceListReport>('/prices', { method: 'PUT', body: { rows } }),
  bringPrices: (csv: string) => post<BroughtPrices>('/prices/csv', { csv }),
  cheapest: (nutrient: string, amount: number) => call<readonly { food: string; words: string }[]>(`/prices/cheapest?nutrient=${encodeURIComponent(nutrient)}&amount=${amount}`),
  seasons: () => call<readonly SeasonRow[]>('/seasons'),
  saveSeason: (name: string, months: string | null) => call<readonly SeasonRow[]>('/seasons', { method: 'PUT', body: { name, months } }),
  pantry: () => call<PantryReport>('/pantry'),
  savePantry: (items: readonly Omit<PantryItem, 'id'>[]) => call<PantryReport>('/pantry', { method: 'PUT', body: { items } }),
};
