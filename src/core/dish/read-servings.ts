import type { Span, StatedServings } from './recipe.ts';
import { readNumber } from './read-number.ts';
import { readTokens, wordsOf, type Row } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

const counted = ['makes', 'make', 'yield', 'yields', 'gives', 'quantity'];
const atEnd = new Set(['portions', 'portion', 'servings', 'serving']);
const pieces = new Set(['slices', 'slice', 'pieces', 'squares', 'bars', 'wedges', 'portions', 'servings']);
const stops = [',', ';', '(', ')', '.', '|', '•', '·', '-', '–', '—', '/', 'or', 'and', 'so', 'you'];

function after(row: Row, at: number, vocabulary: ReaderVocabulary, word: string): StatedServings | null {
  let next = at;
  // "Feeds a family of 5".
  if (row.words.slice(at, at + 3).join(' ') === 'a family of') next = at + 3;
  while ([':', '-', '–', '=', 'about', 'approximately', 'approx', 'around', 'up', 'to', 'roughly', 'enough', 'for', 'size', '~'].includes(row.words[next] ?? '')) {
    if (row.words[next] === 'size') return null;
    next++;
  }
  const number = readNumber(row, next, vocabulary);
  if (!number || number.quantity.value <= 0 || (number.article && !word.startsWith('yield'))) return null;
  let end = number.next;
  while (end < row.words.length && !stops.includes(row.words[end]!)) end++;
  const what = vocabulary.words.timings.includes(row.words[number.next] ?? '') ? [] : row.words.slice(number.next, end);
  const people = what.length === 0 || vocabulary.words.servings.after.includes(what[0]!) || ['generously', 'as', 'hungry', 'with', 'very', 'each'].includes(what[0]!);
  if (word === 'for' && what.length > 0 && !vocabulary.words.servings.after.includes(what.find((w) => w !== 'hungry') ?? '')) return null;
  if (word === 'for' && what.length === 0 && number.next < row.words.length && row.words[number.next] !== ')') return null;
  if (!people && !counted.some((w) => word.startsWith(w)) && word !== 'recipe') return null;
  const of = people || what.length === 0 ? null : wordsOf(row, number.next, end);
  return cutInto(row, end, vocabulary, number.quantity.value === 1 && of !== null) ?? { count: number.quantity, text: wordsOf(row, at - 1, end), of };
}

/** "Makes one cake (10 slices)", "1 loaf, about 12 slices": what one whole is cut into; null when it says no such thing. */
function cutInto(row: Row, from: number, vocabulary: ReaderVocabulary, oneWhole: boolean): StatedServings | null {
  if (!oneWhole) return null;
  for (let at = from; at < row.words.length; at++) {
    const number = readNumber(row, at, vocabulary);
    const piece = number ? (row.words[number.next] ?? '') : '';
    if (number && !number.article && pieces.has(piece)) return { count: number.quantity, text: wordsOf(row, at, number.next + 1), of: wordsOf(row, number.next, number.next + 1) };
  }
  return null;
}

/** "Serves 4", "for 2–3 people", "makes 12 pancakes", "4 portions" somewhere in a short line; null when it says no such thing. */
export function readServings(text: string, span: Span, vocabulary: ReaderVocabulary): { servings: StatedServings; whole: boolean; start: number } | null {
  const row = readTokens(text, { start: span.start, end: Math.min(span.end, span.start + 160) });
  const { before, after: behind } = vocabulary.words.servings;
  for (let at = 0; at < row.words.length; at++) {
    const word = row.words[at]!;
    const opening = at === 0 || row.tokens[at - 1]!.kind === 'mark';
    if (before.includes(word) && (opening || row.words[at + 1] === ':' || word === 'serves' || word === 'feeds' || word === 'for' || word === 'yield' || word === 'makes')) {
      const said = after(row, at + 1, vocabulary, word);
      if (said) return { servings: said, whole: at === 0, start: row.tokens[at]!.start };
    }
    const number = readNumber(row, at, vocabulary);
    // In the middle of a line only at its end: "Mushroom stroganoff 4 portions".
    if (!opening && !(number && number.next === row.words.length - 1 && atEnd.has(row.words[number.next] ?? ''))) continue;
    if (!number || number.article || !behind.includes(row.words[number.next] ?? '')) continue;
    const end = row.words[number.next + 1];
    const people = ['people', 'persons', 'log', 'logon', 'adults'].includes(row.words[number.next]!);
    if (!people && end !== undefined && row.tokens[number.next + 1]!.kind !== 'mark') continue;
    return { servings: { count: number.quantity, text: wordsOf(row, at, number.next + 1), of: null }, whole: at === 0, start: row.tokens[at]!.start };
  }
  return null;
}
