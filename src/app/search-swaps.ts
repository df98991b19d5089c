import { lineAllergens, lineCost, searchSwaps, swapInRecipe, type SearchBound, type SearchLine, type SearchOption, type SwapOption } from '../core/dish/index.ts';
import { allergenList, nutrient as nutrientOf, type NutrientId, type SubstanceId, type SubstanceState } from '../core/foods/index.ts';
import { AppError } from '../errors.ts';
import type { ChangeContext } from './change-tables.ts';
import type { DishChoices } from './dish-choices.ts';
import { lineToPrice, priceDish } from './price-dish.ts';
import { lineGives, lineGivesNow, optionAllergens, optionCost } from './swap-line.ts';
import { optionName, swapText } from './swap-text.ts';
import { workOutDish, type WorkedDish, type WorkedLine } from './work-out-dish.ts';

/** "Reach 100 mg magnesium without nuts, under 2.50 a portion." */
export interface SwapWish {
  readonly nutrients: readonly { readonly id: NutrientId; readonly least: number | null; readonly most: number | null }[];
  /** Most that a portion may cost, in her currency; null for no bound. */
  readonly costMost: number | null;
  /** Entries of her allergen list, substances or diets that the dish must keep to. */
  readonly without: readonly string[];
  readonly diets: readonly string[];
  /** Lines that must stay as they are. */
  readonly keep: readonly string[];
  /** Up to 3. */
  readonly swaps: number;
  /** Also rule out traces from shared lines, and foods whose composition is not known. */
  readonly strict: boolean;
  readonly answers: number;
}

export interface WishedSwap {
  readonly lineId: string;
  readonly before: string;
  readonly after: string;
  readonly option: SwapOption;
  readonly grams: number;
}

export interface WishAnswer {
  readonly swaps: readonly WishedSwap[];
  /** The whole recipe with the swaps in. */
  readonly text: string;
  /** Portion totals after working the new text out in full. */
  readonly nutrients: readonly { readonly id: NutrientId; readonly amount: number; readonly atLeast: boolean }[];
  readonly cost: { readonly portion: number; readonly missing: number; readonly none: boolean };
  /** What the wish asks to leave out and still may be in by traces, or is not known. */
  readonly notSure: readonly { readonly substance: SubstanceId; readonly line: string; readonly state: 'may' | 'unknown' }[];
}

export interface WishResult {
  readonly answers: readonly WishAnswer[];
  /** Bounds that no combination of up to three swaps meets. */
  readonly outOfReach: readonly ({ readonly kind: 'nutrient'; readonly id: NutrientId } | { readonly kind: 'cost' })[];
  /** Lines that hold what shall be left out, and no food that plays their part is known to be without it. */
  readonly stuck: readonly string[];
  /** Lines that hold it, with or without a way out; more than `swaps` of them cannot all change. */
  readonly holding: readonly string[];
  /** Lines without a price: the cost of the dish is "at least". */
  readonly unpriced: number;
  readonly options: number;
}

const optionsALine = 40;
/** What one swap costs in fit, beside what the score lacks: two good swaps are worse than one fair one. */
const lossOfASwap = 0.05;

/** The substances behind a word of the wish: an entry of the list, a substance, "nuts" for all nuts. */
export function wishedSubstances(word: string, context: ChangeContext): readonly SubstanceId[] {
  const { allergens } = context.change;
  const list = allergenList(allergens, context.settings.allergenList);
  const plain = word.trim().toLowerCase().replace(/\s+/g, '-');
  const trees = allergens.lists.find((l) => l.id === 'codex')?.items.find((i) => i.id === 'tree-nuts')?.members ?? [];
  // "Nuts" in a kitchen are all of them, peanuts and pine nuts too, whatever the law of the place names.
  if (plain === 'nuts') return [...trees, 'peanut'];
  if (plain === 'tree-nuts') return trees;
  const item = list.items.find((i) => i.id === plain || i.name.toLowerCase() === word.trim().toLowerCase());
  if (item) return item.members;
  if (plain === 'gluten') return ['wheat', 'triticale', 'rye', 'barley', 'oats'];
  const one = allergens.substances.find((s) => s.id === plain || s.name.toLowerCase() === word.trim().toLowerCase());
  if (one) return [one.id];
  throw new AppError('bad-input', { what: `“${word}” is not known here. Use an allergen of the list (${list.items.map((i) => i.id).join(', ')}) or one of: ${allergens.substances.map((s) => s.id).join(', ')}.` });
}

function avoided(wish: SwapWish, context: ChangeContext): ReadonlySet<SubstanceId> {
  const diets = wish.diets.flatMap((id) => {
    const diet = context.change.allergens.diets.find((d) => d.id === id);
    if (!diet) throw new AppError('bad-input', { what: `There is no diet “${id}”. Choose one of: ${context.change.allergens.diets.map((d) => d.id).join(', ')}.` });
    return diet.brokenBy;
  });
  return new Set([...wish.without.flatMap((word) => wishedSubstances(word, context)), ...diets]);
}

/**
 * Whether a state breaks the wish. What a line of hers only may hold, or is not known to hold, is told
 * with the answer and not ruled out, unless the wish is strict; a food put in must be known, traces apart.
 */
function breaks(told: SubstanceState | undefined, strict: boolean, isNew: boolean): boolean {
  const state = told?.state ?? 'unknown';
  if (state === 'not') return false;
  if (state === 'contains') return true;
  if (strict) return true;
  if (!isNew) return false;
  return state === 'unknown' || (told?.reasons.some((r) => r.code !== 'cross-contact') ?? true);
}

interface PreparedLine {
  readonly worked: WorkedLine;
  readonly options: readonly (SwapOption | null)[];
  readonly search: SearchLine;
}

function prepare(dish: WorkedDish, worked: WorkedLine, wish: SwapWish, context: ChangeContext): PreparedLine {
  const ids = wish.nutrients.map((n) => n.id);
  const avoid = avoided(wish, context);
  const portions = dish.servings.count;
  const own = lineAllergens({ line: worked.line, match: worked.match, food: worked.food }, context.reader).states;
  const now = lineGivesNow(dish, worked);
  const costNow = lineCost(lineToPrice(worked), context.settings.prices).cost;
  const base: SearchOption = {
    values: [...ids.map((id) => now.get(id) ?? NaN), costNow === null ? NaN : costNow / portions],
    loss: 0,
    forbidden: [...avoid].some((id) => breaks(own.get(id), wish.strict, false)),
  };
  const grams = worked.grams?.value ?? null;
  const ranked = grams === null || wish.keep.includes(worked.line.id) ? [] : context.ranker.rank({ entry: worked.match.entry, form: worked.match.form, food: worked.food }, optionsALine).filter((o) => o.reasons.some((r) => r.code === 'family' || r.code === 'other-form'));
  const others = ranked.map((option): SearchOption => {
    const states = avoid.size === 0 ? null : optionAllergens(worked, option, context).states;
    const forbidden = states !== null && [...avoid].some((id) => breaks(states.get(id), wish.strict, true));
    const after = (grams ?? 0) * option.ratio;
    const gives = forbidden || ids.length === 0 ? null : lineGives(dish, worked, { food: option.food, grams: after, wanted: ids }, context);
    const cost = wish.costMost === null ? null : optionCost(worked, option, after, context).cost;
    return { values: [...ids.map((id) => gives?.get(id) ?? NaN), cost === null ? NaN : cost / portions], loss: 1 - option.score + lossOfASwap, forbidden };
  });
  return { worked, options: [null, ...ranked], search: { options: [base, ...others] } };
}

function answerOf(dish: WorkedDish, swaps: readonly WishedSwap[], wish: SwapWish, context: ChangeContext): WishAnswer {
  const text = swapInRecipe(dish.recipe, dish.lines.flatMap((l) => {
    const swap = swaps.find((s) => s.lineId === l.line.id);
    return swap ? [{ line: l.line, text: swap.after, name: optionName(swap.option) }] : [];
  }));
  const choices: DishChoices = { ...dish.choices, servings: dish.servings.count };
  const after = workOutDish(text, choices, context.tables);
  const cost = priceDish(after, context.settings.prices);
  const avoid = avoided(wish, context);
  const notSure = after.lines.flatMap((l) => {
    const { states } = lineAllergens({ line: l.line, match: l.match, food: l.food }, context.reader);
    return [...avoid].flatMap((substance) => {
      const state = states.get(substance)?.state;
      return state === 'may' || state === 'unknown' ? [{ substance, line: l.line.text, state }] : [];
    });
  });
  return {
    swaps, text, notSure,
    nutrients: wish.nutrients.map(({ id }) => {
      const total = after.totals.totals.get(id);
      return { id, amount: (total?.known ?? 0) / after.servings.count, atLeast: total?.state !== 'complete' };
    }),
    cost: { portion: cost.portion, missing: cost.missing, none: cost.lines.every((l) => l.cost === null || l.state === 'free') },
  };
}

function checked(wish: SwapWish): void {
  for (const { id, least, most } of wish.nutrients) {
    nutrientOf(id);
    if (least !== null && most !== null && least > most) throw new AppError('bad-input', { what: `The least ${id} is above the most.` });
  }
  if (!(wish.swaps >= 0) || wish.swaps > 3) throw new AppError('bad-input', { what: 'Up to 3 swaps can be searched at once.' });
}

/** Whether an answer, worked out in full, still meets the bounds; rounding to a cook's amounts may cost up to 3 %. */
function holds(answer: WishAnswer, wish: SwapWish): boolean {
  const ok = wish.nutrients.every(({ least, most }, i) => {
    const amount = answer.nutrients[i]?.amount ?? 0;
    return (least === null || amount >= least * 0.97) && (most === null || amount <= most * 1.03);
  });
  return ok && (wish.costMost === null || answer.cost.portion <= wish.costMost * 1.03);
}

/** Searches every combination of up to three swaps for those that meet the wish with the least loss of fit. Answers are worked out in full as written. */
export function searchWish(dish: WorkedDish, wish: SwapWish, context: ChangeContext): WishResult {
  checked(wish);
  const prepared = dish.lines.map((worked) => prepare(dish, worked, wish, context));
  const cost = wish.nutrients.length;
  const bounds: SearchBound[] = [
    ...wish.nutrients.map(({ least, most }, measure) => ({ measure, least, most })),
    ...(wish.costMost === null ? [] : [{ measure: cost, least: null, most: wish.costMost }]),
  ];
  const found = searchSwaps({ lines: prepared.map((p) => p.search), bounds, swaps: wish.swaps, answers: wish.answers * 3 });
  const answers: WishAnswer[] = [];
  for (const { choices } of found.answers) {
    if (answers.length >= wish.answers) break;
    const swaps = choices.flatMap(({ line, option }): WishedSwap[] => {
      const at = prepared[line];
      const chosen = at?.options[option];
      if (!at || !chosen) return [];
      const grams = (at.worked.grams?.value ?? 0) * chosen.ratio;
      const written = swapText(at.worked, chosen, grams, context.tables) ?? { text: `${Math.round(grams)} g ${optionName(chosen)}`, grams };
      return [{ lineId: at.worked.line.id, before: at.worked.line.text, after: written.text, option: chosen, grams: written.grams }];
    });
    const answer = answerOf(dish, swaps, wish, context);
    if (holds(answer, wish)) answers.push(answer);
  }
  return {
    answers,
    outOfReach: found.outOfReach.map((bound) => (bound < cost ? { kind: 'nutrient' as const, id: wish.nutrients[bound]!.id } : { kind: 'cost' as const })),
    stuck: prepared.filter((p) => p.search.options[0]?.forbidden && p.search.options.slice(1).every((o) => o.forbidden)).map((p) => p.worked.line.text),
    holding: prepared.filter((p) => p.search.options[0]?.forbidden).map((p) => p.worked.line.text),
    unpriced: priceDish(dish, context.settings.prices).missing,
    options: prepared.reduce((sum, p) => sum + p.options.length - 1, 0),
  };
}
