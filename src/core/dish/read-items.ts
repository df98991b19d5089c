import { countIsFood, readAmount } from './read-amount.ts';
import { onlyQualifiers, readRemarks } from './read-food-words.ts';
import { partOfRow, type Row } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

const separators = [',', ';', 'and', '&', '+', '.', 'plus', 'with', 'topped', 'then', '•', '|', 'also'];
const stops = [',', ';', '(', ')', '.', '|'];
/** After a measure these say how something is cut, they are no food: "1 cm thick". */
const cutWords = ['thick', 'long', 'wide', 'thickness', 'lengths', 'length', 'deep', 'apart', 'each', 'per', 'in', 'at', 'total', 'across', 'diameter', 'x', 'to', 'for', 'minutes', 'minute', 'mins', 'min', 'hours', 'hour', 'or', 'if', 'more', 'extra', 'when', 'as', 'so', 'is', 'oven', 'until', 'times', 'time'];
const cutShapes = ['cubes', 'dice', 'slices', 'chunks', 'pieces', 'strips', 'rounds', 'batons', 'discs', 'lengths', 'matchsticks', 'wedges', 'squares', 'ribbons'];

/** Skips "I used", "then", "you need" in front of an amount. */
export function skipLeadIn(row: Row, at: number, vocabulary: ReaderVocabulary): number {
  let next = at;
  for (let n = 0; n < 6; n++) {
    const length = vocabulary.leadIns.longestAt(row.words, next);
    if (length === 0) break;
    next += length;
    if (row.words[next] === ',' || row.words[next] === ':') next++;
  }
  return next;
}

/** "juice of", "finely grated zest and juice of": the part of a fruit that is used, and the token of its amount. */
export function readPartOf(row: Row, at: number): { remark: 'juice-only' | 'zest-only' | 'juice-and-zest'; next: number } | null {
  const filler = ['the', 'and', '&', 'grated', 'finely', 'strained', 'squeezed', 'plus', 'fresh', 'freshly', 'pared', 'thinly', 'some'];
  let juice = false;
  let zest = false;
  let next = at;
  for (; next < at + 8; next++) {
    const word = row.words[next];
    if (word === undefined) return null;
    if (word === 'juice') juice = true;
    else if (word === 'zest' || word === 'rind' || word === 'peel') zest = true;
    else if (!filler.includes(word)) break;
  }
  if (!juice && !zest) return null;
  const word = row.words[next];
  const joined = word === 'of' || word === 'from';
  if (!joined && row.tokens[next]?.kind !== 'number' && word !== 'half' && word !== 'a') return null;
  return { remark: juice && zest ? 'juice-and-zest' : juice ? 'juice-only' : 'zest-only', next: joined ? next + 1 : next };
}

/** Whether an ingredient with its own amount begins here. */
function beginsItem(row: Row, at: number, vocabulary: ReaderVocabulary, counted = false): boolean {
  if (readPartOf(row, at)) return true;
  const read = readAmount(row, at, vocabulary);
  if (!read) return false;
  const { amount } = read;
  if (counted && countIsFood(row, read, vocabulary)) return true; // "2 bay leaves, 3 cloves"
  let end = read.next;
  while (end < row.words.length && !stops.includes(row.words[end]!)) end++;
  if (end === read.next || row.tokens[read.next]?.kind !== 'word') return false;
  if (cutWords.includes(row.words[read.next]!)) return false;
  const unit = amount.unit === null ? null : vocabulary.units.get(amount.unit);
  if (unit?.kind === 'length' && !unit.vague && row.words.slice(read.next, end).some((word) => cutShapes.includes(word))) return false;
  return !onlyQualifiers(partOfRow(row, read.next, end), vocabulary);
}

/** In a dictated run of words: an amount with a unit and "of" begins another ingredient although nothing stands between. */
function beginsUnsaid(row: Row, at: number, vocabulary: ReaderVocabulary): boolean {
  const read = readAmount(row, at, vocabulary);
  return read !== null && read.amount.unit !== null && row.words[read.next - 1] === 'of' && !['in', 'into', 'to', 'with', 'for', 'by', 'about', 'of', 'from', 'or'].includes(row.words[at - 1]!) && beginsItem(row, at, vocabulary);
}

/** Behind a semicolon any food words begin another ingredient. */
function beginsWords(row: Row, at: number, vocabulary: ReaderVocabulary): boolean {
  let end = at;
  while (end < row.words.length && !stops.includes(row.words[end]!)) end++;
  const rest = partOfRow(row, at, end);
  return rest.tokens[0]?.kind === 'word' && !onlyQualifiers(rest, vocabulary) && readRemarks(rest, vocabulary).at !== 0 && !['cut', 'plus', 'or', 'see', 'about', 'preferably', 'ideally', 'if'].includes(rest.words[0]!);
}

/** Cuts "1 carrot, 1 stick celery and 1 onion" into its ingredients: pairs of token places. */
export function splitItems(row: Row, vocabulary: ReaderVocabulary): { from: number; to: number }[] {
  const items: { from: number; to: number }[] = [];
  let from = skipLeadIn(row, 0, vocabulary);
  if (from > 0 && !beginsItem(row, from, vocabulary)) from = row.words[0]!.startsWith('serve') && row.words[1] === 'with' ? 2 : 0;
  // "For breakfast I have half a cup of oats": a story leads up to the first amount.
  for (let at = 1; from === 0 && at < (row.words.length > 30 ? 30 : 10) && !readAmount(row, 0, vocabulary); at++) {
    const told = vocabulary.leadIns.longestAt(row.words, at);
    if ((told > 1 || (told === 1 && ['its', "it's", 'take', 'need', 'use'].includes(row.words[at]!))) && beginsItem(row, at + told, vocabulary)) from = at + told;
    if (at >= row.words.length) break;
  }
  let depth = 0;
  let afterAmount = readAmount(row, from, vocabulary)?.next ?? from;
  for (let at = from; at < row.words.length; at++) {
    const word = row.words[at]!;
    if (word === '(' || word === '[') depth++;
    else if (word === ')' || word === ']') depth = Math.max(0, depth - 1);
    if (depth === 0 && at > afterAmount && afterAmount > from && row.words.length > 12 && !separators.includes(word) && !stops.includes(word) && row.tokens[at - 1]!.kind === 'word' && !separators.includes(row.words[at - 1]!) && beginsUnsaid(row, at, vocabulary)) {
      items.push({ from, to: at }); // "half a cup of oats one cup of milk"
      from = at;
      afterAmount = readAmount(row, from, vocabulary)?.next ?? from;
      continue;
    }
    if (depth > 0 || at === from || at < afterAmount || !separators.includes(word)) continue;
    if (readPartOf(row, from) && at < from + 4 && word !== ',') continue;
    const start = skipLeadIn(row, at + 1, vocabulary);
    if (!beginsItem(row, start, vocabulary, afterAmount > from) && !(word === ';' && beginsWords(row, start, vocabulary))) continue;
    if (word === 'and' && readPartOf(row, start) && row.words[at - 1] === 'zest') continue;
    items.push({ from, to: at });
    from = start;
    at = start;
    afterAmount = readAmount(row, from, vocabulary)?.next ?? from;
  }
  items.push({ from, to: row.words.length });
  return items;
}
