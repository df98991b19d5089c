import type { Finding } from '../core/dish/index.ts';
import { weighFindingText } from './weighing.ts';

const quoted = (finding: Finding, key: string): string => `“${String(finding.data[key] ?? '').trim()}”`;
const number = (finding: Finding, key: string): string => Number(finding.data[key] ?? 0).toLocaleString('en-GB');

/** What there is to look at, and how to mend it. A code without words is a bug, caught by findings.test.ts. */
export function findingText(finding: Finding): string {
  return weighFindingText(finding) ?? readingText(finding) ?? finding.code;
}

function readingText(finding: Finding): string | null {
  switch (finding.code) {
    case 'left-out': return `Left out, as it reads like neither an ingredient nor a step: ${quoted(finding, 'text')}. Put it on a line of its own under the ingredients if it is one.`;
    case 'line-too-long': return 'This line is too long to be one ingredient; only its beginning was read. Break it into lines.';
    case 'negative-amount': return 'An amount cannot be below nothing, so it was not used. Type the amount again.';
    case 'no-food': return 'An amount stands here without a food. Name the food.';
    case 'no-ingredients': return 'No ingredients were found. Put each on a line of its own, for example “200 g kale”.';
    case 'no-servings': return 'The recipe does not say for how many it is. Write “serves 4” or type the number of portions.';
    case 'other-alphabet': return 'This line is in an alphabet that Truepot does not read, so it gives no data. Write the food in Latin letters, or choose it from the list.';
    case 'us-measures': return `This reads like an American recipe (${String(finding.data['signs'] ?? '')}). A US cup is smaller than a metric one: choose US cups and spoons for this dish if they are not chosen yet.`;
    case 'several-recipes': return 'There seems to be more than one recipe here; all lines were added to one pot. Paste one recipe at a time.';
    case 'ingredients-from-method': return 'There is no list of ingredients, so they were taken from the method. Look whether all are there, each once.';
    case 'first-recipe-read': return 'The page holds more than one recipe; the first was read. Paste the other on its own to work it out.';
    case 'read-from-page-text': return 'The page holds no recipe data, so its visible words were read. Look whether every line is there.';
    case 'no-recipe-in-data': return 'The data holds no recipe. Paste the recipe’s text instead.';
    case 'shared-amount': return 'One amount stands for more than one food here; it was shared out equally. Give each its own amount if that is wrong.';
    case 'text-cut': return `The text is very long (${number(finding, 'length')} characters). Only the first ${number(finding, 'read')} were read.`;
    case 'too-many-lines': return `There are very many lines. Only the first ${number(finding, 'read')} were read.`;
    case 'very-large-amount': return 'This amount is very large. It is counted as written; is it right?';
    case 'zero-amount': return 'The amount is nothing, so nothing is counted. Type the amount or take the line out.';
    case 'bad-json-ld': return 'The recipe data inside the page cannot be read, so the page’s text was read instead. Look whether every line is there.';
    default: return null;
  }
}
