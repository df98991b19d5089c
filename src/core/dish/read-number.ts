import type { Interval } from '../quantity/index.ts';
import type { Row } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

/** A number as written at some place of a row. */
export interface ReadNumber {
  readonly quantity: Interval;
  /** The token after it. */
  readonly next: number;
  /** Only "a" or "an". */
  readonly article: boolean;
  /** "a few", "several": no figure. */
  readonly rough: boolean;
}

const plain = (value: number, next: number): ReadNumber => ({ quantity: { low: value, value, high: value }, next, article: false, rough: false });

/** After "half", "three quarters", "a third": "a", "an", "of a" belong to the number. */
function skipOfA({ words }: Row, at: number): number {
  let next = at;
  if (words[next] === 'of' && ['a', 'an', 'one', 'the'].includes(words[next + 1] ?? '')) next++;
  return ['a', 'an'].includes(words[next] ?? '') ? next + 1 : next;
}

const partWords = ['quarter', 'quarters', 'third', 'thirds', 'half', 'halves'];

/** "and a half", "and 1/2", "& ½" behind a whole number: its size and the token after it. */
function addedPart(row: Row, at: number, words: ReaderVocabulary['words']): { add: number; next: number } | null {
  const joiner = row.words[at] === 'and' || row.words[at] === '&';
  const next = joiner ? at + 1 : at;
  const token = row.tokens[next];
  if (token?.kind === 'number' && token.fraction && token.value < 1) return { add: token.value, next: next + 1 };
  if (!joiner) return null;
  const counted = row.words[next] === 'a' || row.words[next] === 'one' ? 1 : row.words[next] === 'three' ? 3 : row.words[next] === 'two' ? 2 : null;
  const part = counted === null ? next : next + 1;
  const word = row.words[part];
  if (word === undefined || !partWords.includes(word) || ['a', 'an'].includes(row.words[part + 1] ?? '')) return null;
  return { add: (counted ?? 1) * (words.numbers[word] ?? 0.5), next: part + 1 };
}

function digits(row: Row, at: number, vocabulary: ReaderVocabulary): ReadNumber | null {
  const token = row.tokens[at]!;
  if (/^0\d/.test(token.text) && !/[.,]/.test(token.text)) return null; // "00 flour"
  if (row.words[at + 1] === '%') return null;
  if (row.tokens[at + 1]?.text === '000' && row.tokens[at + 1]!.spaced && token.value < 100 && Number.isInteger(token.value)) return plain(token.value * 1000, at + 2); // "1 000 g"
  if (token.fraction) return plain(token.value, skipOfA(row, at + 1));
  const hyphen = row.words[at + 1] === '-' ? row.tokens[at + 2] : undefined;
  if (hyphen?.fraction && !hyphen.spaced && hyphen.value < 1) return plain(token.value + hyphen.value, at + 3); // "1-1/2"
  const part = Number.isInteger(token.value) ? addedPart(row, at + 1, vocabulary.words) : null;
  if (part) return plain(token.value + part.add, part.next);
  const many = row.words[at + 1] === 'dozen' ? 12 : row.words[at + 1] === 'pair' || row.words[at + 1] === 'pairs' ? 2 : 1;
  return plain(token.value * many, at + (many > 1 ? (row.words[at + 2] === 'of' && many === 2 ? 3 : 2) : 1));
}

/** Behind "two hundred": "and fifty", "fifty-five". */
function hundreds(row: Row, at: number, value: number, vocabulary: ReaderVocabulary): ReadNumber {
  const from = row.words[at] === 'and' ? at + 1 : at;
  const word = row.words[from] ?? '';
  const rest = row.tokens[from]?.kind === 'word' && !['a', 'an', 'half', 'hundred'].includes(word) ? wordNumber(row, from, vocabulary) : null;
  return rest && !rest.article && !rest.rough && rest.quantity.value >= 1 && rest.quantity.value < 100 ? plain(value + rest.quantity.value, rest.next) : plain(value, at);
}

function wordNumber(row: Row, at: number, vocabulary: ReaderVocabulary): ReadNumber | null {
  const { numbers, roughNumbers } = vocabulary.words;
  const word = row.words[at]!;
  const rough = (at: number): ReadNumber | null => {
    const [low, value, high] = roughNumbers[row.words[at] ?? ''] ?? [0, 0, 0];
    return high === 0 ? null : { quantity: { low, value, high }, next: at + 1, article: false, rough: !['couple', 'pair'].includes(row.words[at] ?? '') };
  };
  if (word === 'a' || word === 'an') {
    if (row.words[at + 1] === 'good' || row.words[at + 1] === 'small') {
      const few = rough(at + 2);
      if (few) return few;
    }
    const inner = rough(at + 1);
    if (inner) return inner;
    const next = row.words[at + 1] ?? '';
    if (partWords.includes(next)) return plain(numbers[next] ?? 0.5, skipOfA(row, at + 2));
    if (next === 'hundred') return hundreds(row, at + 2, 100, vocabulary);
    if (next === 'dozen') return plain(12, at + 2);
    return { ...plain(1, at + 1), article: true };
  }
  if (word === 'half') {
    const next = skipOfA(row, at + 1);
    return row.words[next] === 'dozen' ? plain(6, next + 1) : plain(0.5, next);
  }
  const few = rough(at);
  if (few) return few;
  const joinedPart = /^([a-z]+)-and-a-(half|quarter|third)$/.exec(word);
  if (joinedPart && (numbers[joinedPart[1]!] ?? 0) >= 1) return plain(numbers[joinedPart[1]!]! + numbers[joinedPart[2]!]!, at + 1);
  const [tens, ones] = word.split('-');
  if (ones !== undefined && partWords.includes(ones) && (numbers[tens!] ?? 0) >= 1) return plain(numbers[tens!]! * (numbers[ones] ?? 0.5), skipOfA(row, at + 1)); // "three-quarters of a"
  const value = Object.hasOwn(numbers, word) ? numbers[word] : ones !== undefined && (numbers[tens!] ?? 0) >= 20 ? numbers[tens!]! + (numbers[ones] ?? NaN) : undefined;
  if (value === undefined || !Number.isFinite(value)) return null;
  const next = row.words[at + 1] ?? '';
  if (value < 1) return plain(value, skipOfA(row, at + 1));
  if (partWords.includes(next) && value < 10) return plain(value * (numbers[next] ?? 0.5), skipOfA(row, at + 2));
  if (next === 'hundred') return hundreds(row, at + 2, value * 100, vocabulary);
  if (next === 'dozen') return plain(value * 12, at + 2);
  if (value >= 20 && value < 100 && (numbers[next] ?? 0) >= 1 && (numbers[next] ?? 0) < 10 && !['a', 'an'].includes(next)) return plain(value + numbers[next]!, at + 2);
  const part = addedPart(row, at + 1, vocabulary.words);
  return part ? plain(value + part.add, part.next) : plain(value, at + 1);
}

/** One number, no range. */
export function readSingleNumber(row: Row, at: number, vocabulary: ReaderVocabulary): ReadNumber | null {
  const token = row.tokens[at];
  if (!token) return null;
  if (token.kind === 'number') return digits(row, at, vocabulary);
  return token.kind === 'word' ? wordNumber(row, at, vocabulary) : null;
}

const dashes = ['-', '–', '—', '~'];

/** A number or a range: "2", "1½", "2-3", "2 to 3", "one or two", "between 2 and 3". A range's `value` is its middle. */
export function readNumber(row: Row, at: number, vocabulary: ReaderVocabulary): ReadNumber | null {
  const between = row.words[at] === 'between';
  const first = readSingleNumber(row, between ? at + 1 : at, vocabulary);
  if (!first || first.article) return between ? null : first;
  const joiner = row.words[first.next] ?? '';
  const dash = dashes.includes(joiner);
  if (!dash && joiner !== 'to' && joiner !== 'or' && !(between && joiner === 'and')) return first;
  const second = readSingleNumber(row, first.next + 1, vocabulary);
  if (!second || second.article || (dash && row.tokens[first.next + 1]?.kind !== 'number')) return first;
  const [low, high] = [first.quantity.value, second.quantity.value].sort((a, b) => a - b) as [number, number];
  return { ...second, quantity: { low, value: (low + high) / 2, high } };
}
