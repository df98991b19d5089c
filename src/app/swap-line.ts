import {
  cookLine, dishAllergens, lineAllergens, lineCost, seasonOf, treatmentOf,
  type LineAllergens, type LineCost, type LineFood, type SeasonState, type SwapOption,
} from '../core/dish/index.ts';
import { allergenList, listedAllergens, nutrientIds, toldDiets, together, type AllergenReader, type AllergenState, type Food, type NutrientId, type SubstanceId, type SubstanceStates } from '../core/foods/index.ts';
import { exactly } from '../core/quantity/index.ts';
import type { ChangeContext } from './change-tables.ts';
import { lineToPrice } from './price-dish.ts';
import { optionName, swapText } from './swap-text.ts';
import type { WorkedDish, WorkedLine } from './work-out-dish.ts';

/** What a line gives to a portion with one food or another; a nutrient that the table lacks is absent. */
export type LineGives = ReadonlyMap<NutrientId, number>;

export interface SwapEffect {
  readonly option: SwapOption;
  readonly name: string;
  /** The line as it would stand; null where no words for it read back. */
  readonly text: string | null;
  /** Edible grams into the pot, before and after. */
  readonly grams: { readonly before: number | null; readonly after: number | null };
  /** Change of a portion, nutrient by nutrient; null where either food has no value. */
  readonly nutrients: ReadonlyMap<NutrientId, number | null>;
  /** Change of a portion's cost; null where a price is missing. */
  readonly cost: { readonly change: number | null; readonly of: LineCost };
  /** Entries of the allergen list whose state in the whole dish changes. */
  readonly allergens: readonly { readonly item: string; readonly name: string; readonly before: AllergenState; readonly after: AllergenState }[];
  readonly diets: readonly { readonly id: string; readonly name: string; readonly before: string; readonly after: string }[];
  readonly season: SeasonState;
  /** FODMAP kinds that come or go. */
  readonly fodmap: { readonly gained: readonly string[]; readonly lost: readonly string[] };
}

const asLineFood = (worked: WorkedLine): LineFood => ({ line: worked.line, match: worked.match, food: worked.food });

/** A food with only these values: the others read as missing, so that working out a few nutrients costs little. */
function narrowed(food: Food, wanted: ReadonlySet<NutrientId> | null): Food {
  if (wanted === null) return food;
  return Object.assign(Object.create(food) as Food, { value: (id: NutrientId) => (wanted.has(id) ? food.value(id) : { kind: 'not-in-table' as const }) });
}

/** Sums of other values, and what the losses look at; needed whenever anything is asked. */
const alwaysNeeded: readonly NutrientId[] = ['water', 'fat', 'protein', 'carbohydrate', 'fibre', 'alcohol', 'retinol', 'beta-carotene', 'alpha-carotene', 'beta-cryptoxanthin', 'food-folate', 'folic-acid'];

/** What another food in a line's place gives to a portion after cooking, by the line's own treatment. */
export function lineGives(dish: WorkedDish, worked: WorkedLine, at: { readonly food: Food; readonly grams: number; readonly wanted: readonly NutrientId[] | null }, context: ChangeContext): LineGives {
  const { tables } = context;
  const foods = new Map(dish.lines.map((l) => [l.line.id, l.line.id === worked.line.id ? at.food : l.food]));
  const override = worked.correction?.method === undefined ? undefined : { method: worked.correction.method, ...(worked.correction.minutes === undefined ? {} : { minutes: worked.correction.minutes }) };
  const treatment = treatmentOf(worked.line.id, { recipe: dish.recipe, foods, ...(override ? { overrides: new Map([[worked.line.id, override]]) } : {}) }, tables.cooked.parameters.minutesUnsaid);
  const food = narrowed(at.food, at.wanted === null ? null : new Set([...at.wanted, ...alwaysNeeded]));
  const cooked = cookLine({ lineId: worked.line.id, food, grams: exactly(at.grams), treatment }, tables.cooked);
  const share = worked.eatenShare.value / dish.servings.count;
  return new Map([...cooked.values].map(([id, value]) => [id, value.amount.value * share]));
}

/** What a line gives to a portion as it is. */
export function lineGivesNow(dish: WorkedDish, worked: WorkedLine): LineGives {
  const out = new Map<NutrientId, number>();
  for (const id of nutrientIds) {
    const own = dish.totals.totals.get(id)?.contributions.find((c) => c.lineId === worked.line.id);
    if (own && own.amount !== null) out.set(id, own.amount / dish.servings.count);
  }
  return out;
}

/** Told once for each kitchen food and form: reading their words takes long. */
const toldOptions = new WeakMap<AllergenReader, Map<string, LineAllergens>>();

/** The substances of an alternative, by its kitchen name and form. */
export function optionAllergens(worked: WorkedLine, option: SwapOption, context: ChangeContext): LineAllergens {
  const told = toldOptions.get(context.reader) ?? new Map<string, LineAllergens>();
  toldOptions.set(context.reader, told);
  const key = `${option.entry.name}/${option.form}`;
  const known = told.get(key) ?? tellOption(worked, option, context);
  told.set(key, known);
  return known;
}

function tellOption(worked: WorkedLine, option: SwapOption, context: ChangeContext): LineAllergens {
  const name = optionName(option);
  const states = context.reader.states({ entry: option.entry, form: option.form, food: option.food, name, text: name, lineId: null });
  return { lineId: '', states, fodmap: lineAllergens({ line: { ...worked.line, food: { name, qualifiers: [] }, text: name, instead: [] }, match: { ...worked.match, entry: option.entry }, food: option.food }, context.reader).fodmap };
}

interface DishSubstances {
  readonly whole: SubstanceStates;
  /** Of everything but one line, so that an alternative can be put in its place. */
  without(lineId: string): SubstanceStates;
}

/** Substances of the dish, made once and asked for each line. */
export function dishSubstances(dish: WorkedDish, context: ChangeContext): DishSubstances {
  const all = dishAllergens(dish.lines.map(asLineFood), dish.recipe, context.reader);
  return {
    whole: all.states,
    without: (lineId) => dishAllergens(dish.lines.filter((l) => l.line.id !== lineId).map(asLineFood), dish.recipe, context.reader).states,
  };
}

function listChanges(before: SubstanceStates, after: SubstanceStates, context: ChangeContext): SwapEffect['allergens'] {
  const list = allergenList(context.change.allergens, context.settings.allergenList);
  const now = listedAllergens(list, before);
  return listedAllergens(list, after).flatMap((told, i) => {
    const was = now[i]?.state ?? 'unknown';
    return was === told.state ? [] : [{ item: told.item.id, name: told.item.name, before: was, after: told.state }];
  });
}

function dietChanges(before: SubstanceStates, after: SubstanceStates, context: ChangeContext): SwapEffect['diets'] {
  const now = toldDiets(context.change.allergens, before);
  return toldDiets(context.change.allergens, after).flatMap((told, i) => {
    const was = now[i]?.verdict ?? 'unknown';
    return was === told.verdict ? [] : [{ id: told.diet.id, name: told.diet.name, before: was, after: told.verdict }];
  });
}

export function optionSeason(option: SwapOption, context: ChangeContext): SeasonState {
  const { settings, change } = context;
  const table = change.seasons.find((s) => s.region === settings.region);
  return table ? seasonOf(option.entry.name, option.form, { table, own: settings.ownSeasons, month: settings.month }) : 'not-told';
}

/** What a swap costs more or less in a portion. */
export function optionCost(worked: WorkedLine, option: SwapOption, grams: number | null, context: ChangeContext): LineCost {
  return lineCost({ lineId: worked.line.id, entryName: option.entry.name, form: option.form, code: option.food.code, grams, free: false }, context.settings.prices);
}

/** Alternatives for a line, best first, each with what it does to a portion. `limit` of them are worked out. */
export function swapLine(dish: WorkedDish, lineId: string, limit: number, context: ChangeContext): readonly SwapEffect[] {
  const worked = dish.lines.find((l) => l.line.id === lineId);
  if (!worked) return [];
  const options = context.ranker.rank({ entry: worked.match.entry, form: worked.match.form, food: worked.food }, limit);
  const now = lineGivesNow(dish, worked);
  const costNow = lineCost(lineToPrice(worked), context.settings.prices);
  const substances = dishSubstances(dish, context);
  const rest = substances.without(lineId);
  const own = lineAllergens(asLineFood(worked), context.reader);
  return options.map((option): SwapEffect => {
    const before = worked.grams?.value ?? null;
    const aimed = before === null ? null : before * option.ratio;
    const written = aimed === null ? null : swapText(worked, option, aimed, context.tables);
    const after = written?.grams ?? aimed;
    const gives = after === null ? null : lineGives(dish, worked, { food: option.food, grams: after, wanted: null }, context);
    const other = optionAllergens(worked, option, context);
    const states = together(context.reader.ids, [rest, other.states]);
    const cost = optionCost(worked, option, after, context);
    return {
      option, name: optionName(option), text: written?.text ?? null, grams: { before, after },
      nutrients: new Map(nutrientIds.map((id) => {
        const [a, b] = [now.get(id), gives?.get(id)];
        return [id, a === undefined || b === undefined ? null : b - a];
      })),
      cost: { of: cost, change: cost.cost === null || costNow.cost === null ? null : (cost.cost - costNow.cost) / dish.servings.count },
      allergens: listChanges(substances.whole, states, context),
      diets: dietChanges(substances.whole, states, context),
      season: optionSeason(option, context),
      fodmap: { gained: other.fodmap.filter((k) => !own.fodmap.includes(k)), lost: own.fodmap.filter((k) => !other.fodmap.includes(k)) },
    };
  });
}

export type { SubstanceId };
