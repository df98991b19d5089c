import type { LineRemark, NamedFood } from './recipe.ts';
import { wordsOf, type Row } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

/** How many tokens from `at` on are one qualifier with its adverbs ("very finely chopped"); 0 for none. */
export function qualifierAt(row: Row, at: number, vocabulary: ReaderVocabulary): number {
  let next = at;
  for (let n = 0; n < 3; n++) {
    const length = vocabulary.qualifiers.longestAt(row.words, next);
    if (length > 0) return next + length - at;
    if (next > at && row.words[next] === 'ground') return next + 1 - at; // "freshly ground"
    if (!vocabulary.adverbs.has(row.words[next] ?? '')) return 0;
    next++;
    if (row.words[next] === '-') next++;
  }
  return 0;
}

const joiners = [',', 'and', '&', 'or', '/', 'but', 'then'];

/** "dried apricots", "whole milk": a state word that, right before the food, makes another food of it. */
function makesFood(row: Row, at: number, length: number, vocabulary: ReaderVocabulary): boolean {
  const word = row.words[at]!;
  if (length !== 1 || !vocabulary.making.has(word)) return false;
  const { makingWith } = vocabulary.words;
  if (!Object.hasOwn(makingWith, word)) return qualifierAt(row, at + 1, vocabulary) === 0;
  const rest = row.words.slice(at + 1);
  const singular = rest.map((w) => w.replace(/s$/, ''));
  return makingWith[word]!.some((food) => {
    const parts = food.split(' ');
    return parts.every((part, i) => rest[i] === part || singular[i] === part.replace(/s$/, ''));
  });
}

export interface FoodWords {
  readonly name: string;
  /** In the order written. */
  readonly qualifiers: readonly string[];
  readonly from: number;
  readonly to: number;
}

/** Takes state and cutting words off both ends of the food words; at least one word stays. */
export function readFoodWords(row: Row, vocabulary: ReaderVocabulary): FoodWords {
  const before: string[] = [];
  const after: string[] = [];
  let from = 0;
  let to = row.tokens.length;
  while (from < to && (row.tokens[from]!.kind === 'mark' && !['(', '"'].includes(row.words[from]!) || ['of', 'the'].includes(row.words[from]!))) from++;
  while (to > from && [',', '.', '-', '–', ':', ';', '*', 'and', 'or', '&', '+'].includes(row.words[to - 1]!)) to--;
  for (;;) {
    let at = from;
    while (at < to && at > 0 && before.length > 0 && joiners.includes(row.words[at]!)) at++;
    const length = qualifierAt(row, at, vocabulary);
    if (length === 0 || at + length >= to || makesFood(row, at, length, vocabulary)) break;
    before.push(wordsOf(row, at, at + length).toLowerCase());
    from = at + length;
  }
  for (;;) {
    let taken = 0;
    for (let length = 1; length <= 4 && to - length > from; length++) if (qualifierAt(row, to - length, vocabulary) === length) taken = length;
    if (taken === 0) break;
    after.unshift(wordsOf(row, to - taken, to).toLowerCase());
    to -= taken;
    while (to - 1 > from && joiners.includes(row.words[to - 1]!)) to--;
  }
  return { name: wordsOf(row, from, to), qualifiers: [...before, ...after], from, to };
}

/** Whether the row holds nothing but state and cutting words (and joiners). */
export function onlyQualifiers(row: Row, vocabulary: ReaderVocabulary): boolean {
  let at = 0;
  while (at < row.words.length) {
    if (joiners.includes(row.words[at]!) || row.tokens[at]!.kind === 'mark' || vocabulary.adverbs.has(row.words[at]!)) {
      at++;
      continue;
    }
    const length = qualifierAt(row, at, vocabulary);
    if (length === 0) return false;
    at += length;
  }
  return row.words.length > 0;
}

/** The remarks in a stretch of words ("to serve", "optional"), each once, and where the first begins (-1 for none). */
export function readRemarks(row: Row, vocabulary: ReaderVocabulary): { remarks: LineRemark[]; at: number } {
  const remarks: LineRemark[] = [];
  let first = -1;
  let at = 0;
  while (at < row.words.length) {
    const length = vocabulary.remarks.longestAt(row.words, at);
    if (length === 0) {
      at++;
      continue;
    }
    const phrase = row.words.slice(at, at + length).join(' ');
    const remark = vocabulary.words.remarks[phrase]!;
    if (!remarks.includes(remark)) remarks.push(remark);
    if (first < 0) first = at;
    if (remark === 'plus-extra') break; // "plus extra for dusting": the purpose is that of the extra
    at += length;
  }
  return { remarks, at: first };
}

/** "carrots, peeled and cut into 2 cm dice": one qualifier for each thing said, lower case. */
export function splitQualifiers(row: Row, vocabulary: ReaderVocabulary): string[] {
  const parts: string[] = [];
  let from = 0;
  const close = (to: number): void => {
    const text = wordsOf(row, from, to).toLowerCase().replace(/^[\s:;,.–-]+|[\s:;,.–-]+$/g, '');
    if (text !== '') parts.push(text);
  };
  for (let at = 0; at < row.words.length; at++) {
    const word = row.words[at]!;
    const next = (word === 'and' || word === '&') && at > from && (qualifierAt(row, at + 1, vocabulary) > 0 || row.words[at + 1] === 'cut');
    if (word !== ',' && word !== ';' && !next) continue;
    close(at);
    from = at + 1;
  }
  close(row.words.length);
  return parts;
}

export const namedFood = (name: string, qualifiers: readonly string[]): NamedFood => ({ name, qualifiers });
