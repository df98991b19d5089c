import type { Amount } from './recipe.ts';
import { readAmount } from './read-amount.ts';
import { onlyQualifiers, qualifierAt, readRemarks } from './read-food-words.ts';
import { joinRows, partOfRow, wordsOf, type Row } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

/** What follows the amount: the words of the food, and what is said behind and in brackets. */
export interface LineParts {
  /** State words set off in front: "boneless, skinless chicken". */
  readonly leading: readonly string[];
  readonly main: Row;
  readonly tails: readonly Row[];
  /** An amount found behind the food: "onions 2"; behind a counted food only a weight or volume ("1 carton passata 500 g"). */
  readonly amount: Amount | null;
}

const isDash = (row: Row, at: number): boolean => ['-', '–', '—'].includes(row.words[at]!) && row.tokens[at]!.spaced && row.tokens[at + 1]?.spaced !== false;
/** A dot or dash that leads to an amount: "flour .... 250 g", "flour -250g". */
const endsPart = (row: Row, at: number): boolean => [',', ';', ':', '•', '|', '…', 'that\'s'].includes(row.words[at]!) || isDash(row, at) || (row.words[at] === '.' && (row.tokens[at + 1]?.spaced !== false || row.words[at + 1] === '.'));

/** "gr. beef 500 g": the dot of a first word cut short, with more words of the food behind it. */
const cutsShort = (row: Row, at: number): boolean => row.words[at] === '.' && at === 1 && row.tokens[0]!.kind === 'word' && row.words[0]!.length <= 5 && !row.tokens[1]!.spaced && row.tokens[2]?.kind === 'word';

/** Brackets out of the row, and the row cut at commas and dashes. */
function cutRow(row: Row): { segments: Row[]; brackets: Row[] } {
  const segments: Row[] = [];
  const brackets: Row[] = [];
  let current = partOfRow(row, 0, 0);
  let from = 0;
  for (let at = 0; at <= row.words.length; at++) {
    const word = row.words[at];
    if (word === '(' || word === '[') {
      let close = at + 1;
      for (let depth = 1; close < row.words.length; close++) {
        if (row.words[close] === '(' || row.words[close] === '[') depth++;
        else if ((row.words[close] === ')' || row.words[close] === ']') && --depth === 0) break;
      }
      current = joinRows(current, partOfRow(row, from, at));
      brackets.push(partOfRow(row, at + 1, close));
      from = close + 1;
      at = close;
    } else if (cutsShort(row, at)) {
      current = joinRows(current, partOfRow(row, from, at));
      from = at + 1;
    } else if (word === undefined || endsPart(row, at)) {
      segments.push(joinRows(current, partOfRow(row, from, at)));
      current = partOfRow(row, 0, 0);
      from = at + 1;
    }
  }
  return { segments, brackets: brackets.filter(({ words }) => words.length > 0) };
}

const prepositions = ['for', 'to', 'at', 'in', 'from', 'with', 'without', 'until', 'on', 'plus', 'per', 'about', 'such', 'like', 'no', 'that\'s', 'which', 'that', 'preferably', 'ideally', 'cut', 'if', 'depending', 'left', 'torn', 'approx', 'around', 'roughly', 'made', 'using', 'as', 'because', 'whichever', 'see'];

/** Where the food words of a segment end and words about them begin: "salt | to taste", "tuna | in brine". */
function endOfFood(row: Row, vocabulary: ReaderVocabulary): number {
  let at = 0;
  for (let length = qualifierAt(row, 0, vocabulary); length > 0 && at + length < row.words.length; length = qualifierAt(row, at, vocabulary)) at += length;
  const remarks = readRemarks(row, vocabulary);
  const soft = remarks.remarks[0] === 'juice-only' || remarks.remarks[0] === 'zest-only' || remarks.remarks[0] === 'juice-and-zest';
  const byRemark = remarks.at > at && !soft ? remarks.at : row.words.length;
  for (let n = at + 1; n < byRemark; n++) if (prepositions.includes(row.words[n]!)) return n;
  return byRemark;
}

/** "coriander, small handful", "salt pinch": a hand measure without a number, and no food behind it. Null when it is anything else. */
export function handMeasure(row: Row, vocabulary: ReaderVocabulary): Amount | null {
  const last = row.words.at(-1);
  const unit = last === undefined || row.words.length > 3 ? null : vocabulary.units.spelled(last);
  if (!unit || (!unit.vague && unit.id !== 'bunch') || unit.id === 'some') return null;
  const before = row.words.slice(row.words[0] === 'a' ? 1 : 0, -1).join(' ');
  const { fills, sizes } = vocabulary.words;
  if (before !== '' && !Object.hasOwn(fills, before) && !Object.hasOwn(sizes, before)) return null;
  const fill = unit.vague && Object.hasOwn(fills, before) ? fills[before]! : null;
  const size = fill === null && Object.hasOwn(sizes, before) ? sizes[before]! : null;
  return { quantity: { low: 1, value: 1, high: 1 }, unit: unit.id, size, fill, each: null, total: null, vague: unit.vague, text: wordsOf(row, 0, row.words.length) };
}

/** "onions 2", "flour 250g", "chicken breast x 2": the amount at the end of the food words. */
function amountBehind(row: Row, vocabulary: ReaderVocabulary): { amount: Amount; at: number; next: number } | null {
  for (let at = 1; at < row.words.length; at++) {
    const cross = ['x', '×', '='].includes(row.words[at]!);
    const number = row.tokens[cross ? at + 1 : at];
    if (!number || (number.kind === 'mark' && number.text !== '~')) continue;
    const read = readAmount(row, cross ? at + 1 : at, vocabulary);
    if (!read) continue;
    const { amount, next } = read;
    // "pepper lots of pepper": said again
    if (amount.unit !== null && row.words.slice(next).join(' ') === row.words.slice(0, at).join(' ')) return { amount, at, next: row.words.length };
    const measured = amount.unit !== null && number.kind === 'number' && ['mass', 'volume'].includes(vocabulary.units.get(amount.unit).kind);
    if (next >= row.words.length && (number.kind === 'number' || amount.unit !== null || cross)) return { amount, at, next };
    if (amount.unit !== null && number.kind === 'number' && onlyQualifiers(partOfRow(row, next, row.words.length), vocabulary)) return { amount, at, next };
    if (amount.size === null && number.kind === 'number' && onlyQualifiers(partOfRow(row, next, row.words.length), vocabulary)) return { amount, at, next }; // "chilli 2 slit"
    if (measured) return { amount, at, next }; // "butter 50 g softened"
  }
  // "salt pinch"
  const last = row.words.length - 1;
  const bare = last > 0 && vocabulary.isFood && !vocabulary.isFood(row.words.join(' ')) ? vocabulary.units.spelled(row.words[last]!) : null;
  if (bare && ((bare.vague && bare.id !== 'some') || bare.container || ['bunch', 'sprig'].includes(bare.id))) return { amount: { quantity: { low: 1, value: 1, high: 1 }, unit: bare.id, size: null, fill: null, each: null, total: null, vague: bare.vague, text: row.tokens[last]!.text }, at: last, next: last + 1 };
  return null;
}

const isMeasured = (amount: Amount, vocabulary: ReaderVocabulary): boolean => amount.unit !== null && ['mass', 'volume'].includes(vocabulary.units.get(amount.unit).kind) && !vocabulary.units.get(amount.unit).vague;

export function cutParts(row: Row, hasAmount: boolean, vocabulary: ReaderVocabulary): LineParts {
  const { segments, brackets } = cutRow(row);
  const filled = segments.filter(({ words }) => words.length > 0);
  const leading: string[] = [];
  while (filled.length > 1 && onlyQualifiers(filled[0]!, vocabulary) && !filled.slice(1).every((segment) => onlyQualifiers(segment, vocabulary) || readRemarks(segment, vocabulary).at === 0)) {
    const first = filled.shift()!;
    leading.push(wordsOf(first, 0, first.words.length).toLowerCase());
  }
  const [first, ...rest] = filled;
  if (!first) return { leading, main: partOfRow(row, 0, 0), tails: brackets, amount: null };
  const end = endOfFood(first, vocabulary);
  let main = partOfRow(first, 0, end);
  const tails = [...brackets, ...(end < first.words.length ? [partOfRow(first, end, first.words.length)] : []), ...rest];
  const found = amountBehind(main, vocabulary);
  const joined = found !== null && main.words.slice(0, found.at).some((word) => ['or', 'and', '&', '/', 'plus', '+'].includes(word));
  const behind = found !== null && hasAmount && (joined || !isMeasured(found.amount, vocabulary)) ? null : found;
  if (behind && behind.next < main.words.length) tails.push(partOfRow(main, behind.next, main.words.length));
  if (behind) main = partOfRow(main, 0, behind.at);
  return { leading, main, tails, amount: behind?.amount ?? null };
}
