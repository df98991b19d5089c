import { exactly, type Interval, type Unit } from '../quantity/index.ts';
import type { Amount, PieceSize, StatedMeasure } from './recipe.ts';
import { readNumber, type ReadNumber } from './read-number.ts';
import { wordsOf, type Row } from './read-tokens.ts';
import { readUnit } from './read-unit.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

export interface ReadAmount {
  readonly amount: Amount;
  /** "1 cup plus 2 tbsp": the further amounts. */
  readonly more: readonly Amount[];
  /** The token after the amount. */
  readonly next: number;
  /** Only "a" or "an" stood there, no unit: perhaps no amount at all. */
  readonly article: boolean;
  /** "1 tsp each": the amount holds for every food that follows. */
  readonly shared: boolean;
  /** State words before the unit: "1 packed cup". */
  readonly qualifiers: readonly string[];
  /** The token of the unit word, -1 without one. */
  readonly unitAt: number;
}

interface Draft {
  quantity: Interval;
  unit: Unit | null;
  size: PieceSize | null;
  fill: Amount['fill'];
  each: StatedMeasure | null;
  total: StatedMeasure | null;
  vague: boolean;
  packing: string[];
  unitAt: number;
}

const measure = (quantity: Interval, unit: Unit): StatedMeasure => ({ quantity, unit: unit.id });
const weighs = (unit: Unit | null): boolean => unit?.kind === 'mass' || unit?.kind === 'volume';
const holder = (unit: Unit | null): boolean => unit !== null && (unit.container || unit.holds);

/** "about", "approx.", "that's maybe". */
function skipAbout(row: Row, at: number, vocabulary: ReaderVocabulary): number {
  let next = at;
  for (let n = 0; n < 3; n++) {
    const about = vocabulary.approximate.longestAt(row.words, next);
    if (about === 0) break;
    next += about;
    if (row.words[next] === '.') next++;
  }
  return next;
}

/** A number with a unit that measures: "400 g", "14-oz", "3 cm". */
function readMeasure(row: Row, at: number, vocabulary: ReaderVocabulary): { quantity: Interval; unit: Unit; next: number; hyphen: boolean } | null {
  let start = skipAbout(row, at, vocabulary);
  if (row.words[start] === '~') start++;
  const number = readNumber(row, start, vocabulary);
  if (!number || number.article) return null;
  const hyphen = row.words[number.next] === '-' && row.tokens[number.next]!.spaced === false && row.tokens[number.next + 1]?.spaced === false;
  const found = readUnit(row, hyphen ? number.next + 1 : number.next, vocabulary);
  if (!found || found.unit.kind === 'count' || found.unit.vague) return null;
  return { ...withSmaller(row, found.next, { quantity: number.quantity, unit: found.unit }, vocabulary), unit: found.unit, hyphen };
}

/** "1 lb 4 oz", "1 kg 200 g": a smaller unit of the same kind right behind counts in. */
function withSmaller(row: Row, at: number, first: { quantity: Interval; unit: Unit }, vocabulary: ReaderVocabulary): { quantity: Interval; next: number } {
  const joined = row.words[at] === 'and' || row.words[at] === ',' ? at + 1 : at;
  const number = weighs(first.unit) && !first.unit.spoon && row.tokens[joined]?.kind === 'number' ? readNumber(row, joined, vocabulary) : null;
  const unit = number && readUnit(row, number.next, vocabulary);
  const ratio = unit && unit.unit.kind === first.unit.kind && !unit.unit.spoon && !unit.unit.vague ? (unit.unit.sizes.any?.value ?? 0) / (first.unit.sizes.any?.value ?? 1) : 1;
  if (!number || !unit || !(ratio < 0.5)) return { quantity: first.quantity, next: at };
  const add = number.quantity.value * ratio;
  return { quantity: { low: first.quantity.low + add, value: first.quantity.value + add, high: first.quantity.high + add }, next: unit.next };
}

/** Adjectives between number and unit or food: "heaped", "large". They go into the draft. */
function readAdjectives(row: Row, at: number, draft: Draft, vocabulary: ReaderVocabulary): number {
  const { fills, sizes } = vocabulary.words;
  let next = at;
  for (let n = 0; n < 3; n++) {
    if (vocabulary.notSizes.longestAt(row.words, next) > 0) break;
    const packed = packing(row, next, vocabulary);
    if (packed > 0) {
      draft.packing.push(wordsOf(row, next, next + packed).toLowerCase());
      next += packed;
      continue;
    }
    if (cutAdjectives.has(row.words[next] ?? '') && readUnit(row, next + 1, vocabulary)?.unit.kind === 'count') {
      draft.packing.push(row.words[next]!);
      next++;
      continue;
    }
    const length = vocabulary.sizes.longestAt(row.words, next);
    const word = length > 0 ? row.words.slice(next, next + length).join(' ') : (row.words[next] ?? '');
    const after = next + Math.max(length, 1) + (row.words[next + Math.max(length, 1)] === ',' ? 1 : 0);
    const unit = readUnit(row, after, vocabulary)?.unit ?? null;
    if (Object.hasOwn(fills, word) && unit && (unit.spoon || unit.vague)) draft.fill = fills[word]!;
    else if (length > 0) draft.size = sizes[word]!;
    else if (!(Object.hasOwn(fills, word) && (Object.hasOwn(fills, row.words[after] ?? '') || unit))) break;
    next = next + Math.max(length, 1);
    if (row.words[next] === ',' && readUnit(row, next + 1, vocabulary)) next++;
  }
  return next;
}

/** Said of the pieces, before their unit: "2 thick slices", "3 fresh sprigs". */
const cutAdjectives = new Set(['thick', 'thin', 'thick-cut', 'thin-cut', 'chunky', 'fresh', 'nice', 'lovely', 'juicy', 'ripe', 'crisp', 'tender', 'long', 'short', 'skinless', 'boneless', 'thinly-cut', 'soft', 'fat', 'plump', 'trimmed', 'leafy']);

/** "packed", "loosely packed" right before a spoon or cup. */
function packing(row: Row, at: number, vocabulary: ReaderVocabulary): number {
  const length = ['loosely', 'lightly', 'firmly', 'tightly', 'well'].includes(row.words[at] ?? '') ? 2 : 1;
  if (!['packed', 'filled'].includes(row.words[at + length - 1] ?? '')) return 0;
  return readUnit(row, at + length, vocabulary)?.unit.spoon ? length : 0;
}

/** "(400 g)", "(about 150 g each)", "(14 oz / 400 g)", "[200g]": the measure in brackets right here. */
function readBracket(row: Row, at: number, vocabulary: ReaderVocabulary): { quantity: Interval; unit: Unit; next: number; each: boolean; total: boolean } | null {
  if (row.words[at] !== '(' && row.words[at] !== '[') return null;
  const first = readMeasure(row, at + 1, vocabulary);
  if (!first) return null;
  let next = first.next;
  while (row.words[next] === '/' || row.words[next] === ',' || row.words[next] === 'or' || row.words[next] === ';') {
    const other = readMeasure(row, next + 1, vocabulary);
    if (!other) break;
    next = other.next;
  }
  let each = false;
  let total = false;
  for (; next < row.words.length && ![')', ']'].includes(row.words[next]!); next++) {
    const word = row.words[next]!;
    if (word === 'each' || word === 'apiece') each = true;
    else if (word === 'total' || word === 'altogether') total = true;
    else if (!['in', 'weight', 'net', 'drained', 'size', 'or', 'so', 'approx', 'approximately', '.'].includes(word) && readUnit(row, next, vocabulary) === null) return null;
  }
  return next < row.words.length ? { quantity: first.quantity, unit: first.unit, next: next + 1, each, total } : null;
}

/** A stated weight belongs to one piece or to all of them. */
function settleBracket(draft: Draft, bracket: { quantity: Interval; unit: Unit; each: boolean; total: boolean }): void {
  const stated = measure(bracket.quantity, bracket.unit);
  const one = draft.quantity.value === 1 && !weighs(draft.unit);
  const perContainer = draft.unit !== null && draft.unit.container;
  if (bracket.each || (!bracket.total && (one || perContainer))) draft.each ??= stated;
  else draft.total ??= stated;
}

/** "2 x 400 g", "2 400g", "two 14-oz", "1 (3 cm) piece": a count before a measure of each. */
function readEach(row: Row, at: number, draft: Draft, vocabulary: ReaderVocabulary): number | null {
  const cross = ['x', '×', '*'].includes(row.words[at] ?? '');
  const from = cross ? at + 1 : at;
  const bracket = readBracket(row, from, vocabulary);
  const each = bracket ?? readMeasure(row, from, vocabulary);
  if (!each) return null;
  const holding = readUnit(row, each.next, vocabulary);
  if (!cross && !bracket && !holding && each.unit.kind !== 'length') return null;
  if (bracket && !holding) return null;
  draft.each = measure(each.quantity, each.unit);
  if (!holding || (holding.unit.kind !== 'count' && !holding.unit.vague)) return each.next;
  draft.unit = holding.unit;
  draft.unitAt = each.next;
  return holding.next;
}

/** "400 g tin": the weight is the weight of one tin. "3 cm piece" stays a length. */
function foldHolder(row: Row, at: number, draft: Draft, vocabulary: ReaderVocabulary): number {
  const found = readUnit(row, at, vocabulary);
  if (!found || !holder(found.unit) || !draft.unit) return at;
  if (draft.unit.kind === 'length') return found.unit.id === 'piece' ? found.next : at;
  if (!weighs(draft.unit) || draft.unit.vague || draft.unit.spoon) return at;
  draft.each = measure(draft.quantity, draft.unit);
  draft.quantity = exactly(1);
  draft.unit = found.unit;
  return found.next;
}

/** "200g/7oz", "1 cup / 240 ml", "1 lb 4 oz", "1 tin (400 g)": what else is said of the same amount. */
function readMoreOfSame(row: Row, at: number, draft: Draft, vocabulary: ReaderVocabulary): number {
  let next = at;
  for (;;) {
    const mark = row.words[next];
    if (mark === '/' || mark === '|' || mark === '=' || mark === 'or') {
      const other = readMeasure(row, next + 1, vocabulary);
      if (!other) return next;
      if (draft.unit?.kind === 'count' && draft.quantity.value === 1) draft.each ??= measure(other.quantity, other.unit);
      else draft.total ??= measure(other.quantity, other.unit);
      next = other.next;
      continue;
    }
    const bracket = readBracket(row, next, vocabulary);
    if (bracket) {
      settleBracket(draft, bracket);
      next = bracket.next;
      continue;
    }
    const larger = draft.unit === null || next !== at ? null : withSmaller(row, next, { quantity: draft.quantity, unit: draft.unit }, vocabulary);
    if (!larger || larger.next === next) return next;
    draft.quantity = larger.quantity;
    next = larger.next;
  }
}

function finish(row: Row, from: number, to: number, draft: Draft): Amount {
  const { quantity, unit, size, fill, each, total, vague } = draft;
  return { quantity, unit: unit?.id ?? null, size, fill, each, total, vague, text: wordsOf(row, from, to) };
}

// Units that stand without "a" and without "of": "small bunch coriander".
const bareUnits = new Set(['bunch', 'sprig', 'punnet']);

/** "handful of kale", "good pinch salt", "some oil", "tin tomatoes": a unit without a number. */
function readBareUnit(row: Row, at: number, draft: Draft, vocabulary: ReaderVocabulary): number | null {
  const from = readAdjectives(row, at, draft, vocabulary);
  const found = readUnit(row, from, vocabulary);
  if (!found) return null;
  const { unit, next } = found;
  const followed = row.tokens[next]?.kind === 'word' || row.tokens[next]?.kind === 'number' || row.words[next] === '(';
  if (!followed || unit.kind === 'mass' || unit.kind === 'length' && !unit.vague) return null;
  if (row.words[next] === 'of' && row.tokens[next + 1]?.kind === 'number' && !unit.vague && !unit.container) return null; // "seeds of 1 pomegranate"
  const spoon = unit.spoon && (draft.fill !== null || unit.id !== 'cup');
  if (row.words[next] !== 'of' && !unit.vague && !unit.container && !spoon && !bareUnits.has(unit.id)) return null;
  draft.unit = unit;
  draft.vague = unit.vague;
  return next;
}

/** "Big onion", "large carrot": one of that size, where the food's name follows in the singular. */
function readBareSize(row: Row, at: number, draft: Draft, vocabulary: ReaderVocabulary): number | null {
  const size = ['big', 'large', 'small', 'lg', 'lge', 'sm'].includes(row.words[at] ?? '') ? vocabulary.words.sizes[row.words[at]!] : undefined;
  if (size === undefined || vocabulary.isFood === null || vocabulary.notSizes.longestAt(row.words, at) > 0) return null;
  const word = row.words[at + 1] ?? '';
  const two = `${word} ${row.words[at + 2] ?? ''}`;
  const last = row.tokens[at + 2]?.kind === 'word' && vocabulary.isFood(two) ? (row.words[at + 2] ?? '') : vocabulary.isFood(word) ? word : '';
  if (last === '' || (last.endsWith('s') && !last.endsWith('ss') && !last.endsWith('us'))) return null;
  draft.size = size;
  return at + 1;
}

/** The amount written at a place of the row, or null. */
export function readAmount(row: Row, at: number, vocabulary: ReaderVocabulary, withMore = true): ReadAmount | null {
  if (vocabulary.notAmounts.longestAt(row.words, at) > 0) return null;
  const draft: Draft = { quantity: exactly(1), unit: null, size: null, fill: null, each: null, total: null, vague: false, packing: [], unitAt: -1 };
  let start = at;
  if (row.words[start] === '~') start++;
  const about = skipAbout(row, start, vocabulary);
  if (about > start && readNumber(row, about, vocabulary)) start = about;
  if (vocabulary.notAmounts.longestAt(row.words, start) > 0) return null;

  const phrase = vocabulary.notSizes.longestAt(row.words, start + 1) > 0 ? null : readUnit(row, start, vocabulary);
  const number = phrase?.unit.id === 'some' ? null : readNumber(row, start, vocabulary);
  let next: number;
  if (!number) {
    const bare = readBareUnit(row, start, draft, vocabulary) ?? readBareSize(row, start, draft, vocabulary);
    if (bare === null) return null;
    next = bare;
  } else {
    draft.quantity = number.quantity;
    draft.vague = number.rough;
    const counted = readCounted(row, number, draft, vocabulary);
    if (counted === null) return null;
    next = counted;
  }
  next = readMoreOfSame(row, next, draft, vocabulary);
  if (draft.unit?.id === 'piece' && draft.quantity.low === 1 && draft.quantity.high === 1 && draft.each && vocabulary.units.get(draft.each.unit).kind === 'length') {
    // "a 5 cm piece" is said as "5 cm piece" is
    draft.quantity = draft.each.quantity;
    draft.unit = vocabulary.units.get(draft.each.unit);
    draft.each = null;
  }
  if (draft.unit?.vague && number?.article) draft.vague = true;
  const more: Amount[] = [];
  const end = next;
  while (withMore && (row.words[next] === 'plus' || row.words[next] === '+')) {
    const further = readAmount(row, next + 1, vocabulary, false);
    if (!further || further.article || further.amount.unit === null) break;
    more.push(further.amount);
    next = further.next;
  }
  const article = (number === null && draft.unit === null) || number?.article === true && draft.unit === null && draft.size === null && draft.each === null;
  const amount = finish(row, at, end, draft);
  const shared = row.words[next] === 'each';
  if (shared) next++;
  if (row.words[next] === 'of') next += row.words[next + 1] === 'a' || row.words[next + 1] === 'the' ? 2 : 1;
  return { amount, more, next, article, shared, qualifiers: draft.packing, unitAt: draft.unitAt };
}

/** What follows a number: adjectives, a measure of each, a unit. Null when the number is part of a name ("7-grain"). */
function readCounted(row: Row, number: ReadNumber, draft: Draft, vocabulary: ReaderVocabulary): number | null {
  let next = readAdjectives(row, number.next, draft, vocabulary);
  const joined = row.words[next] === '-' && row.tokens[next]!.spaced === false && row.tokens[next + 1]?.spaced === false && row.tokens[next + 1]?.kind === 'word';
  if (joined) {
    const found = readUnit(row, next + 1, vocabulary);
    if (!found) return null;
    if (found.unit.kind === 'length') {
      const piece = readUnit(row, found.next, vocabulary);
      if (piece?.unit.id !== 'piece') {
        draft.each = measure(number.quantity, found.unit);
        draft.quantity = exactly(1);
        return found.next;
      }
    }
    draft.unit = found.unit;
    return foldHolder(row, found.next, draft, vocabulary);
  }
  const each = readEach(row, next, draft, vocabulary);
  if (each !== null) return each;
  if (['x', '×', '*'].includes(row.words[next] ?? '')) next++;
  if (row.words[next] === 'of' && number.rough) next++;
  else if (row.words[next] === 'of' && !number.article && number.quantity.high !== number.quantity.low) next++;
  next = readAdjectives(row, next, draft, vocabulary);
  const found = readUnit(row, next, vocabulary);
  if (!found) return next;
  draft.unit = found.unit;
  draft.unitAt = next;
  const { add, next: behind } = andAHalf(row, found.next, vocabulary);
  const { low, value, high } = draft.quantity;
  if (add > 0 && Number.isInteger(value)) {
    draft.quantity = { low: low + add, value: value + add, high: high + add };
    return behind;
  }
  return measureBehind(row, foldHolder(row, found.next, draft, vocabulary), draft, vocabulary);
}

/** "A teaspoon and a half of": what is added to the number before the unit. */
function andAHalf(row: Row, at: number, vocabulary: ReaderVocabulary): { add: number; next: number } {
  const part = row.words[at] === 'and' && (row.words[at + 1] === 'a' || row.words[at + 1] === 'one') ? row.words[at + 2] : undefined;
  const add = part === 'half' || part === 'quarter' || part === 'third' ? (vocabulary.words.numbers[part] ?? 0) : 0;
  const unit = add > 0 && readUnit(row, at + 3, vocabulary) !== null; // "and a half cup" is another amount
  return add > 0 && !unit ? { add, next: at + 3 } : { add: 0, next: at };
}

/** "1 tin 400 g tomatoes": a container with the weight of one right behind it. */
function measureBehind(row: Row, at: number, draft: Draft, vocabulary: ReaderVocabulary): number {
  if (!draft.unit?.container || draft.each !== null || row.tokens[at]?.kind !== 'number') return at;
  const each = readMeasure(row, at, vocabulary);
  if (!each || !weighs(each.unit)) return at;
  draft.each = measure(each.quantity, each.unit);
  return each.next;
}

/** "3 cloves", "2 fillets, skinned": no food follows the count word, so it is the food itself. */
export function countIsFood(row: Row, read: ReadAmount, vocabulary: ReaderVocabulary): boolean {
  const unit = read.amount.unit === null ? null : vocabulary.units.get(read.amount.unit);
  const after = row.words[read.next];
  return unit?.kind === 'count' && !unit.container && !unit.vague && read.unitAt >= 0 && (after === undefined || after === ',' || after === '(' || after === ';' || after === '.');
}
