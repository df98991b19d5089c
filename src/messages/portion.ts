import type { Servings } from '../core/dish/index.ts';
import type { NutrientUnit } from '../core/foods/index.ts';
import { amount, dayShare, figure, listed, percent } from './numbers.ts';

/** "Serves 4, as the recipe says." A proposal is a question. */
export function servingsText(servings: Servings): string {
  const { count, range, basis, of } = servings;
  const counted = of === null ? `${figure(count)} ${count === 1 ? 'portion' : 'portions'}` : `${figure(count)} ${of}`;
  switch (basis) {
    case 'chosen': return `Divided into ${counted}, as you chose.`;
    case 'stated': return range.high > range.low ? `The recipe says ${figure(range.low)} to ${figure(range.high)}; divided into ${counted}.` : of === null ? `Serves ${figure(count)}, as the recipe says.` : `Makes ${counted}, as the recipe says.`;
    case 'proposed': return `The recipe does not say for how many. From its energy and weight Truepot proposes ${counted}: is that right? Type your own number if not.`;
  }
}

/** Below this share of the weight a gap is told and does not make the sum an "at least": a pinch of pepper without a value. */
export const barelyUnknown = 0.01;

/** A nutrient of one portion in words, with what is missing. */
export function nutrientText(n: { readonly state: 'complete' | 'partial' | 'unknown' | 'not-in-tables'; readonly portion: number | null; readonly unit: NutrientUnit; readonly unknownShare: number; readonly linesWithoutWeight: number }): string {
  if (n.state === 'not-in-tables') return 'not in the tables';
  if (n.state === 'unknown' || n.portion === null) return 'not known';
  if (n.state === 'complete') return amount(n.portion, n.unit);
  const gaps = [
    ...(n.unknownShare > 0 ? [`${percent(n.unknownShare)} of the weight has no value`] : []),
    ...(n.linesWithoutWeight > 0 ? [`${n.linesWithoutWeight} ${n.linesWithoutWeight === 1 ? 'line has' : 'lines have'} no weight`] : []),
  ];
  const barely = n.unknownShare < barelyUnknown && n.linesWithoutWeight === 0;
  return `${barely ? '' : 'at least '}${amount(n.portion, n.unit)}; ${gaps.join(', ')}`;
}

export interface Told {
  readonly name: string;
  readonly referenceShare: number;
  readonly atLeast: boolean;
  readonly givers: readonly string[];
}

const startUpper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "A third of a day's magnesium, mostly from the white beans and the chard." */
export function readingSentence(told: Told): string {
  const day = dayShare(told.referenceShare);
  const share = `${told.atLeast && !day.startsWith('more') ? 'at least ' : ''}${day} ${told.name}`;
  const from = told.givers.length === 0 ? '' : `, mostly from the ${listed(told.givers).replace(/, /g, ', the ').replace(/ and /, ' and the ')}`;
  return `${startUpper(share)}${from}.`;
}

/** How the energy of a portion is told: declared, and the table's own where they differ by more than 10 %. */
export function energyText(energy: { readonly state: 'complete' | 'partial' | 'unknown'; readonly declaredKj: number; readonly declaredKcal: number; readonly tableKcal: number; readonly differ: boolean }): string {
  if (energy.state === 'unknown') return 'The energy of a portion is not known: no line of the dish has the values for it.';
  const declared = `${energy.state === 'partial' ? 'at least ' : ''}${figure(Math.round(energy.declaredKcal))} kcal (${figure(Math.round(energy.declaredKj))} kJ)`;
  return energy.differ ? `${declared} by the factors of food law; the tables’ own energy values come to ${figure(Math.round(energy.tableKcal))} kcal. They differ by more than 10 %, mostly because the tables count some foods with factors of their own or lack a part.` : `${declared} a portion.`;
}
