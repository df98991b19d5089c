import { swapInRecipe } from '../core/dish/index.ts';
import { isGraver, nutrients as allNutrients } from '../core/foods/index.ts';
import { allergenStateText, dietVerdictText } from '../messages/allergens.ts';
import { changeText, money, seasonText, swapReasonText } from '../messages/change.ts';
import { figure, listed } from '../messages/numbers.ts';
import type { SwapReport, WishReport } from './change-report.ts';
import type { ChangeContext } from './change-tables.ts';
import { searchWish, type SwapWish } from './search-swaps.ts';
import { swapLine } from './swap-line.ts';
import type { WorkedDish } from './work-out-dish.ts';
import type { DietVerdict } from '../core/foods/index.ts';

/** Alternatives for a line in words and figures. */
export function reportSwap(dish: WorkedDish, lineId: string, limit: number, context: ChangeContext): SwapReport {
  const worked = dish.lines.find((l) => l.line.id === lineId);
  const { currency } = context.settings;
  const effects = swapLine(dish, lineId, limit, context);
  return {
    lineId,
    line: worked?.line.text ?? '',
    roles: worked?.match.entry ? context.ranker.roles(worked.match.entry) : [],
    options: effects.map((effect) => {
      const { option, cost } = effect;
      return {
        name: effect.name, score: option.score, why: option.reasons.map(swapReasonText), text: effect.text,
        recipe: effect.text === null || !worked ? null : swapInRecipe(dish.recipe, [{ line: worked.line, text: effect.text, name: effect.name }]),
        gramsBefore: effect.grams.before, gramsAfter: effect.grams.after,
        nutrients: allNutrients.filter((n) => n.id !== 'water' && n.id !== 'ash').map((n) => {
          const change = effect.nutrients.get(n.id) ?? null;
          return { id: n.id, name: n.name, unit: n.unit, change, words: change === null ? 'not known' : changeText(change, n.unit) };
        }),
        cost: { change: cost.change, words: cost.change === null ? 'not known: a price is missing' : Math.abs(cost.change) < 0.005 ? 'no change' : `${cost.change > 0 ? '+' : ''}${money(cost.change, currency)}` },
        allergens: effect.allergens.map((a) => ({ ...a, words: `${a.name}: ${allergenStateText(a.before)} → ${allergenStateText(a.after)}`, graver: isGraver(a.after, a.before) })),
        diets: effect.diets.map((d) => ({ name: d.name, words: `${d.name}: ${dietVerdictText(d.before as DietVerdict)} → ${dietVerdictText(d.after as DietVerdict)}` })),
        season: { state: effect.season, words: seasonText(effect.season) },
        minutes: option.minutes === null ? null : `${option.minutes.before} → ${option.minutes.after} min`,
        fodmap: effect.fodmap.gained.length + effect.fodmap.lost.length === 0 ? null : [...effect.fodmap.gained.map((k) => `+ ${k}`), ...effect.fodmap.lost.map((k) => `− ${k}`)].join(', '),
      };
    }),
  };
}

/** The answers to a wish in words. */
export function reportWish(dish: WorkedDish, wish: SwapWish, context: ChangeContext): WishReport {
  const result = searchWish(dish, wish, context);
  const nutrientOf = new Map(allNutrients.map((n) => [n.id, n]));
  const nameOf = new Map(context.change.allergens.substances.map((s) => [s.id, s.name]));
  const { currency } = context.settings;
  const far = result.outOfReach.map((b) => (b.kind === 'cost' ? 'the cost' : (nutrientOf.get(b.id)?.name.toLowerCase() ?? b.id)));
  const unpriced = wish.costMost !== null && result.unpriced > 0 ? ` ${result.unpriced} ${result.unpriced === 1 ? 'line has' : 'lines have'} no price, so costs are “at least”.` : '';
  const inTheWay = result.stuck.length > 0 ? `No food that plays the part of ${listed(result.stuck.map((l) => `“${l}”`))} is known to be without it. Take the line out, or choose another food yourself.`
    : result.holding.length > wish.swaps ? `${result.holding.length} lines hold what shall be left out, more than ${wish.swaps} swaps can change: ${listed(result.holding.map((l) => `“${l}”`))}.` : null;
  const words = result.answers.length === 0
    ? inTheWay !== null ? inTheWay : far.length > 0 ? `No set of up to ${wish.swaps} swaps reaches it: ${listed(far)} is out of reach with the foods that play these parts.${unpriced}` : `No set of up to ${wish.swaps} swaps meets all of it at once.${unpriced}`
    : result.answers[0]?.swaps.length === 0 ? `The dish already meets it as it is.${unpriced}` : `Every combination of up to ${wish.swaps} swaps among ${result.options} alternatives was covered; those nearest to the dish come first.${unpriced}`;
  return {
    words,
    answers: result.answers.map((answer) => ({
      swaps: answer.swaps.map((s) => ({ lineId: s.lineId, before: s.before, after: s.after, why: s.option.reasons.map(swapReasonText) })),
      text: answer.text,
      nutrients: answer.nutrients.map(({ id, amount, atLeast }) => ({ id, name: nutrientOf.get(id)?.name ?? id, words: `${atLeast ? 'at least ' : ''}${figure(amount)} ${nutrientOf.get(id)?.unit ?? ''}` })),
      cost: answer.cost.none ? 'no prices noted' : `${answer.cost.missing > 0 ? 'at least ' : ''}${money(answer.cost.portion, currency)} a portion`,
      notSure: [...new Set(answer.notSure.map((n) => n.substance))].map((id) => {
        const lines = answer.notSure.filter((n) => n.substance === id);
        const told = lines.slice(0, 3).map((n) => `“${n.line}” (${n.state === 'may' ? 'traces or some recipes' : 'not known'})`);
        return `${nameOf.get(id) ?? id} in ${listed(told)}${lines.length > 3 ? ` and ${lines.length - 3} more` : ''}`;
      }),
    })),
  };
}
