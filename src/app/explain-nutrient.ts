import type { Contribution, Kept, Treatment } from '../core/dish/index.ts';
import { nutrient as nutrientOf, type Nutrient } from '../core/foods/index.ts';
import { doubtText } from '../messages/cooked.ts';
import { contributionSteps, explanationSummary } from '../messages/explanation.ts';
import type { Explanation, ExplanationPart } from './dish-report.ts';
import { sourceText, type DishTables } from './dish-tables.ts';
import { portionRange } from './portion-ranges.ts';
import { kitchenName } from './report-dish.ts';
import type { WorkedDish, WorkedLine } from './work-out-dish.ts';

const leastDoubtTold = 0.02;
const mostDoubtsTold = 6;

function part(worked: WorkedLine, contribution: Contribution, at: { readonly nutrient: Nutrient; readonly portions: number; readonly known: number; readonly treatment: Treatment | null; readonly kept: Kept | null }, tables: DishTables): ExplanationPart {
  const { nutrient, portions, known, treatment, kept } = at;
  return {
    lineId: worked.line.id,
    line: worked.line.text,
    food: worked.food?.name ?? worked.line.food.name,
    portionAmount: contribution.amount === null ? null : contribution.amount / portions,
    share: contribution.amount === null ? null : known > 0 ? contribution.amount / known : 0,
    steps: contributionSteps({ worked, name: kitchenName(worked), contribution, nutrient, portions, treatment, kept }).map(({ words, source, locator }) => ({ words, source: sourceText(tables, source, locator) })),
  };
}

/** The whole path of one nutrient of a portion, largest giver first, unknown parts last. Throws `unknown-nutrient`. */
export function explainNutrient(dish: WorkedDish, id: string, tables: DishTables): Explanation {
  const nutrient = nutrientOf(id);
  const total = dish.totals.totals.get(nutrient.id);
  if (!total) throw new Error(`Bug: no total for ${nutrient.id}`);
  const parts = total.contributions.flatMap((contribution) => {
    const worked = dish.lineById.get(contribution.lineId);
    return worked ? [part(worked, contribution, {
      nutrient, portions: dish.servings.count, known: total.known,
      treatment: dish.cooked.treatments.get(contribution.lineId) ?? null,
      kept: dish.cooked.lines.get(contribution.lineId)?.values.get(nutrient.id)?.kept ?? null,
    }, tables)] : [];
  });
  parts.sort((a, b) => (b.portionAmount ?? -1) - (a.portionAmount ?? -1));
  const { interval, doubts } = portionRange(dish, total);
  const nameOf = (lineId: string | null): string => {
    const worked = lineId === null ? undefined : dish.lineById.get(lineId);
    return worked ? kitchenName(worked) : '';
  };
  const told = doubts.filter((doubt) => doubt.share >= leastDoubtTold).slice(0, mostDoubtsTold);
  return {
    nutrient: nutrient.id,
    ...explanationSummary({ dish, total, nutrient, interval }),
    parts,
    uncertainty: told.map((doubt) => ({ words: doubtText(doubt, nameOf(doubt.lineId)), share: doubt.share })),
  };
}
