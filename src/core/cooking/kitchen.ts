import type { Interval } from '../quantity/index.ts';

/**
 * What a step asks of the cook while it runs. `hands`: busy, but she can look up (chopping). `stir`: she cannot
 * leave it or look away. `glance`: runs alone and wants a look at least every so many minutes. `none`: runs alone.
 */
export type Attention = { readonly kind: 'none' } | { readonly kind: 'glance'; readonly everyMinutes: number } | { readonly kind: 'hands' } | { readonly kind: 'stir' };

export const panSizes = ['small', 'medium', 'large', 'wide'] as const;
export type PanSize = (typeof panSizes)[number];

/** A place in the kitchen with a count of its own, besides rings, oven, pans and hands. */
export const places = ['board', 'blender', 'sink', 'grill', 'microwave'] as const;
export type Place = (typeof places)[number];

export interface OvenNeed {
  readonly celsius: number;
  readonly shelves: number;
  /** True when another temperature would spoil it (a cake, a soufflé). */
  readonly exact: boolean;
}

export interface StepLink {
  /** The step that has to be over first. */
  readonly step: string;
  /** Minutes that must pass between its end and this start. */
  readonly wait: number;
  /** Minutes that may pass at most; null: it can wait as long as it likes. */
  readonly within: number | null;
  /** Why `within` is there: safety is never relaxed. */
  readonly reason: 'order' | 'quality' | 'safety';
}

export interface KitchenStep {
  /** Unique in the whole plan: `dish/number`. */
  readonly id: string;
  readonly title: string;
  /** Minutes it takes: shortest, usual, longest. */
  readonly minutes: Interval;
  readonly attention: Attention;
  /** Cooks it takes at once while attention is hands or stir. */
  readonly cooks: number;
  /** She can talk to the camera or the class while she does it. */
  readonly talk: boolean;
  /** Catches or burns when it is left too long. */
  readonly burns: boolean;
  readonly ring: boolean;
  readonly oven: OvenNeed | null;
  /** Name of the vessel within the dish: it is taken from the first step that names it to the last. */
  readonly pan: { readonly name: string; readonly size: PanSize } | null;
  readonly places: readonly Place[];
  readonly after: readonly StepLink[];
  /** May be put down and taken up again. */
  readonly mayPause: boolean;
  /** Done hours before: minutes between its end and the step that needs it, least and most. */
  readonly ahead: { readonly least: number; readonly most: number } | null;
}

export interface KitchenDish {
  readonly id: string;
  readonly name: string;
  readonly steps: readonly KitchenStep[];
  /** Minutes after the (first) serving time that this one goes on the table. */
  readonly servedAfter: number;
  /** Eaten hot: its waiting before serving is what the plan keeps least. */
  readonly hot: boolean;
  /** Minutes it may wait between its last step and the table. */
  readonly hold: number;
  readonly holdReason: 'quality' | 'safety';
}

export interface Kitchen {
  readonly cooks: number;
  readonly rings: number;
  readonly shelves: number;
  readonly pans: Readonly<Record<PanSize, number>>;
  readonly places: Readonly<Record<Place, number>>;
}

/** `serve-at`: on the table at that clock minute. `start-now`: she begins at that minute. `shortest`: least total time, waiting second. */
export type When =
  | { readonly kind: 'serve-at'; readonly minute: number; readonly notBefore: number | null }
  | { readonly kind: 'start-now'; readonly minute: number }
  | { readonly kind: 'shortest'; readonly minute: number };

/** Clock minutes count from midnight of the day of serving; the day before is negative. */
export interface CookRequest {
  readonly dishes: readonly KitchenDish[];
  readonly kitchen: Kitchen;
  readonly when: When;
}

/** Parameters of the kitchen, from data/parameters/cooking/. */
export interface KitchenRules {
  /** Degrees Celsius a minute while the oven heats or cools with its door shut. */
  readonly ovenHeatsPerMinute: number;
  readonly ovenCoolsPerMinute: number;
  readonly roomCelsius: number;
  /** Largest difference at which dishes share one oven, °C. */
  readonly ovenShareCelsius: number;
  /** Share of the time added for each degree the oven is cooler than asked (taken off when hotter). */
  readonly timePerDegree: number;
  /** A step that may be paused is cut into pieces of at least this many minutes. */
  readonly leastPiece: number;
  readonly holdHot: number;
  readonly holdCold: number;
  readonly holdPoultry: number;
  readonly grainsCoolWithin: number;
  /** Chance of being ready on time that the plan aims at, 0 to 1. */
  readonly onTimeTarget: number;
}

export const isActive = (step: Pick<KitchenStep, 'attention'>): boolean => step.attention.kind === 'hands' || step.attention.kind === 'stir';
