import { onlyQualifiers } from './read-food-words.ts';
import { joinRows, partOfRow, wordsOf, type Row } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

const phrase = (row: Row): string => row.words.join(' ');

function namesOneFood(row: Row, vocabulary: ReaderVocabulary): boolean {
  const text = phrase(row);
  if (vocabulary.words.joined.some((joined) => ` ${text} `.includes(` ${joined} `))) return true;
  return vocabulary.isFood?.(text) ?? false;
}

/** "olive or rapeseed oil": the shared last word goes to the first as well. */
function withSharedHead(left: Row, right: Row, vocabulary: ReaderVocabulary): Row {
  const head = right.words.at(-1) ?? '';
  const last = left.words.at(-1) ?? '';
  if (right.words.length < 2 || !vocabulary.sharedHeads.has(head) || last === head || !vocabulary.attributes.has(last)) return left;
  if (vocabulary.sharedHeads.has(last) && (vocabulary.isFood?.(phrase(left)) ?? true)) return left;
  return joinRows(left, partOfRow(right, right.words.length - 1, right.words.length));
}

/** "1 leek or 2 small onions": the first food, the others, and state words joined by "or". */
export function splitChoices(row: Row, vocabulary: ReaderVocabulary): { first: Row; others: Row[]; qualifiers: string[] } {
  const none = { first: row, others: [], qualifiers: [] };
  if (namesOneFood(row, vocabulary)) return none;
  const parts: Row[] = [];
  let from = 0;
  row.words.forEach((word, at) => {
    const choice = word === 'or' || (word === '/' && row.tokens[at - 1]?.kind === 'word' && row.tokens[at + 1]?.kind === 'word' && row.words[at + 1] !== 'or');
    if (!choice || at <= from) return;
    const left = partOfRow(row, from, at);
    if (onlyQualifiers(left, vocabulary)) return;
    parts.push(left);
    from = at + 1;
  });
  if (parts.length === 0) return none;
  parts.push(partOfRow(row, from, row.words.length));
  const [first, ...rest] = parts as [Row, ...Row[]];
  const others = rest.filter((part) => part.words.length > 0 && !onlyQualifiers(part, vocabulary) && !['more', 'less', 'so', 'to', 'as', 'until'].includes(part.words[0]!));
  const qualifiers = rest.filter((part) => part.words.length > 0 && !others.includes(part)).map((part) => `or ${wordsOf(part, 0, part.words.length)}`.toLowerCase());
  const trimmed = first.words.at(-1) === 'and' ? partOfRow(first, 0, first.words.length - 1) : first;
  return { first: others[0] ? withSharedHead(trimmed, others[0], vocabulary) : trimmed, others, qualifiers };
}

export interface FoodsContext {
  /** "1 tsp each": the amount is said of every food. */
  readonly shared: boolean;
  readonly amount: boolean;
  /** The line names several foods with amounts, as when somebody dictates. */
  readonly runOn: boolean;
  readonly tails: readonly Row[];
}

const lastWord = (row: Row): string => (row.words.at(-1) ?? '').replace(/s$/, '');

function isPair(left: Row, right: Row, vocabulary: ReaderVocabulary): boolean {
  return vocabulary.words.pairs.some(([a, b]) => (lastWord(left) === a && lastWord(right) === b) || (lastWord(left) === b && lastWord(right) === a));
}

/** "salt and pepper": the foods that one amount, or none, is said of; `others` are foods behind them that it is not said of. The tails that turn out to be foods leave the tails. */
export function splitFoods(main: Row, context: FoodsContext, vocabulary: ReaderVocabulary): { foods: Row[]; others: Row[]; tails: Row[] } {
  const cut = splitAtAnd(main, vocabulary);
  const foodTails: Row[] = [];
  const tails: Row[] = [];
  for (const tail of context.tails) (isFoodTail(tail, main, context, vocabulary) ? foodTails : tails).push(tail);
  const [left, right] = [cut[0], cut[1]];
  const known = (row: Row): boolean => vocabulary.isFood?.(phrase(row)) ?? false;
  const several =
    cut.length > 1 && (context.shared || (foodTails.length > 0 && !context.amount) || (left && right && isPair(left, right, vocabulary)) || cut.every(known) || (!context.amount && cut.every(({ words }) => words.length <= 4)));
  const behind = foodTails.flatMap((tail) => splitAtAnd(tail, vocabulary));
  const own = several ? cut : [main];
  return context.amount && !context.shared ? { foods: own, others: behind, tails } : { foods: [...own, ...behind], others: [], tails };
}

function splitAtAnd(row: Row, vocabulary: ReaderVocabulary): Row[] {
  if (namesOneFood(row, vocabulary)) return [row];
  const parts: Row[] = [];
  let from = 0;
  row.words.forEach((word, at) => {
    if ((word !== 'and' && word !== '&' && word !== '+') || at <= from) return;
    const left = partOfRow(row, from, at);
    const right = partOfRow(row, at + 1, row.words.length);
    if (right.words.length === 0 || onlyQualifiers(left, vocabulary) || onlyQualifiers(right, vocabulary)) return;
    parts.push(left);
    from = at + 1;
  });
  parts.push(partOfRow(row, from, row.words.length));
  return parts;
}

/** Whether short words can be a food: no state, no unit, no other use. */
function namesFood(row: Row, vocabulary: ReaderVocabulary): boolean {
  if (vocabulary.isFood) return vocabulary.isFood(phrase(row));
  return !onlyQualifiers(row, vocabulary) && row.tokens.every(({ kind }) => kind === 'word') && !row.words.some((word) => vocabulary.units.spelled(word) !== null || vocabulary.qualifiers.longestAt([word], 0) > 0 || vocabulary.adverbs.has(word) || vocabulary.remarks.longestAt([word], 0) > 0 || ['all', 'only', 'part', 'parts', 'each', 'if', 'or', 'to', 'for', 'in', 'the', 'see', 'about', 'etc'].includes(word));
}

/** Whether a comma part is another food, not a word about the first. */
function isFoodTail(tail: Row, main: Row, context: FoodsContext, vocabulary: ReaderVocabulary): boolean {
  if (tail.words.length === 0 || tail.words.length > 6 || tail.tokens.some(({ kind }) => kind === 'number')) return false;
  if (onlyQualifiers(tail, vocabulary)) return false;
  const parts = splitAtAnd(tail, vocabulary);
  if (context.shared) return parts.every(({ words }) => words.length <= 3);
  if (vocabulary.isFood && parts.every((part) => vocabulary.isFood!(phrase(part)))) return !context.amount || context.runOn || parts.length > 1;
  if (context.amount && !context.runOn) return false;
  if (context.runOn && parts.every((part) => part.words.length <= 2 && namesFood(part, vocabulary))) return true;
  // "Salt, pepper and nutmeg": a list, as nothing in it says how the first is cut.
  if (parts.length > 1 && parts.every((part) => part.words.length <= 3 && namesFood(part, vocabulary))) return true;
  return parts.length === 1 && isPair(main, tail, vocabulary);
}
