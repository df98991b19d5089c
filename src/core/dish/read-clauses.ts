import { partOfRow, type Row } from './read-tokens.ts';
import type { ReaderVocabulary, VerbEntry } from './read-vocabulary.ts';

/** A stretch of a step with one verb. */
export interface Clause {
  readonly row: Row;
  readonly verb: string;
  /** Null for a verb that is not in the list. */
  readonly entry: VerbEntry | null;
}

const objects = new Set(['the', 'a', 'an', 'in', 'into', 'with', 'until', 'to', 'for', 'on', 'over', 'it', 'them', 'all', 'everything', 'your', 'together', 'up', 'off', 'half', 'some', 'at', 'through', 'well', 'this', 'out', 'each', 'any', 'aside', 'from', 'under', 'remaining', 'both', 'these', 'again', 'gently', 'by', 'immediately', 'straight', '.', 'around', 'lightly', 'covered', 'uncovered', 'as', 'about', 'most', 'down', 'back', 'between']);
const passing = new Set(['then', 'gently', 'carefully', 'slowly', 'gradually', 'quickly', 'lightly', 'finely', 'thinly', 'roughly', 'just', 'also', 'now', 'next', 'finally', 'first', 'immediately', 'meanwhile', 'coarsely', 'briefly', 'simply', 'well', 'continue', 'and', 'occasionally', 'vigorously', 'lastly', 'evenly', 'afterwards', 'please', 'firstly', 'secondly', 'quick']);
const openers = new Set(['once', 'when', 'while', 'after', 'if', 'as', 'before', 'in', 'on', 'using', 'with', 'for', 'to', 'at', 'meanwhile', 'from', 'into', 'over', 'during']);
const letting = new Set(['leave', 'let', 'allow', 'continue', 'keep', 'bring', 'return', 'start', 'begin', 'turn', 'reduce', 'lower']);

/** Whether the token is the verb of an instruction. */
function verbAt(row: Row, at: number, vocabulary: ReaderVocabulary): VerbEntry | null {
  const two = vocabulary.verbForms.get(`${row.words[at]!} ${row.words[at + 1] ?? ''}`);
  if (two?.kind === 'cook') return two; // "pressure cook"
  const entry = vocabulary.verbForms.get(row.words[at]!);
  if (row.words[at] === 'separate' && [1, 2, 3].some((n) => vocabulary.vessels.longestAt(row.words, at + n) > 0)) return null; // "separate small pan: …"
  if (!entry || entry.verb !== row.words[at]) {
    // "keep stirring", "by frying": the -ing form carries the treatment.
    const before = row.words[at - 1];
    return entry && entry.kind === 'cook' && /ing$/.test(row.words[at]!) && (before === 'keep' || before === 'by' || before === 'start' || before === 'continue') ? entry : null;
  }
  let before = at - 1;
  while (before >= 0 && passing.has(row.words[before]!) && row.words[before] !== 'and') before--;
  const previous = row.words[before];
  const next = row.words[at + 1];
  const followed = next === undefined || objects.has(next);
  const start = previous === undefined || previous === '.' || previous === ';' || previous === ':' || previous === '!' || previous === ')' || previous === '-' || previous === '–';
  if (start) return !vocabulary.alsoNouns.has(entry.verb) || followed || next === ',' || next === 'and' || row.tokens.length > at + 2 ? entry : null;
  if (before < at - 1 && row.words[at - 1] === 'then') return entry;
  if (previous === 'you' || previous === 'i' || previous === 'we') return !['while', 'when', 'before', 'after', 'until', 'as', 'if', 'that', 'how'].includes(row.words[before - 1] ?? '') && (followed || !vocabulary.alsoNouns.has(entry.verb)) ? entry : null;
  if (previous === 'and' && next === ',' && entry.kind === 'cook') return entry;
  if (previous === ',' || previous === 'and' || previous === '&' || previous === 'or' || previous === '(') return followed || !vocabulary.alsoNouns.has(entry.verb) ? entry : null;
  if (entry.kind === 'cook' && previous !== undefined && vocabulary.vesselKinds.has(previous)) return entry; // "in a wok fry …"
  if (previous === 'to') {
    const before4 = row.words.slice(Math.max(0, before - 4), before);
    return before4.some((word) => letting.has(word)) && entry.kind !== 'add' ? entry : null;
  }
  if ((previous === 'it' || previous === 'them' || previous === 'everything') && (row.words[before - 1] === 'let' || row.words[before - 1] === 'and')) return entry;
  return null;
}

const notAFood = new Set(['to', 'the', 'a', 'an', 'of', 'for', 'until', 'till', 'and', 'or', 'in', 'on', 'with', 'from', 'into', 'over', 'it', 'them', 'this', 'your', 'than', 'is', 'are', 'not', 'no']);

/** Notes put the verb behind the food: "rice boil 12 min", "carrots stir-fry 4 min". The token of such a verb before `end`, -1 without one. */
function verbBehindFood(row: Row, end: number, vocabulary: ReaderVocabulary): number {
  for (let at = 1; at < end; at++) {
    const word = row.words[at]!;
    const entry = vocabulary.verbForms.get(word);
    const before = row.tokens[at - 1]!;
    if (entry?.kind !== 'cook' || entry.method === null || entry.verb !== word || before.kind !== 'word' || notAFood.has(before.word) || vocabulary.adverbs.has(before.word)) continue;
    const next = row.words[at + 1];
    if (next === undefined || objects.has(next) || row.tokens[at + 1]!.kind !== 'word') return at;
  }
  return -1;
}

/** "frobnicate the potatoes": at the head of an instruction, before "the", stands a verb, known or not. */
function unknownVerbAt(row: Row, at: number, vocabulary: ReaderVocabulary): boolean {
  const word = row.words[at]!;
  const next = row.words[at + 1];
  if (row.tokens[at]!.kind !== 'word' || (next !== 'the' && next !== 'them' && next !== 'it') || word.length < 3) return false;
  if (vocabulary.notVerbs.has(word) || vocabulary.verbForms.has(word) || passing.has(word) || openers.has(word) || vocabulary.adverbs.has(word) || /(?:ing|ly|ed)$/.test(word)) return false;
  const previous = row.words[at - 1];
  return previous === undefined || previous === 'and' || previous === ',' || previous === 'then';
}

const sentenceEnds = new Set(['.', '!', ';', '•']);

/** The instructions of a step in order; a sentence without a known verb keeps its first word as verb, entry null. */
export function readClauses(row: Row, vocabulary: ReaderVocabulary): Clause[] {
  const clauses: Clause[] = [];
  let from = 0;
  while (from < row.words.length) {
    let to = from;
    while (to < row.words.length && !(sentenceEnds.has(row.words[to]!) && row.tokens[to + 1]?.spaced !== false)) to++;
    clauses.push(...sentenceClauses(partOfRow(row, from, to), vocabulary));
    from = to + 1;
  }
  return clauses;
}

function sentenceClauses(row: Row, vocabulary: ReaderVocabulary): Clause[] {
  const starts: { at: number; entry: VerbEntry | null }[] = [];
  for (let at = 0; at < row.words.length; at++) {
    const entry = row.tokens[at]!.kind === 'word' ? verbAt(row, at, vocabulary) : null;
    if (!entry) {
      if (unknownVerbAt(row, at, vocabulary)) starts.push({ at, entry: null });
      continue;
    }
    const last = starts.at(-1);
    // "leave to simmer", "let it cool": one instruction, the second verb says what happens.
    if (last && letting.has(row.words[last.at]!) && at - last.at <= 3 && (row.words[at - 1] === 'to' || row.words[at - 1] === 'it' || row.words[at - 1] === 'them' || /ing$/.test(row.words[at]!))) last.entry = entry;
    else starts.push({ at, entry });
  }
  const behind = openers.has(row.words[0] ?? '') && starts.length > 0 ? -1 : verbBehindFood(row, starts[0]?.at ?? row.words.length, vocabulary);
  if (behind > 0) starts.unshift({ at: behind, entry: vocabulary.verbForms.get(row.words[behind]!)! });
  if (starts.length === 0) {
    // "In a large pan the onions go soft": the verb may stand behind an opening phrase.
    if (openers.has(row.words[0] ?? '')) {
      const at = row.words.findIndex((_, n) => n > 1 && vocabulary.verbForms.get(row.words[n]!)?.verb === row.words[n] && !vocabulary.alsoNouns.has(row.words[n]!));
      if (at > 0) starts.push({ at, entry: vocabulary.verbForms.get(row.words[at]!)! });
    }
  }
  if (starts.length === 0) {
    const at = row.words.findIndex((word, n) => row.tokens[n]!.kind === 'word' && !passing.has(word));
    const word = row.words[at];
    return word !== undefined && row.words.length > 1 && !vocabulary.notVerbs.has(word) ? [{ row, verb: word, entry: null }] : word !== undefined ? [{ row, verb: '', entry: null }] : [];
  }
  return starts.map(({ at, entry }, n) => {
    const begin = n === 0 ? 0 : at;
    const end = starts[n + 1]?.at ?? row.words.length;
    return { row: partOfRow(row, begin, end), verb: entry?.verb ?? row.words[at]!, entry };
  });
}
