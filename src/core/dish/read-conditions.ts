import type { Interval } from '../quantity/index.ts';
import type { Heat } from './recipe.ts';
import { readNumber } from './read-number.ts';
import { wordsOf, type Row } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

const scaled = ({ low, value, high }: Interval, factor: number): Interval => ({ low: low * factor, value: value * factor, high: high * factor });
const plus = (a: Interval, b: Interval): Interval => ({ low: a.low + b.low, value: a.value + b.value, high: a.high + b.high });

/** One "20-25 min", "half an hour", "1 h", "an hour and a half" at a place; null when none stands there. */
function durationAt(row: Row, at: number, vocabulary: ReaderVocabulary): { minutes: Interval; next: number; factor: number } | null {
  const number = readNumber(row, at, vocabulary);
  if (!number) return null;
  let next = number.next;
  if (row.words[next] === '-') next++;
  while (['more', 'further', 'extra', 'good', 'another', 'of', 'full'].includes(row.words[next] ?? '')) next++;
  const factor = Object.hasOwn(vocabulary.words.durations, row.words[next] ?? '') ? vocabulary.words.durations[row.words[next]!] : undefined;
  if (factor === undefined || (row.words[next] === 'm' && row.tokens[next]!.spaced)) return null;
  next++;
  if (row.words[next] === '.' && row.tokens[next + 1]?.spaced === false) next++;
  let { quantity } = number;
  if (row.words[next] === 'and' && row.words[next + 1] === 'a' && (row.words[next + 2] === 'half' || row.words[next + 2] === 'quarter')) {
    quantity = plus(quantity, scaled({ low: 1, value: 1, high: 1 }, row.words[next + 2] === 'half' ? 0.5 : 0.25));
    next += 3;
  }
  return { minutes: scaled(quantity, factor), next, factor };
}

/** The time said between two places of a row, in minutes: the first one; "on each side" doubles it, "overnight" is 8 to 12 hours. Null when none is said. */
export function readMinutes(row: Row, vocabulary: ReaderVocabulary): Interval | null {
  for (let at = 0; at < row.words.length; at++) {
    if (row.words[at] === 'overnight') return { low: 480, value: 600, high: 720 };
    const first = durationAt(row, at, vocabulary);
    if (!first) continue;
    let minutes = first.minutes;
    let next = first.next;
    const joined = ['and', ','].includes(row.words[next] ?? '') ? next + 1 : next;
    const rest = durationAt(row, joined, vocabulary);
    if (rest && rest.factor < first.factor) {
      minutes = plus(minutes, rest.minutes);
      next = rest.next;
    } else if (first.factor === 60 && row.tokens[next]?.kind === 'number' && row.tokens[next]!.value < 60 && row.words[next + 1] === undefined) {
      minutes = plus(minutes, scaled({ low: 1, value: 1, high: 1 }, row.tokens[next]!.value)); // "1 h 20"
    } else if ((row.words[next] === 'to' || row.words[next] === '-' || row.words[next] === '–') && durationAt(row, next + 1, vocabulary)) {
      const end = durationAt(row, next + 1, vocabulary)!.minutes;
      minutes = { low: minutes.low, value: (minutes.low + end.high) / 2, high: end.high };
    }
    const side = row.words.slice(next, next + 4).join(' ');
    return /^(?:on |per |a |for )?(?:each |per |both |a )?sides?\b/.test(side) ? scaled(minutes, 2) : minutes;
  }
  return null;
}

const degree = ['°', 'º', '˚', 'deg', 'degrees', 'degree', '℃', '℉'];

/** Degrees Celsius of a conventional oven or of the pan: "200C/180C fan/gas 6", "400°F", "gas mark 4"; a fan temperature alone is raised by the offset. Null when none is said. */
export function readCelsius(row: Row, vocabulary: ReaderVocabulary): number | null {
  let fan: number | null = null;
  let fahrenheit: number | null = null;
  let gas: number | null = null;
  for (let at = 0; at < row.words.length; at++) {
    if (row.words[at] === 'gas') {
      const mark = row.words[at + 1] === 'mark' ? at + 2 : at + 1;
      const token = row.tokens[mark];
      gas ??= (token && vocabulary.words.gasMarks[token.value === 0.25 ? '1/4' : token.value === 0.5 ? '1/2' : String(token.value)]) ?? null;
      continue;
    }
    const token = row.tokens[at]!;
    if (token.kind !== 'number' || token.value < 30 || token.value > 600) continue;
    let next = at + 1;
    const marked = degree.includes(row.words[next] ?? '');
    const sign = row.words[next];
    if (marked) next++;
    const unit = sign === '℃' ? 'c' : sign === '℉' ? 'f' : row.words[next];
    const celsius = unit === 'c' || unit === 'celsius' || unit === 'centigrade';
    if (!celsius && unit !== 'f' && unit !== 'fahrenheit' && !(marked && token.value <= 300) && unit !== 'fan') continue;
    if (unit === 'f' || unit === 'fahrenheit') fahrenheit ??= Math.round(((token.value - 32) * 5) / 9);
    else {
      const behind = row.words.slice(next, next + 4).filter((word) => word !== '(');
      const isFan = behind.includes('fan') && !behind.slice(0, behind.indexOf('fan')).some((word) => word === '/' || word === ',' || /^\d/.test(word)) || (row.words[at - 1] === 'fan' && row.words[next + 1] !== 'fan');
      if (!isFan) return token.value;
      fan ??= token.value;
    }
  }
  return fan !== null ? fan + vocabulary.words.fanOffset : (fahrenheit ?? gas);
}

/** How hot it is said to be: "over a low heat", "bring to the boil". Null when it is not said. */
export function readHeat(row: Row, vocabulary: ReaderVocabulary): Heat | null {
  for (let at = 0; at < row.words.length; at++) {
    const length = vocabulary.heatWords.longestAt(row.words, at);
    if (length === 0) continue;
    const phrase = row.words.slice(at, at + length).join(' ');
    const loose = length === 1 && (phrase === 'low' || phrase === 'medium' || phrase === 'high' || phrase === 'hot' || phrase === 'fast' || phrase === 'gently');
    if (loose && phrase !== 'gently' && !['heat', 'on', 'to', 'over', 'at', 'until', 'setting', 'a'].some((word) => row.words[at - 1] === word && (word !== 'a' || row.words[at + 1] === 'heat'))) continue;
    if (phrase === 'gently' && ['stir', 'fold', 'mix', 'toss'].includes(row.words[at - 1] ?? '')) continue;
    if (phrase === 'boiling' && row.words[at + 1] === 'water' && row.words[at - 1] !== 'in' && row.words[at - 1] !== 'salted') continue;
    return vocabulary.words.heatWords[phrase]!;
  }
  return null;
}

/** Whether the lid is on: "cover", "with the lid on", "uncovered". Null when it is not said. */
export function readLid(row: Row): boolean | null {
  for (let at = 0; at < row.words.length; at++) {
    const word = row.words[at]!;
    if (word === 'uncovered' || word === 'uncover') return false;
    if (word === 'covered' && /^(?:part|half|loose)/.test(row.words[at - 1] ?? '')) return false; // steam gets out
    if (word === 'covered' || (word === 'cover' && row.words[at + 1] !== 'with')) return true;
    if (word !== 'lid') continue;
    const around = row.words.slice(Math.max(0, at - 3), at + 2);
    return !(around.includes('without') || around.includes('off') || around.includes('remove') || around.includes('no'));
  }
  return null;
}

/** "until golden and crisp": the writer's sign, without the "until". Null when there is none. */
export function readUntil(row: Row): string | null {
  const at = row.words.findIndex((word) => word === 'until' || word === 'till' || word === "'til");
  if (at < 0) return null;
  let end = at + 1;
  while (end < row.words.length && ![',', '.', ';', '(', ')', ':'].includes(row.words[end]!)) end++;
  while (end > at + 1 && ['and', 'then', 'or'].includes(row.words[end - 1]!)) end--;
  return end > at + 1 ? wordsOf(row, at + 1, end) : null;
}
