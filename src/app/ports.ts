import type { OwnFood } from '../core/foods/index.ts';
import type { DishChoices } from './dish-choices.ts';

/** A dish as it stands: its newest version. Instants are ISO 8601 text in UTC. */
export interface SavedDish {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  readonly choices: DishChoices;
  readonly version: number;
  readonly createdAt: string;
  readonly savedAt: string;
  /** Null while the dish is in use; the instant it was put in the bin otherwise. */
  readonly deletedAt: string | null;
}

/** One kept state of a dish. */
export interface DishVersion {
  readonly dishId: string;
  readonly version: number;
  readonly label: string | null;
  readonly text: string;
  readonly choices: DishChoices;
  readonly savedAt: string;
}

export interface DishContent {
  readonly name: string;
  readonly text: string;
  readonly choices: DishChoices;
}

/** Saved dishes. Unknown ids throw `unknown-dish`; a name already in use by a live dish throws `name-taken`. */
export interface DishStore {
  create(content: DishContent): Promise<SavedDish>;
  get(id: string): Promise<SavedDish>;
  /** Live dishes whose name or text holds every word of `words`, newest first; the bin with `deleted: true`. */
  list(filter: { readonly words?: string; readonly deleted?: boolean }): Promise<SavedDish[]>;
  /** Keeps the new state as the next version; unchanged content makes none. */
  save(id: string, content: Omit<DishContent, 'name'>, label: string | null): Promise<SavedDish>;
  rename(id: string, name: string): Promise<SavedDish>;
  duplicate(id: string, name: string): Promise<SavedDish>;
  remove(id: string): Promise<void>;
  bringBack(id: string): Promise<SavedDish>;
  versions(id: string): Promise<DishVersion[]>;
  /** Makes an old version the newest again, as a new version. */
  restore(id: string, version: number): Promise<SavedDish>;
}

export interface OwnFoodStore {
  list(): Promise<OwnFood[]>;
  /** Adds or replaces by id. */
  put(food: OwnFood): Promise<void>;
  remove(id: string): Promise<void>;
}

/** Small values kept by name as JSON: settings, and the state of a plan that is being cooked. */
export interface ValueStore {
  get(key: string): Promise<unknown>;
  put(key: string, value: unknown): Promise<void>;
  remove(key: string): Promise<void>;
}

export interface Store {
  readonly dishes: DishStore;
  readonly ownFoods: OwnFoodStore;
  readonly values: ValueStore;
  close(): Promise<void>;
}

export interface Clock {
  /** The instant now, ISO 8601 in UTC. */
  now(): string;
  /** Today in the user's own time zone, YYYY-MM-DD. */
  today(): string;
}

export interface Ids {
  /** A fresh id, unique on this machine and beyond. */
  fresh(): string;
}
