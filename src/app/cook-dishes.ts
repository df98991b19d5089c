import {
  cookPlan, dishFromLines, dishFromRecipe, earliestServing, explainClash, looksTyped, readScript, runningSheet, simulate, solvePlan, talkTrack, unbroken, withSlack,
  type Clash, type CookingTables, type CookPlan, type CookRequest, type Kitchen, type KitchenDish, type LineTrouble, type LiveTools, type Robustness, type SheetRow, type TalkTrack, type When,
} from '../core/cooking/index.ts';
import type { Recipe } from '../core/dish/index.ts';
import { AppError } from '../errors.ts';

/** What she asks for: dishes as recipe text or typed steps, her kitchen, when, and a script if she speaks. */
export interface CookOrder {
  readonly dishes: readonly { readonly name: string | null; readonly text: string }[];
  readonly kitchen: Partial<Kitchen>;
  readonly when: When;
  readonly script: string | null;
  readonly wordsPerMinute: number | null;
  readonly deadAirSeconds: number | null;
}

export interface CookTools {
  readonly tables: CookingTables;
  readonly readRecipe: (text: string) => Recipe;
  /** A watch that says when so many milliseconds are over. */
  readonly watch: (milliseconds: number) => () => boolean;
}

/** Robustness as plain data. */
export type EveningChances = Omit<Robustness, 'steps'> & { readonly steps: Readonly<Record<string, { readonly buffer: number; readonly beganLate: number; readonly slip: number }>> };

export interface CookedPlan {
  readonly kind: 'plan';
  readonly request: CookRequest;
  readonly dishNames: Readonly<Record<string, string>>;
  readonly plan: CookPlan;
  readonly chances: EveningChances;
  readonly talk: TalkTrack | null;
  readonly sheet: readonly SheetRow[];
  readonly troubles: readonly DishTrouble[];
}

export interface DishTrouble extends LineTrouble {
  readonly dish: string;
}

export type CookAnswer =
  | CookedPlan
  | { readonly kind: 'clash'; readonly clash: Clash; readonly earliest: number | null; readonly request: CookRequest; readonly dishNames: Readonly<Record<string, string>>; readonly troubles: readonly DishTrouble[] }
  | { readonly kind: 'no-plan-found'; readonly troubles: readonly DishTrouble[] };

/** Milliseconds for one plan, and for explaining why there is none. */
const planning = 1000;
const explaining = 4000;
const chance = { seed: 20_250, runs: 250 };

/** Reads each dish: typed steps where the text looks like them, a written recipe otherwise. Throws `bad-input` when a dish has no steps. */
export function readDishes(order: CookOrder, tools: CookTools): { dishes: KitchenDish[]; troubles: DishTrouble[] } {
  const { rules, habits } = tools.tables;
  const troubles: DishTrouble[] = [];
  if (order.dishes.length === 0) throw new AppError('bad-input', { what: 'Say which dishes are to be cooked: at least one.' });
  if (order.dishes.length > 12) throw new AppError('input-too-large', { what: 'A plan takes up to twelve dishes at a time.' });
  const dishes = order.dishes.map(({ name, text }, index) => {
    if (text.length > 100_000) throw new AppError('input-too-large', { what: 'A dish takes up to 100 000 characters.' });
    const id = `d${index + 1}`;
    const typed = looksTyped(text);
    const read = typed ? dishFromLines(text, id, rules) : { dish: dishFromRecipe(tools.readRecipe(text), id, habits, rules), troubles: [] };
    troubles.push(...read.troubles.map((trouble) => ({ ...trouble, dish: read.dish.name })));
    const dish = name === null ? read.dish : { ...read.dish, name };
    if (dish.steps.length === 0) throw new AppError('bad-input', { what: `No cooking steps were found in ${name ?? `dish ${index + 1}`}. Paste the method as well, or type the steps one a line (docs/cook-plan.md).` });
    if (dish.steps.length > 60) throw new AppError('input-too-large', { what: 'A dish takes up to 60 steps.' });
    return dish;
  });
  return { dishes, troubles };
}

function kitchenOf(order: CookOrder, usual: Kitchen): Kitchen {
  return { ...usual, ...order.kitchen, pans: { ...usual.pans, ...order.kitchen.pans }, places: { ...usual.places, ...order.kitchen.places } };
}

/** The whole cook plan for an order: plan, chances, talk, running sheet; or why there is none. */
export function cookDishes(order: CookOrder, tools: CookTools, live = false): CookAnswer {
  const { rules } = tools.tables;
  const { dishes, troubles } = readDishes(order, tools);
  const dishNames = Object.fromEntries(dishes.map((dish) => [dish.id, dish.name]));
  const asked: CookRequest = { dishes, kitchen: kitchenOf(order, tools.tables.usualKitchen), when: order.when };
  const request = live ? unbroken(asked) : asked;
  const outcome = solvePlan({ request, rules, budget: { conflicts: 200_000, stop: tools.watch(planning) } });
  if (outcome.kind === 'unknown') return { kind: 'no-plan-found', troubles };
  if (outcome.kind === 'infeasible') {
    const solve = { request, rules, budget: { conflicts: 200_000, stop: tools.watch(explaining) } };
    const clash = explainClash(solve, solve.budget);
    return { kind: 'clash', clash, earliest: request.when.kind === 'serve-at' ? earliestServing(solve) : null, request, dishNames, troubles };
  }
  const slack = withSlack(outcome.plan, rules, chance);
  const plan = cookPlan(slack, rules);
  const robustness = simulate(slack, rules, { seed: chance.seed + 1, runs: 1000 });
  const talk = talkOf(order, plan, { cooks: request.kitchen.cooks, names: dishNames, tables: tools.tables });
  return {
    kind: 'plan', request, dishNames, plan, troubles, talk,
    chances: { ...robustness, steps: Object.fromEntries(robustness.steps) },
    sheet: runningSheet(plan, talk, request.kitchen.cooks),
  };
}

/** Her script fitted into a plan; null when there is none. */
export function talkOf(order: Pick<CookOrder, 'script' | 'wordsPerMinute' | 'deadAirSeconds'>, plan: CookPlan, kitchen: { cooks: number; names: Readonly<Record<string, string>>; tables: CookingTables }): TalkTrack | null {
  if (order.script === null || order.script.trim() === '') return null;
  const paragraphs = readScript(order.script, plan.steps, new Map(Object.entries(kitchen.names)));
  return talkTrack(plan, paragraphs, {
    wordsPerMinute: order.wordsPerMinute ?? kitchen.tables.wordsPerMinute,
    deadAirSeconds: order.deadAirSeconds ?? kitchen.tables.deadAirSeconds,
    speaker: 1,
    cooks: kitchen.cooks,
  });
}

/** What live mode plans with: quicker, as she is waiting with the spoon in her hand. */
export function liveTools(tools: CookTools): LiveTools {
  return { rules: tools.tables.rules, budget: { conflicts: 50_000, stop: tools.watch(700) }, chance: { seed: chance.seed, runs: 120 } };
}
