import type { Contribution, Eaten, Kept, NutrientTotal, Servings, Treatment, Weighing } from '../core/dish/index.ts';
import type { Food, FoodMatch, Nutrient, ValueKind } from '../core/foods/index.ts';
import type { Interval } from '../core/quantity/index.ts';
import { keptText, treatmentText } from './cooked.ts';
import { matchNoteText } from './foods.ts';
import { amount, figure, gramsText, percent } from './numbers.ts';
import { eatenText, weighStepText } from './weighing.ts';

export interface ExplanationStep {
  readonly words: string;
  readonly source: string | null;
  readonly locator: string | null;
}

const kinds: Readonly<Record<ValueKind | 'no-food' | 'no-weight', string>> = {
  analysed: 'analysed by the table’s makers',
  calculated: 'calculated by the table’s makers or by us from their figures',
  tabulated: 'as the table prints it, which does not say whether it was analysed or calculated',
  'assumed-zero': 'taken as none: a food of this kind cannot hold it',
  label: 'from the pack’s label',
  curated: 'added from another source',
  'not-measured': 'The table has no value for it: not known, not nothing.',
  'not-in-table': 'This table does not have the nutrient at all: not known, not nothing.',
  withheld: 'The table’s printed figure cannot be right and is not used: not known, not nothing.',
  'no-food': 'No food of the tables stands for this line: not known, not nothing.',
  'no-weight': 'The weight of this line is not known, so it could not be counted.',
};

interface LineFacts {
  readonly match: FoodMatch;
  readonly food: Food | null;
  readonly weighing: Weighing;
  readonly grams: Interval | null;
  readonly eaten: Eaten;
  readonly correction: { readonly grams?: number | undefined; readonly eaten?: number | undefined; readonly food?: string | undefined } | null;
}

/** The steps from a line's words to what it gives to one portion, each with its source. */
export function contributionSteps(at: { readonly worked: LineFacts; readonly name: string; readonly contribution: Contribution; readonly nutrient: Nutrient; readonly portions: number; readonly treatment: Treatment | null; readonly kept: Kept | null }): ExplanationStep[] {
  const { worked, name, contribution: c, nutrient, portions, treatment, kept } = at;
  const steps: ExplanationStep[] = [];
  const say = (words: string, source: string | null = null, locator: string | null = null): void => {
    steps.push({ words, source, locator });
  };
  if (worked.food !== null) {
    const chosen = worked.correction?.food !== undefined;
    say(`${chosen ? 'You chose' : 'Read as'} ${name}: the tables’ “${worked.food.name}”.`, worked.food.table === 'own' ? null : worked.food.table, worked.food.table === 'own' ? null : `food ${worked.food.code.split(':')[1] ?? ''}`);
    if (worked.match.note !== null && !chosen) say(matchNoteText(worked.match.note));
  }
  if (worked.correction?.grams !== undefined) say(`You typed ${gramsText(worked.correction.grams)}.`);
  else for (const path of worked.weighing.paths) for (const step of path) say(weighStepText(step), step.source, step.locator);
  if (worked.grams !== null) say(`So ${gramsText(worked.grams.value)} went into the pot${worked.grams.high > worked.grams.low ? ` (${gramsText(worked.grams.low)} to ${gramsText(worked.grams.high)})` : ''}.`);
  const eaten = worked.correction?.eaten === undefined ? eatenText(worked.eaten) : `You said that ${percent(worked.correction.eaten)} is eaten.`;
  if (eaten !== null) say(eaten, worked.correction?.eaten === undefined ? worked.eaten.source : null, worked.eaten.locator);
  if (c.amount === null || c.per100g === null) {
    say(kinds[c.kind], c.valueSource);
    return steps;
  }
  say(`100 g hold ${amount(c.per100g, nutrient.unit)}, ${kinds[c.kind]}${c.deviation === null ? '' : ` (standard deviation ${figure(c.deviation)})`}.`, c.valueSource);
  if (treatment !== null && nutrient.id !== 'water') say(treatmentText(treatment));
  const left = kept === null ? null : keptText(kept);
  if (left !== null) say(left, kept?.used.kind === 'none' ? null : (kept?.used.source ?? null), kept?.used.locator ?? null);
  const share = c.kept.share.value === 1 ? '' : ` × ${percent(c.kept.share.value)}`;
  say(`${gramsText(c.gramsEaten)} × ${figure(c.per100g)} ${nutrient.unit} in 100 g${share} ÷ ${figure(portions)} ${portions === 1 ? 'portion' : 'portions'} = ${amount(c.amount / portions, nutrient.unit)}.`);
  return steps;
}

/** The title and the sum of one number in words. */
export function explanationSummary(at: {
  readonly dish: { readonly servings: Servings; readonly totals: { readonly linesWithoutWeight: readonly string[] } };
  readonly total: NutrientTotal;
  readonly nutrient: Nutrient;
  readonly interval: Interval;
}): { title: string; summary: string[] } {
  const { dish, total, nutrient, interval } = at;
  const title = `${nutrient.name} in one portion`;
  if (total.state === 'unknown') return { title, summary: ['No line of this dish has a value for it, so the sum is not known. That is not the same as nothing.'] };
  const portions = dish.servings.count;
  const known = total.contributions.filter((c) => c.amount !== null).length;
  const unknown = total.contributions.length - known;
  const summary = [`The pot holds ${amount(total.known, nutrient.unit)} from ${known} ${known === 1 ? 'line' : 'lines'}; divided by ${figure(portions)} that is ${amount(total.known / portions, nutrient.unit)} a portion.`];
  if (nutrient.id === 'water') summary.push('Water that boiled away or was taken up is counted in the sum, not in the lines.');
  if (interval.high > interval.low) summary.push(`Of ten such pots, eight would lie between ${amount(interval.low, nutrient.unit)} and ${amount(interval.high, nutrient.unit)}.`);
  if (unknown > 0) summary.push(`${unknown} ${unknown === 1 ? 'line has' : 'lines have'} no value (${percent(total.unknownShare)} of the weight${dish.totals.linesWithoutWeight.length > 0 ? ', and lines without a weight' : ''}): the true amount is at least this.`);
  return { title, summary };
}
