import type { Food } from '../foods/index.ts';
import type { Interval } from '../quantity/index.ts';
import { cookedFamily, cookedGroup } from './cooked-family.ts';
import type { LiquidFate } from './cooked-way.ts';
import type { CookingMethod, Heat, IngredientLine, Recipe, StepAction } from './recipe.ts';

/** One stretch of cooking that a line goes through, from when it enters the pot. */
export interface TreatmentStage {
  readonly method: CookingMethod;
  /** Null: the step states no time. */
  readonly minutes: Interval | null;
  readonly liquid: LiquidFate;
  readonly lid: boolean | null;
  readonly heat: Heat | null;
  /** True where its minutes are the last of a stretch that is already counted ("for the last 5 minutes"). */
  readonly within: boolean;
  /** The step it stands in, from 1; null when she set it herself. */
  readonly step: number | null;
  readonly verb: string | null;
}

export type TreatmentWhy =
  | 'step' // a step's verb says so
  | 'no-step' // no step cooks it
  | 'already-cooked' // the table's food is cooked: it is only warmed
  | 'already-cooked-cold' // and no step warms it
  | 'liquid-taken-as-poured-away' // boiled, and no liquid is listed that could be eaten
  | 'absorbs-its-water' // grains and fruit keep the water they cook in
  | 'overridden'; // she said so

/** How one line is cooked. `main` decides its factors; `stages` are all of them in order. */
export interface Treatment {
  readonly lineId: string;
  readonly method: CookingMethod;
  readonly minutes: Interval | null;
  readonly liquid: LiquidFate;
  readonly lid: boolean | null;
  readonly alreadyCooked: boolean;
  readonly stages: readonly TreatmentStage[];
  readonly why: readonly TreatmentWhy[];
}

/** What she sets herself for a line; what she leaves out stays as read. */
export interface TreatmentOverride {
  readonly method: CookingMethod;
  readonly minutes?: number;
  readonly liquid?: LiquidFate;
  readonly lid?: boolean;
}

const cookedInTable = /\b(canned|cooked|boiled|roasted|baked|braised|broiled|grilled|fried|stewed|steamed|simmered|toasted|microwaved|heated|ready-to-eat|smoked|bottled)\b/i;
const stillRaw = /\b(raw|uncooked|unprepared|unheated)\b|, dry(,|$)|\bfor stewing\b/i;
const cookedWords = new Set(['cooked', 'precooked', 'leftover', 'tinned', 'canned', 'roasted', 'ready-cooked', 'boiled', 'steamed']);
// Whole milk powders, breads, cheeses and spices name their making, not a cooking of ours.
const notOurCooking = /peanut butter|cereals ready|bread|cheese|coffee|cocoa|spices|oil|sauce|ham\b|roast beef, deli/i;

/** Whether the table's own food was cooked before: canned beans, boiled rice, roasted peppers. */
export function isCookedInTable(food: Pick<Food, 'name'> | null, line: Pick<IngredientLine, 'food'> | null): boolean {
  if (food && stillRaw.test(food.name)) return false;
  if (food && cookedInTable.test(food.name) && !notOurCooking.test(food.name)) return true;
  return food === null && (line?.food.qualifiers.some((word) => cookedWords.has(word)) ?? false);
}

const dryMethods = new Set<CookingMethod>(['steamed', 'roasted', 'baked', 'grilled', 'stir-fried', 'fried', 'deep-fried', 'toasted', 'microwaved', 'reheated', 'kept-hot', 'raw', 'soaked']);
const liquidWords = /water|stock|broth|bouillon|wine|milk|cream|passata|tomato|juice|soup|cider|beer|sauce/i;

function isLiquid(food: Food | null, line: IngredientLine | undefined): boolean {
  if (food) return ['liquids', 'dairy'].includes(cookedFamily(food)) || /tomato/i.test(food.name);
  return line !== undefined && liquidWords.test(line.food.name);
}

function absorbs(food: Food | null): boolean {
  if (!food) return false;
  const family = cookedFamily(food);
  return ['cereals', 'fruit'].includes(cookedGroup(family)) && family !== 'pasta';
}

interface Reading {
  readonly recipe: Recipe;
  readonly foods: ReadonlyMap<string, Food | null>;
}

function fateOf(action: StepAction, lineId: string, { recipe, foods }: Reading): { liquid: LiquidFate; why: TreatmentWhy | null } {
  const method = action.method!;
  if (dryMethods.has(method)) return { liquid: 'none', why: null };
  if (method === 'boiled-drained' || method === 'blanched') return { liquid: 'drained', why: null };
  if (absorbs(foods.get(lineId) ?? null)) return { liquid: 'kept', why: 'absorbs-its-water' };
  const others = action.inPot.map((id) => ({ food: foods.get(id) ?? null, line: recipe.lines.find((line) => line.id === id) }));
  const eatenLiquid = others.some(({ food, line }) => isLiquid(food, line));
  if (eatenLiquid || method === 'stewed' || method === 'simmered' || method === 'pressure-cooked') return { liquid: 'kept', why: null };
  return { liquid: 'drained', why: 'liquid-taken-as-poured-away' };
}

const lastMinutes = /\b(last|final)\b[^.]*\b(minutes?|mins?)\b/i;

/** Verbs that stand for one cooking with the action before, so that its minutes are not counted twice. */
const sameCooking = (a: TreatmentStage, b: TreatmentStage): boolean => a.method === b.method && a.liquid === b.liquid && (a.minutes === null || b.minutes === null);

function stagesOf(lineId: string, reading: Reading): { stages: TreatmentStage[]; why: Set<TreatmentWhy> } {
  const stages: TreatmentStage[] = [];
  const why = new Set<TreatmentWhy>();
  for (const step of reading.recipe.steps) {
    for (const action of step.actions) {
      if (action.method === null || action.method === 'raw' || !(action.inPot.includes(lineId) || action.lines.includes(lineId))) continue;
      const within = lastMinutes.test(reading.recipe.text.slice(action.span.start, action.span.end));
      // What was in the pot before has these minutes in its own stretch.
      if (within && stages.length > 0 && !action.lines.includes(lineId)) continue;
      const fate = fateOf(action, lineId, reading);
      if (fate.why) why.add(fate.why);
      const stage: TreatmentStage = { within, method: action.method, minutes: action.minutes, liquid: fate.liquid, lid: action.lid, heat: action.heat, step: step.number, verb: action.verb };
      const before = stages.at(-1);
      if (before && sameCooking(before, stage)) stages[stages.length - 1] = { ...before, minutes: before.minutes ?? stage.minutes, lid: before.lid ?? stage.lid };
      else stages.push(stage);
    }
  }
  return { stages, why };
}

const addMinutes = (a: Interval | null, b: Interval | null): Interval | null => (a && b ? { low: a.low + b.low, value: a.value + b.value, high: a.high + b.high } : (a ?? b));

/** The stage that decides: the longest way of cooking, draining before not draining when both are as long. */
function mainStage(stages: readonly TreatmentStage[], minutesUnsaid: Readonly<Record<CookingMethod, number>>): TreatmentStage {
  const byMethod = new Map<string, TreatmentStage>();
  for (const stage of stages) {
    const key = `${stage.method} ${stage.liquid}`;
    const before = byMethod.get(key);
    byMethod.set(key, before ? { ...before, minutes: addMinutes(before.minutes, stage.minutes), lid: stage.lid ?? before.lid } : stage);
  }
  const length = (stage: TreatmentStage): number => stage.minutes?.value ?? minutesUnsaid[stage.method];
  const cooking = [...byMethod.values()].filter((stage) => !['soaked', 'kept-hot'].includes(stage.method));
  const pool = cooking.length > 0 ? cooking : [...byMethod.values()];
  return pool.reduce((best, stage) => (length(stage) > length(best) || (length(stage) === length(best) && stage.liquid === 'drained') ? stage : best));
}

/**
 * How a line is cooked, from the steps that hold it, or as she set it. Cooked and canned foods are
 * only warmed. A line that no step cooks stays as it is.
 */
export function treatmentOf(lineId: string, reading: Reading & { readonly overrides?: ReadonlyMap<string, TreatmentOverride> }, minutesUnsaid: Readonly<Record<CookingMethod, number>>): Treatment {
  const food = reading.foods.get(lineId) ?? null;
  const line = reading.recipe.lines.find((l) => l.id === lineId) ?? null;
  const own = reading.overrides?.get(lineId);
  const alreadyCooked = isCookedInTable(food, line);
  if (own) {
    const minutes = own.minutes === undefined ? null : { low: own.minutes, value: own.minutes, high: own.minutes };
    const drained = own.method === 'boiled-drained' || own.method === 'blanched';
    const liquid = own.liquid ?? (drained ? 'drained' : dryMethods.has(own.method) ? 'none' : 'kept');
    const stage: TreatmentStage = { within: false, method: own.method, minutes, liquid, lid: own.lid ?? null, heat: null, step: null, verb: null };
    return { lineId, method: own.method, minutes, liquid, lid: own.lid ?? null, alreadyCooked, stages: own.method === 'raw' ? [] : [stage], why: ['overridden'] };
  }
  const { stages, why } = stagesOf(lineId, reading);
  const cooking = stages.filter((stage) => stage.method !== 'soaked');
  if (alreadyCooked) {
    const method: CookingMethod = cooking.length > 0 ? 'reheated' : 'raw';
    const inLiquid = cooking.some((stage) => stage.liquid === 'kept') ? 'kept' : 'none';
    return { lineId, method, minutes: null, liquid: inLiquid, lid: null, alreadyCooked, stages: cooking, why: [cooking.length > 0 ? 'already-cooked' : 'already-cooked-cold'] };
  }
  if (stages.length === 0) return { lineId, method: 'raw', minutes: null, liquid: 'none', lid: null, alreadyCooked, stages, why: ['no-step'] };
  const main = mainStage(stages, minutesUnsaid);
  return { lineId, method: main.method, minutes: main.minutes, liquid: main.liquid, lid: main.lid, alreadyCooked, stages, why: ['step', ...why] };
}
