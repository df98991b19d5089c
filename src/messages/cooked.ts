import type { CookedPot, Doubt, FactorWhy, Kept, Treatment, TreatmentWhy } from '../core/dish/index.ts';
import { cookingMethodText } from './cooking-method.ts';
import { gramsText, percent } from './numbers.ts';

const becauseOf: Partial<Record<TreatmentWhy, string>> = {
  'no-step': 'no step cooks it',
  'already-cooked': 'the table’s food is already cooked, so it is only warmed',
  'already-cooked-cold': 'the table’s food is already cooked',
  'liquid-taken-as-poured-away': 'no liquid is listed that could be eaten, so its water is taken as poured away',
  'absorbs-its-water': 'it takes its cooking water up',
  overridden: 'as you said',
};

/** How a line is cooked, as a sentence. */
export function treatmentText(treatment: Treatment): string {
  const minutes = treatment.minutes === null ? '' : ` for ${minutesText(treatment.minutes.value)}`;
  const why = treatment.why.map((w) => becauseOf[w]).filter((w) => w !== undefined);
  const because = why.length === 0 ? '' : ` (${why.join('; ')})`;
  return `Counted as ${cookingMethodText(treatment.method)}${minutes}${because}.`;
}

export function minutesText(minutes: number): string {
  if (minutes < 90) return `${Math.round(minutes)} ${Math.round(minutes) === 1 ? 'minute' : 'minutes'}`;
  return `${Math.round(minutes / 6) / 10} hours`;
}

const whyFactor: Readonly<Record<FactorWhy, string>> = {
  'better-on-held-out-families': 'this kind of factor came nearer to analysed values of foods that it had not seen',
  'only-source': 'the other source has no figure',
  'liquid-is-eaten': 'the liquid is eaten, so the published row with its liquid is used',
  'nearest-way-without-leaching': 'the liquid is eaten and no figure is published for that; the dry way of the same family stands in',
  'stays-in-the-pot': 'a mineral cannot leave a pot whose liquid is eaten',
  'moves-with-the-fat': 'it moves with the fat',
  'by-minutes': 'by the minutes over heat',
  'not-cooked': 'it is not cooked',
  'warmed-only': 'it is only warmed',
  'no-factor-known': 'no factor is known, so all of it is counted',
};

/** What is left after cooking and why that factor was taken; null where nothing happens. */
export function keptText(kept: Kept): string | null {
  if (kept.used.kind === 'none' && kept.share.value === 1) return kept.why === 'no-factor-known' ? 'No cooking factor is known for it; all of it is counted.' : null;
  const kind = kept.used.kind === 'fitted' ? 'fitted to raw and cooked pairs of the tables' : kept.used.kind === 'published' ? 'published' : 'by rule';
  const other = kept.other === null ? '' : ` The ${kept.other.kind === 'fitted' ? 'fitted' : 'published'} factor would be ${percent(kept.other.share)}.`;
  const time = Math.abs(kept.time - 1) < 0.05 ? '' : ' The minutes move it from the table’s figure.';
  return `${percent(kept.share.value)} of it is left after cooking (${percent(kept.share.low)} to ${percent(kept.share.high)}), ${kind}: ${whyFactor[kept.why]}.${other}${time}`;
}

/** How the cooked weight came about, a sentence a step. */
export function potWeightPath(pot: CookedPot, rawEatenG: number): string[] {
  const steps = [`${gramsText(rawEatenG)} that is eaten went in.`];
  const own = pot.lines.filter((line) => line.gramsOut !== null && Math.abs(line.gramsOut.value - line.gramsIn) > 0.5);
  const change = own.reduce((sum, line) => sum + (line.gramsOut?.value ?? 0) - line.gramsIn, 0);
  if (Math.abs(change) >= 1) steps.push(`${own.length} ${own.length === 1 ? 'line' : 'lines'} ${change < 0 ? 'lost' : 'took up'} ${gramsText(Math.abs(change))} by ${own.length === 1 ? 'its' : 'their'} own weight yield.`);
  if (pot.evaporatedGrams.value >= 1) steps.push(`About ${gramsText(pot.evaporatedGrams.value)} of water boiled away (${gramsText(pot.evaporatedGrams.low)} to ${gramsText(pot.evaporatedGrams.high)}), by minutes, lid and a middling pan.`);
  if (pot.boiledNearlyDry) steps.push('More water would have left than the pot can lose; look at the minutes and the lid.');
  if (pot.from === 'measured') steps.push(`You weighed the cooked pot: ${gramsText(pot.cookedGrams.value)}. The estimate was ${gramsText(pot.estimatedGrams.value)}.`);
  else steps.push(`So the cooked pot weighs about ${gramsText(pot.cookedGrams.value)} (${gramsText(pot.cookedGrams.low)} to ${gramsText(pot.cookedGrams.high)}). Weigh it and type the weight to be sure.`);
  return steps;
}

/** One cause of a range, and what being sure of it would do. */
export function doubtText(doubt: Doubt, name: string): string {
  const left = percent(doubt.widthIfKnown);
  switch (doubt.kind) {
    case 'weight': return `How much ${name} there is: weigh it and the range shrinks to ${left} of its width.`;
    case 'composition': return `What this ${name} holds: foods of one name differ.`;
    case 'factor': return `What cooking leaves in the ${name}.`;
    case 'portion': return 'How many portions the pot makes.';
  }
}
