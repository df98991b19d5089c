import type { Eaten, EatenCode, Finding, WeighStep } from '../core/dish/index.ts';
import { figure, gramsText, percent } from './numbers.ts';

const word = (data: Readonly<Record<string, string | number>>, key: string): string => String(data[key] ?? '');
const number = (data: Readonly<Record<string, string | number>>, key: string): number => Number(data[key] ?? 0);

const noRefuse: Readonly<Record<string, string>> = {
  'left-on': 'Nothing is peeled off',
  'bought-without': 'Bought ready, nothing to take off',
  'already-done': 'The weight is that of the prepared food',
};

/** One step from the words of a line to grams, as a sentence. */
export function weighStepText(step: WeighStep): string {
  const { data, factor } = step;
  switch (step.kind) {
    case 'amount': return `“${word(data, 'text')}”: ${figure(factor)} of it.`;
    case 'stated-weight': return `${gramsText(factor)}, as the line says.`;
    case 'stated-each': return `Each is ${gramsText(factor)}, as the line says.`;
    case 'stated-total': return `${gramsText(factor)} in all, as the line says.`;
    case 'unit-size': return `One ${word(data, 'unit')} is ${figure(factor)} ${step.unit}.`;
    case 'fill': return `${word(data, 'fill') === 'heaped' ? 'Heaped or generous' : 'Scant'}: ${figure(factor)} times as much.`;
    case 'size': return `A ${word(data, 'size')} one: ${figure(factor)} times as much.`;
    case 'kitchen-density': return `A millilitre${word(data, 'state') === '' ? '' : `, ${word(data, 'state')},`} weighs ${figure(factor)} g.`;
    case 'table-density': return `The table weighs “${word(data, 'text')}” at ${gramsText(number(data, 'grams'))}: ${figure(factor)} g a millilitre.`;
    case 'usual-density': return `Foods of this kind weigh about ${figure(factor)} g a millilitre.`;
    case 'kitchen-piece': return `One ${[word(data, 'size'), word(data, 'unit')].filter((w) => w !== '').join(' ')} of ${word(data, 'name')} weighs ${gramsText(factor)}.`;
    case 'table-piece': return `The table weighs “${word(data, 'text')}” at ${gramsText(number(data, 'grams'))}.`;
    case 'usual-piece': return step.unit === 'g' ? `One ${word(data, 'unit')} of such a food weighs about ${gramsText(factor)}.` : `A ${word(data, 'unit')} is ${figure(factor)} of a whole one.`;
    case 'length': return `A centimetre of it weighs about ${gramsText(factor)}.`;
    case 'fruit-juice': return `One ${word(data, 'food')} gives about ${figure(factor)} ml of juice.`;
    case 'fruit-zest': return `One ${word(data, 'food')} gives about ${gramsText(factor)} of zest.`;
    case 'drained': return `Drained, ${percent(factor)} of the tin is left.`;
    case 'refuse': return `${percent(1 - factor)} is thrown away${word(data, 'what') === '' ? '' : ` (${word(data, 'what').toLowerCase()})`}.`;
    case 'no-refuse': return `${noRefuse[word(data, 'reason')] ?? 'Nothing is taken off'}.`;
    case 'usual-amount': return `No amount stands there; ${gramsText(factor)} a serving is usual.`;
    case 'servings': return `For ${figure(factor)} servings.`;
  }
}

/** A finding of weighing, as what and how to mend it; null when the code belongs to another area. */
export function weighFindingText(finding: Finding): string | null {
  const { data } = finding;
  switch (finding.code) {
    case 'no-amount': return `How much ${word(data, 'name')}? Without an amount it cannot be counted; it is not taken as nothing.`;
    case 'no-weight': return `What does “${word(data, 'text')}” of ${word(data, 'name')} weigh? Truepot has no weight for it; type the grams.`;
    case 'usual-amount': return `No amount for ${word(data, 'name')}: ${gramsText(number(data, 'grams'))} for ${word(data, 'servings')} servings is assumed. Type yours if you know it.`;
    case 'absurd-amount': return `${gramsText(number(data, 'grams'))} of ${word(data, 'name')}${number(data, 'servings') > 0 ? ` for ${word(data, 'servings')}` : ''} looks like a lot. It is counted as written; is the amount right?`;
    default: return null;
  }
}

const eatenWords: Readonly<Record<EatenCode, string>> = {
  all: 'All of it is eaten.',
  'taken-out': 'Taken out before serving, so not counted.',
  'deep-frying-oil': 'Most of the frying oil stays in the pan.',
  'shallow-frying-oil': 'Part of the frying oil stays in the pan.',
  greasing: 'Part of what greases the tin stays there.',
  dusting: 'Part of what dusts the board stays there.',
  coating: 'Part of the coating stays in the dish.',
  'marinade-poured-away': 'The marinade is poured away; what clings to the food is counted.',
  'cooking-water': 'This water is poured away.',
  'cooking-water-salt': 'Most of this salt goes with the water.',
  'pickling-liquid': 'Most of the pickling liquid is left in the jar.',
  bones: 'The bones are left.',
  'left-out': 'Left out, as you chose for optional things.',
  'optional-unmeasured': 'Optional and without an amount, so not counted. Give an amount if you use it.',
  'counted-before': 'Part of an earlier line, so not counted again.',
};

/** What share of a line is eaten and why; null when all of it is and nothing needs saying. */
export function eatenText(eaten: Eaten): string | null {
  if (eaten.code !== 'all') return eaten.share.value > 0 ? `${eatenWords[eaten.code]} ${percent(eaten.share.value)} is counted.` : eatenWords[eaten.code];
  switch (eaten.note) {
    case 'optional-counted': return 'Optional, and counted.';
    case 'to-serve-counted': return 'To serve, and counted.';
    case 'counted-once': return 'Used in more than one place, counted once.';
    case null: return null;
  }
}
