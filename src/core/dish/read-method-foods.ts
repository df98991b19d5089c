import type { Span } from './recipe.ts';
import { readAmount } from './read-amount.ts';
import { qualifierAt } from './read-food-words.ts';
import { readTokens, type Row } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

const longestName = 5;
const longestStep = 5_000;
const parts = new Set(['yolk', 'yolks', 'white', 'whites', 'juice', 'zest', 'rind', 'peel']);
/** Taken without an amount: nearly every old recipe ends with them. */
const seasonings = new Set(['salt', 'pepper']);

/** How many words from `at` on name a food, the longest first; 0 for none. */
function foodAt(row: Row, at: number, isFood: (phrase: string) => boolean): number {
  for (let n = Math.min(longestName, row.words.length - at); n > 0; n--) {
    if (row.tokens.slice(at, at + n).some(({ kind }) => kind !== 'word')) continue;
    if (isFood(row.words.slice(at, at + n).join(' '))) return n;
  }
  return 0;
}

/** As foodAt, with state and kind words in front passed over ("split yellow peas"). */
function describedFoodAt(row: Row, at: number, vocabulary: ReaderVocabulary, isFood: (phrase: string) => boolean): number {
  let from = at;
  for (let n = 0; n < 3; n++) {
    const length = foodAt(row, from, isFood);
    if (length > 0) return from - at + length;
    const state = qualifierAt(row, from, vocabulary) || (vocabulary.attributes.has(row.words[from] ?? '') || vocabulary.making.has(row.words[from] ?? '') ? 1 : 0);
    if (state === 0) return 0;
    from += state;
  }
  return 0;
}

/**
 * The ingredients of a recipe that lists none, as old cookery books write them: amounts with a food
 * behind ("take one pound of split peas") and salt and pepper, in the order told, each stretch once.
 * Empty without a food list.
 */
export function foodsInMethod(text: string, steps: readonly Span[], vocabulary: ReaderVocabulary): Span[] {
  const { isFood } = vocabulary;
  if (isFood === null) return [];
  const found: Span[] = [];
  const seen = new Set<string>();
  const put = (row: Row, from: number, to: number): void => {
    const words = row.words.slice(from, to).join(' ');
    if (seen.has(words)) return;
    seen.add(words);
    found.push({ start: row.tokens[from]!.start, end: row.tokens[to - 1]!.end });
  };
  for (const step of steps) {
    const row = readTokens(text, { start: step.start, end: Math.min(step.end, step.start + longestStep) });
    if (row.words[0] === 'to' && row.words[1] === 'make' && row.words.length < 10) continue; // "To make a pease pudding."
    for (let at = 0; at < row.words.length; at++) {
      const read = readAmount(row, at, vocabulary);
      const length = read === null ? 0 : describedFoodAt(row, read.next, vocabulary, isFood);
      if (read !== null && length > 0) {
        const part = row.words[at - 1] === 'of' && parts.has(row.words[at - 2] ?? '');
        put(row, part ? at - 2 : at, read.next + length);
        at = read.next + length - 1;
      } else if (seasonings.has(row.words[at]!) && !['salted', 'with', 'sweet', 'red', 'green'].includes(row.words[at - 1] ?? '')) put(row, at, at + 1);
    }
  }
  return found;
}
