import type { IngredientLine } from './recipe.ts';
import { readTokens } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

/** Signs that a recipe was written with United States cups and spoons. */
export interface UsSigns {
  readonly cups: number;
  readonly fahrenheit: boolean;
  /** Words that only Americans use for it, as they stand in the text. */
  readonly words: readonly string[];
}

const fahrenheitSign = /\d{3}\s{0,2}(?:°|º|degrees?)?\s{0,2}F(?:ahrenheit)?\b/;
const celsiusSign = /\d{2,3}\s{0,2}(?:°|º)?\s{0,2}C\b|gas mark|℃/i;
const metric = new Set(['g', 'kg', 'ml', 'l', 'dl', 'cl']);
const mostCharacters = 20_000;

/**
 * Whether a recipe's own words show United States measures: cups or sticks, no gram or litre as the
 * main amount of a line, no Celsius, and Fahrenheit or two American words beside them. Null when they do not.
 */
export function usSigns(text: string, lines: readonly IngredientLine[], vocabulary: ReaderVocabulary): UsSigns | null {
  const units = lines.flatMap((line) => [line.amount, ...line.more].map((amount) => amount?.unit ?? null));
  const cups = units.filter((unit) => unit === 'cup' || unit === 'stick').length;
  if (cups === 0 || units.some((unit) => unit !== null && metric.has(unit))) return null;
  const head = text.slice(0, mostCharacters);
  const fahrenheit = fahrenheitSign.test(head);
  if (celsiusSign.test(head)) return null;
  const row = readTokens(head, { start: 0, end: head.length });
  const words = new Set<string>();
  for (let at = 0; at < row.words.length; at++) {
    const length = vocabulary.american.longestAt(row.words, at);
    if (length > 0) words.add(row.words.slice(at, at + length).join(' '));
  }
  return fahrenheit || words.size >= 2 ? { cups, fahrenheit, words: [...words].slice(0, 5) } : null;
}
