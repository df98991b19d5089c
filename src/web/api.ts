import type { DeskOptions, FoodOffer } from '../app/desk.ts';
import type { DishChoices } from '../app/dish-choices.ts';
import type { DishReport, Explanation } from '../app/dish-report.ts';
import type { DishVersion, SavedDish } from '../app/ports.ts';
import type { OwnFood } from '../core/foods/index.ts';

/** A refusal of the server, with its words for people. */
export class Refusal extends Error {
  readonly code: string;
  constructor(title: string, code: string) {
    super(title);
    this.code = code;
  }
}

interface Ask {
  readonly method?: string;
  readonly body?: unknown;
  readonly signal?: AbortSignal;
}

/** Asks the server; a refusal and a silence come as a `Refusal` in words, an ended question as the browser's AbortError. */
export async function ask(path: string, init: Ask = {}): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(`/api${path}`, {
      method: init.method ?? 'GET',
      headers: init.body === undefined ? {} : { 'content-type': 'application/json' },
      body: init.body === undefined ? null : JSON.stringify(init.body),
      signal: init.signal ?? null,
    });
  } catch (cause) {
    if (cause instanceof DOMException && cause.name === 'AbortError') throw cause;
    throw new Refusal('Truepot does not answer. Look whether it is still running in its window, then try again; what you typed is still here.', 'offline');
  }
  if (response.ok) return response;
  const told = (await response.json().catch(() => ({}))) as { title?: string; code?: string };
  throw new Refusal(told.title ?? `The server answered ${response.status}.`, told.code ?? 'unknown');
}

/** The same, and the answer's JSON; nothing where the answer has no body. */
export async function call<T>(path: string, init: Ask = {}): Promise<T> {
  const response = await ask(path, init);
  return (response.status === 204 ? undefined : await response.json()) as T;
}

const query = (words: string): string => encodeURIComponent(words);

export const api = {
  options: () => call<DeskOptions>('/options'),
  settings: () => call<Partial<DishChoices> | null>('/settings'),
  saveSettings: (settings: unknown) => call<Partial<DishChoices>>('/settings', { method: 'PUT', body: settings }),
  workOut: (text: string, choices: DishChoices, signal: AbortSignal) => call<DishReport>('/dish/work-out', { method: 'POST', body: { text, choices }, signal }),
  explain: (text: string, choices: DishChoices, nutrient: string) => call<Explanation>('/dish/explain', { method: 'POST', body: { text, choices, nutrient } }),
  foods: (words: string, signal: AbortSignal) => call<FoodOffer[]>(`/foods?q=${query(words)}`, { signal }),
  dishes: (words: string, bin: boolean) => call<SavedDish[]>(`/dishes?q=${query(words)}${bin ? '&bin=yes' : ''}`),
  dish: (id: string) => call<SavedDish>(`/dishes/${id}`),
  createDish: (name: string, text: string, choices: DishChoices) => call<SavedDish>('/dishes', { method: 'POST', body: { name, text, choices } }),
  saveDish: (id: string, text: string, choices: DishChoices, label: string | null) => call<SavedDish>(`/dishes/${id}`, { method: 'PUT', body: { text, choices, label } }),
  renameDish: (id: string, name: string) => call<SavedDish>(`/dishes/${id}/name`, { method: 'POST', body: { name } }),
  copyDish: (id: string, name: string) => call<SavedDish>(`/dishes/${id}/copy`, { method: 'POST', body: { name } }),
  removeDish: (id: string) => call<void>(`/dishes/${id}`, { method: 'DELETE' }),
  bringBack: (id: string) => call<SavedDish>(`/dishes/${id}/bring-back`, { method: 'POST', body: {} }),
  versions: (id: string) => call<DishVersion[]>(`/dishes/${id}/versions`),
  restore: (id: string, version: number) => call<SavedDish>(`/dishes/${id}/restore`, { method: 'POST', body: { version } }),
  ownFoods: () => call<OwnFood[]>('/own-foods'),
  addOwnFood: (food: Omit<OwnFood, 'id'>) => call<OwnFood>('/own-foods', { method: 'POST', body: food }),
  changeOwnFood: (id: string, food: Omit<OwnFood, 'id'>) => call<OwnFood>(`/own-foods/${id}`, { method: 'PUT', body: food }),
  removeOwnFood: (id: string) => call<void>(`/own-foods/${id}`, { method: 'DELETE' }),
};
