import type { CsvFault, KeptQuality, PriceProblem, PriceState, ScaledLine, ScaledTime, SeasonState, SwapReason } from '../core/dish/index.ts';
import { figure, percent } from './numbers.ts';

/** An amount of money in her currency: "£2.50", "2.50 kr". */
export function money(amount: number, currency: string): string {
  const value = Math.abs(amount) < 0.005 ? '0.00' : Math.abs(amount).toFixed(2);
  const sign = amount < -0.005 ? '−' : '';
  return /^[a-z]/i.test(currency) ? `${sign}${value} ${currency}` : `${sign}${currency}${value}`;
}

/** A change with its sign: "+12", "−3.4"; "no change" below what a table can tell. */
export function changeText(value: number, unit: string): string {
  if (Math.abs(value) < 0.005) return 'no change';
  return `${value > 0 ? '+' : '−'}${figure(Math.abs(value))} ${unit}`;
}

const qualities: Readonly<Record<KeptQuality, string>> = {
  weight: 'weight', volume: 'volume', 'cooked weight': 'cooked weight', sweetness: 'sweetness', sourness: 'sourness', salt: 'salt', heat: 'heat', thickening: 'thickening', flavour: 'strength of flavour', fat: 'fat', protein: 'protein', lift: 'lift',
};

/** One reason for the place of an alternative in the list. */
export function swapReasonText(reason: SwapReason): string {
  switch (reason.code) {
    case 'family': return `${reason.tight ? 'Plays the same part' : 'Can play the same part'}: ${reason.roles.join(', ')}.`;
    case 'near-kin': return 'Close kin: cooks put one for the other.';
    case 'other-form': return `The same food, ${reason.form}.`;
    case 'same-shelf': return 'Of the same shelf only; whether it plays the part is not known.';
    case 'make-up': return `Make-up alike to ${percent(reason.likeness)} (water, fat, protein, carbohydrate, sugars, fibre).`;
    case 'amount': return `${figure(reason.ratio)} g for each gram, for the same ${qualities[reason.keeps]}.`;
    case 'time': return reason.after > reason.before ? `Takes about ${reason.after - reason.before} minutes longer.` : `About ${reason.before - reason.after} minutes quicker.`;
  }
}

export function seasonText(state: SeasonState): string {
  switch (state) {
    case 'in': return 'in season';
    case 'out': return 'out of season';
    case 'all-year': return 'all year';
    case 'not-told': return '';
  }
}

export function priceStateText(state: PriceState, ageDays: number | null): string {
  switch (state) {
    case 'priced': return '';
    case 'stale': return `old price, ${ageDays ?? '?'} days`;
    case 'other-form': return 'priced as another form of it';
    case 'free': return 'costs nothing';
    case 'no-price': return 'no price noted';
    case 'no-weight': return 'its weight is not known';
  }
}

export function priceProblemText(problem: PriceProblem): string {
  const { food, pack } = problem.row;
  switch (problem.code) {
    case 'food-not-known': return `“${food}” is not a food that Truepot knows, so its price is kept and not used. Write it as in a recipe.`;
    case 'pack-not-known': return `How much is in “${pack}” of ${food} is not clear. Write “500 g”, “1 l” or a number of pieces.`;
    case 'bad-price': return `The price of ${food} must be a number above 0.`;
    case 'bad-date': return `The day of the price of ${food} must be written as 2026-11-25.`;
  }
}

export function csvFaultText(fault: CsvFault): string {
  switch (fault.code) {
    case 'no-heading':
    case 'missing-column': return `The first row must name the columns food, pack, price, shop, date; “${fault.text}” is missing.`;
    case 'bad-price': return `Row ${fault.row}: “${fault.text}” is not a price.`;
    case 'bad-date': return `Row ${fault.row}: “${fault.text}” is not a day; write it as 2026-11-25.`;
    case 'no-food': return `Row ${fault.row}: the food is missing.`;
    case 'no-pack': return `Row ${fault.row}: how much is in the pack of ${fault.text} is missing.`;
  }
}

const rules: Readonly<Record<string, string>> = {
  yeast: 'yeast is held back in a large dough', leavening: 'leavening is held back in a large batter', salt: 'salt is held back: season to taste at the end', heat: 'heat is held back: taste, then add',
  spice: 'strong spice is held back: taste, then add', 'strong-herb': 'strong herbs are held back', greasing: 'fat for the pan goes with its surface', 'cooking-water': 'water to cook in need not grow in step',
};

/** What to know of a scaled line; null where it simply grew in step. */
export function scaledLineText(line: ScaledLine): string | null {
  if (line.state === 'not-scaled') return 'Could not be written for the new size, so it stands as it was: change it by hand.';
  if (line.rule === null || line.state === 'kept') return null;
  return `× ${figure(line.factor)}: ${rules[line.rule.id] ?? line.rule.id} (common practice).`;
}

export function scaledTimeText(time: ScaledTime): string {
  const minutes = time.before === null ? '' : ` (${figure(time.before.value)} min in the recipe)`;
  const longer = time.after === null || time.before === null ? '' : `, perhaps ${figure(time.after.value)} min`;
  switch (time.code) {
    case 'same': return `Step ${time.step}: the same time.`;
    case 'same-after-boil': return `Step ${time.step}, ${time.verb}${minutes}: the same time once it boils again; a fuller pot takes longer to get there.`;
    case 'longer-to-boil': return `Step ${time.step}, ${time.verb}${minutes}: pieces cook as fast; what has to boil down takes another time${longer}.`;
    case 'thicker-longer': return `Step ${time.step}, ${time.verb}${minutes}: at the same depth the same time; in another depth test it${longer}.`;
    case 'batches': return `Step ${time.step}, ${time.verb}${minutes}: the same time, in batches, so that the pan is not crowded.`;
    case 'longer': return `Step ${time.step}, ${time.verb}${minutes}: the time goes with the amount${longer}.`;
  }
}
