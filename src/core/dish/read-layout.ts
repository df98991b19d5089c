import type { Span, StatedServings } from './recipe.ts';
import { readAmount } from './read-amount.ts';
import { readPartOf } from './read-items.ts';
import { readServings } from './read-servings.ts';
import { readSentences, readTextLines, type TextLine } from './read-text-lines.ts';
import { readTokens, type Row } from './read-tokens.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

/** What each stretch of the text is taken for, before it is read closely. */
export interface Layout {
  readonly title: Span | null;
  readonly servings: StatedServings | null;
  readonly ingredients: readonly (Span & { readonly section: string | null })[];
  readonly steps: readonly (Span & { readonly section: string | null })[];
  /** How many lists of ingredients are announced: more than one may be more than one recipe. */
  readonly lists: number;
  /** Timings, notes and other lines that are neither. */
  readonly leftOut: readonly Span[];
}

type Mode = 'start' | 'guess' | 'ingredients' | 'method' | 'other';

const openers = ['then', 'meanwhile', 'once', 'when', 'while', 'after', 'next', 'finally', 'first', 'firstly', 'lastly', 'now', 'in', 'on', 'using', 'with', 'carefully', 'gently', 'gradually', 'slowly', 'to', 'if', 'for', 'lightly', 'finely', 'thinly', 'roughly', 'just', 'before', 'quickly', 'as'];
const objects = ['the', 'a', 'an', 'in', 'into', 'with', 'until', 'and', 'to', 'for', 'on', 'over', 'it', 'them', 'all', 'everything', 'your', 'together', 'up', 'off', 'half', 'some', 'oven', 'at', 'through', 'well', 'this', 'out', 'down', 'each', 'any', 'immediately', 'aside', 'from', 'under', ',', 'remaining', 'hot', 'gently'];

/** Whether a line tells her to do something. */
export function looksLikeMethod(row: Row, vocabulary: ReaderVocabulary): boolean {
  if (beginsAmountOrPart(row, vocabulary)) return false;
  let at = 0;
  const opened = openers.includes(row.words[0] ?? '');
  if (opened) {
    const limit = Math.min(row.words.length, 14);
    while (at < limit && !isVerb(row, at, vocabulary)) at++;
    return at < limit && row.words.length >= 5 && !readAmount(row, 0, vocabulary) && !(row.words[0] === 'for' && row.words.at(-1) === ':');
  }
  if (row.words.length > 2 && saysTime(row, vocabulary) && isVerb(row, 0, vocabulary)) return true;
  if (!isVerb(row, 0, vocabulary)) {
    if (row.words.length < 8 || readAmount(row, 0, vocabulary)?.article === false) return false;
    const last = row.words.at(-1);
    return (last === '.' || row.words.includes('until') || row.words.includes('minutes') || row.words.includes('mins')) && row.words.some((_, n) => isVerb(row, n, vocabulary));
  }
  return row.words.length === 1 ? false : objects.includes(row.words[1]!) || row.words.length >= 7 || row.words.at(-1) === '.';
}

/** "Zest and juice of one lime", "quarter of a cup", "slice of bread": a verb's word that begins an ingredient. */
function beginsAmountOrPart(row: Row, vocabulary: ReaderVocabulary): boolean {
  if (row.words[1] === 'of' || readPartOf(row, 0) !== null) return true;
  return ['quarter', 'half'].includes(row.words[0] ?? '') && (vocabulary.units.spelled(row.words[1] ?? '') !== null || row.words[1] === 'a');
}

function isVerb(row: Row, at: number, vocabulary: ReaderVocabulary): boolean {
  const word = row.words[at];
  if (word === undefined) return false;
  const two = `${word} ${row.words[at + 1] ?? ''}`;
  return vocabulary.verbForms.get(word)?.verb === word || vocabulary.verbForms.get(two)?.kind === 'cook';
}

/** "25 min" somewhere in the row. */
const saysTime = (row: Row, vocabulary: ReaderVocabulary): boolean => row.tokens.some(({ kind }, at) => kind === 'number' && Object.hasOwn(vocabulary.words.durations, row.words[at + 1] ?? '') && row.words[at + 1]!.length > 1);

/** Of a line that is a heading, or begins with one: "Ingredients: …", "Ingredients (serves 4)". */
function headingOf(row: Row, vocabulary: ReaderVocabulary): Mode | null {
  return heading(row, vocabulary) ?? leadingHeading(row, vocabulary)?.mode ?? (row.tokens.length < 12 && row.words[0] === 'ingredients' && (row.words[1] === '(' || row.words[1] === '-' || row.words[1] === 'for') ? 'ingredients' : null);
}

const plainWords = (row: Row): string => row.tokens.filter(({ kind }) => kind === 'word').map(({ word }) => word).join(' ');

function heading(row: Row, vocabulary: ReaderVocabulary): Mode | null {
  const { headings } = vocabulary.words;
  const bracket = row.words.indexOf('(');
  const bare = bracket > 0 ? { ...row, tokens: row.tokens.slice(0, bracket) } : row;
  const text = plainWords(bare).replace(/(?: x)+$/, ''); // "INGREDIENTS 1x 2x"
  if (row.tokens.length > 12 || (row.tokens.length > 7 && bracket < 0 && !row.words.includes('x'))) return null;
  if (headings.ingredients.includes(text)) return 'ingredients';
  if (headings.method.includes(text)) return 'method';
  return headings.other.includes(text) ? 'other' : null;
}

/** "Method: Heat the oil …": the heading and where the rest begins. */
function leadingHeading(row: Row, vocabulary: ReaderVocabulary): { mode: Mode; rest: number } | null {
  const colon = row.words.indexOf(':');
  if (colon < 1 || colon > 4 || colon + 1 >= row.words.length) return null;
  const mode = heading({ ...row, tokens: row.tokens.slice(0, colon), words: row.words.slice(0, colon) }, vocabulary);
  return mode === null ? null : { mode, rest: row.tokens[colon + 1]!.start };
}

function isTiming(row: Row, vocabulary: ReaderVocabulary): boolean {
  for (let n = Math.min(3, row.words.length); n > 0; n--) {
    if (!vocabulary.words.timings.includes(row.words.slice(0, n).join(' '))) continue;
    const next = row.tokens[n];
    return next !== undefined && (next.word === ':' || next.kind === 'number' || (next.kind === 'mark' && row.tokens[n + 1]?.kind === 'number'));
  }
  return false;
}

/** "Topping (optional)" behind a blank line, before a line with an amount: a heading when no word of it is a food. */
function setOff(line: TextLine, row: Row, next: Row | null, vocabulary: ReaderVocabulary): boolean {
  if (!vocabulary.isFood || !line.blankBefore || line.marked || next === null || readAmount(next, 0, vocabulary) === null || readAmount(row, 0, vocabulary) !== null) return false;
  const bracket = row.words.indexOf('(');
  const words = bracket < 0 ? row.words : row.words.slice(0, bracket);
  return words.length > 0 && words.length < 4 && words.every((word) => !vocabulary.isFood!(word)) && !vocabulary.isFood(words.join(' '));
}

/** "For the dumplings:", "Sauce:", "# Sauce": the section's name, or null. */
function sectionName(line: TextLine, row: Row, next: Row | null, vocabulary: ReaderVocabulary): string | null {
  const colon = row.words.at(-1) === ':';
  const start = vocabulary.words.sectionStarts.find((phrase) => `${row.words.slice(0, phrase.split(' ').length).join(' ')}` === phrase);
  const amount = readAmount(row, 0, vocabulary);
  const words = row.words.length - (colon ? 1 : 0);
  if (vocabulary.remarks.longestAt(row.words, 0) === words && words > 1) return row.text.slice(line.start, row.tokens[words - 1]!.end); // "To serve"
  if (words === 0 || words > 7 || row.words.includes(',')) return null;
  const shout = row.tokens.every(({ text }) => text === text.toUpperCase()) && /\p{Lu}{3}/u.test(row.text.slice(line.start, line.end)) && next !== null && readAmount(next, 0, vocabulary) !== null && line.blankBefore;
  if (!(colon && (!amount || start)) && !(start && words <= 6 && !amount && start !== 'for') && !line.hash && !line.strong && !shout && !setOff(line, row, next, vocabulary)) return null;
  const from = start ? start.split(' ').length : 0;
  const first = row.tokens[from];
  const bracket = row.words.indexOf('(');
  const last = row.tokens[bracket > from ? bracket - 1 : row.tokens.length - (colon ? 2 : 1)];
  return first && last && last.end > first.start ? row.text.slice(first.start, last.end).trim() : null;
}

/** In a long dictated sentence: the token from which it tells what to do ("so what you do is …", "then fry the onion"); -1 when it never does. */
function turnToMethod(row: Row, vocabulary: ReaderVocabulary): number {
  if (row.words.length < 25) return -1;
  for (let at = 4; at < row.words.length; at++) {
    if (vocabulary.methodStarts.longestAt(row.words, at) > 0) return at;
    const entry = vocabulary.verbForms.get(row.words[at + 1] ?? '');
    const told = ['you', 'i', 'then', 'we'].includes(row.words[at]!) && entry?.verb === row.words[at + 1] && (entry?.kind === 'cook' || entry?.kind === 'heat') && objects.includes(row.words[at + 2] ?? '');
    if (told) return at;
  }
  return -1;
}

const fillers = new Set(['um', 'uh', 'er', 'erm', 'and', 'then', 'so', 'okay', 'ok', 'now', 'right', ',']);
const afterthoughts = ['oh and', 'oh yeah and', 'oh yes and', 'oh plus', 'oh i forgot', 'i forgot', 'i forgot to say', 'forgot to say', 'i nearly forgot'];

/** At the end of a dictated method: the token from which another ingredient is remembered ("that's it oh and pepper"); -1 when none is. */
function afterthought(row: Row, vocabulary: ReaderVocabulary): number {
  for (let at = row.words.length - 2; at > 10; at--) {
    const phrase = afterthoughts.find((words) => row.words.slice(at, at + words.split(' ').length).join(' ') === words);
    const next = phrase === undefined ? -1 : at + phrase.split(' ').length;
    if (next < 0 || next >= row.words.length || row.words.length - next > 12) continue;
    return isVerb(row, next, vocabulary) || ['you', 'i', 'we', 'serve'].includes(row.words[next]!) ? -1 : next;
  }
  return -1;
}

/** A long sentence that names ingredients first and then tells what to do. */
function dictates(row: Row, vocabulary: ReaderVocabulary): boolean {
  const turn = turnToMethod(row, vocabulary);
  return turn > 0 && !looksLikeMethod({ ...row, tokens: row.tokens.slice(0, turn), words: row.words.slice(0, turn) }, vocabulary);
}

/** All in capitals, no figures: a heading of a part of the method. */
const shouts = (row: Row): boolean => row.tokens.every(({ kind, text }) => kind !== 'number' && text === text.toUpperCase()) && row.words.some((word) => word.length > 3);

/** "15 minutes" and no more. */
const isOnlyTime = (row: Row, vocabulary: ReaderVocabulary): boolean => row.words.length <= 5 && saysTime(row, vocabulary) && row.tokens.every(({ kind, word }) => kind !== 'word' || Object.hasOwn(vocabulary.words.durations, word) || ['about', 'to', 'and'].includes(word));

/** Sorts the lines of a recipe. Works without headings: then every line is judged by itself. */
export function readLayout(text: string, vocabulary: ReaderVocabulary): Layout {
  const lines = readTextLines(text);
  const rows = lines.map((line) => readTokens(text, line.end - line.start > longestLine ? { start: line.start, end: line.start + longestLine } : line));
  const ingredients: (Span & { section: string | null; marked: boolean })[] = [];
  let marked = false;
  const steps: { start: number; end: number; section: string | null; open: boolean }[] = [];
  const leftOut: Span[] = [];
  let title: Span | null = null;
  let titleMarked = false;
  let servings: StatedServings | null = null;
  let mode: Mode = 'start';
  let section: string | null = null;

  const listHead = rows.findIndex((row) => headingOf(row, vocabulary) === 'ingredients');
  const methodHead = rows.findIndex((row) => headingOf(row, vocabulary) === 'method');
  /** Lines before the heading "Ingredients" (menus, stories) are no ingredients, unless the method stands there. */
  const announced = listHead > 0 && !(methodHead >= 0 && methodHead < listHead) ? listHead : -1;

  const step = (span: Span): void => void steps.push({ start: span.start, end: span.end, section, open: !/[.!?:]\s*$/.test(text.slice(span.start, span.end)) });
  const ingredient = (span: Span): void => void ingredients.push({ start: span.start, end: span.end, section, marked });

  const takeSentences = (line: Span): void => {
    let told = false;
    let began = -1;
    servings ??= readServings(text, line, vocabulary)?.servings ?? null;
    for (let sentence of readSentences(text, line)) {
      let row = readTokens(text, sentence);
      if (row.tokens.length === 0) continue;
      const turn = told ? -1 : turnToMethod(row, vocabulary);
      if (turn > 0) {
        let last = turn - 1; // "a banana um and then"
        while (last > 0 && fillers.has(row.words[last]!)) last--;
        ingredient({ start: sentence.start, end: row.tokens[last]!.end });
        const late = afterthought(row, vocabulary);
        if (late > turn) ingredient({ start: row.tokens[late]!.start, end: row.tokens.at(-1)!.end });
        sentence = { start: row.tokens[turn]!.start, end: sentence.end };
        row = readTokens(text, sentence);
        told = true;
        began = sentence.start;
      }
      const method = looksLikeMethod(row, vocabulary) || (told && readAmount(row, 0, vocabulary) === null);
      if (method && began < 0) began = sentence.start;
      if (method) told = true;
      else if (told) continue;
      else ingredient(sentence);
    }
    servings ??= line.end - line.start > longestSaid ? (readServings(text, { start: line.end - longestSaid, end: line.end }, vocabulary)?.servings ?? null) : null; // "… feeds 4"
    if (began >= 0) step({ start: began, end: line.end });
  };

  lines.forEach((line, i) => {
    let row = rows[i]!;
    marked = line.marked;
    let span: TextLine = line;
    if (row.tokens.length === 0) return;
    if (isTiming(row, vocabulary) && mode !== 'method') {
      servings ??= readServings(text, span, vocabulary)?.servings ?? null;
      leftOut.push({ start: line.start, end: line.end });
      return;
    }
    const served = (servings && (mode === 'method' || steps.length > 0)) || row.words.length > 30 || (steps.length > 0 && looksLikeMethod(row, vocabulary)) ? null : readServings(text, span, vocabulary);
    if (served && (served.whole || mode === 'start' || heading({ ...row, ...rowBefore(row, served.start) }, vocabulary))) {
      servings ??= served.servings;
      const before = rowBefore(row, served.start);
      const head = heading({ ...row, ...before }, vocabulary);
      if (head) {
        mode = head;
        section = null;
      } else if (!served.whole && title === null && before.tokens.some(({ kind }) => kind === 'word')) title = trimmed(text, { start: line.start, end: served.start });
      return;
    }
    const head = heading(row, vocabulary);
    if (head) {
      mode = head;
      section = null;
      return;
    }
    const leading = leadingHeading(row, vocabulary);
    if (leading) {
      mode = leading.mode;
      section = null;
      span = { ...line, start: leading.rest };
      row = readTokens(text, { start: span.start, end: Math.min(span.end, span.start + longestLine) });
    }
    if (mode === 'other') {
      leftOut.push({ start: span.start, end: span.end });
      return;
    }
    const amount = readAmount(row, 0, vocabulary);
    const method = looksLikeMethod(row, vocabulary);
    if (line.hash && !titleMarked && ((mode === 'start' && title === null) || i < announced)) {
      if (title) leftOut.push(title);
      title = { start: line.start, end: line.end };
      titleMarked = true;
      return;
    }
    const alone = i === 0 && !amount && (!line.marked || line.emojiOnly) && row.words.length <= 14 && !['.', ':'].includes(row.words.at(-1)!) && lines.length > 2 && (lines[1]!.blankBefore || readServings(text, lines[1]!, vocabulary) !== null || isTiming(rows[1]!, vocabulary) || heading(rows[1]!, vocabulary) !== null);
    if (mode === 'start' && title === null && (line.hash || alone || ((!amount || amount.article) && !method && row.words.length <= 14 && (!line.marked || (line.emojiOnly && i < announced)) && row.words.at(-1) !== ':' && lines.length > 1))) {
      title = { start: line.start, end: line.end };
      return;
    }
    const name = method && row.words.at(-1) !== ':' ? null : sectionName(line, row, rows[i + 1] ?? null, vocabulary);
    if (name !== null) {
      section = name;
      if (mode === 'start') mode = 'guess';
      return;
    }
    if (i < announced && (mode === 'start' || mode === 'guess')) {
      leftOut.push({ start: span.start, end: span.end });
      return;
    }
    if (mode === 'start') {
      if (!amount && !method && !line.marked && row.words.length > 14 && title !== null && lines.length > i + 1) {
        leftOut.push({ start: span.start, end: span.end });
        return;
      }
      mode = 'guess';
    }
    const previous = steps.at(-1);
    if (row.words.length <= 7 && !line.marked && shouts(row) && (method || mode === 'method')) {
      mode = 'method'; // "MARINATE THE CHICKEN"
      section = text.slice(span.start, span.end).trim();
      return;
    }
    if (mode === 'method') {
      if (isOnlyTime(row, vocabulary)) {
        leftOut.push({ start: span.start, end: span.end });
        return;
      }
      if (previous?.open && !line.marked && !line.blankBefore && /^\p{Ll}/u.test(text.slice(span.start, span.start + 2))) {
        previous.end = span.end;
        previous.open = !/[.!?:]\s*$/.test(text.slice(span.start, span.end));
      } else if (span.end > span.start) step(span);
      return;
    }
    if (mode === 'ingredients' && method && (line.number !== null || row.words.length >= 5)) {
      mode = 'method';
      step(span);
      return;
    }
    if (mode === 'guess' && previous?.open && steps.length > 0 && previous.end > (ingredients.at(-1)?.end ?? 0) && !amount && !line.marked && !line.blankBefore && /^\p{Ll}/u.test(text.slice(span.start, span.start + 2))) {
      previous.end = span.end;
      previous.open = !/[.!?:]\s*$/.test(text.slice(span.start, span.end));
      return;
    }
    const last = lines[i - 1];
    if (mode === 'guess' && previous && last && previous.end === last.end && !line.blankBefore && !amount && line.marked === last.marked) {
      step(span); // the block goes on telling
      return;
    }
    if (mode === 'guess' && row.words.length > 24 && dictates(readTokens(text, span), vocabulary)) {
      takeSentences(span);
      return;
    }
    if (mode === 'guess' && method && readSentences(text, span).length <= 1) step(span);
    else if (row.words.length > 24 || readSentences(text, span).length > 1) takeSentences(span);
    else ingredient(span);
  });
  const bulleted = ingredients.filter((line) => line.marked).length;
  const stray = bulleted < 3 || bulleted < 0.7 * ingredients.length ? [] : ingredients.filter((line) => !line.marked && isStray(text, line, vocabulary));
  leftOut.push(...stray.map(({ start, end }) => ({ start, end })));
  const lists = rows.filter((row) => headingOf(row, vocabulary) === 'ingredients').length;
  return { title, servings, ingredients: ingredients.filter((line) => !stray.includes(line)), steps, lists, leftOut };
}

/** Among bulleted lines one without a bullet, an amount or a known food: "Advertisement". */
function isStray(text: string, line: Span, vocabulary: ReaderVocabulary): boolean {
  const row = readTokens(text, { start: line.start, end: Math.min(line.end, line.start + longestLine) });
  return readAmount(row, 0, vocabulary) === null && !row.words.some((word) => vocabulary.isFood?.(word)) && (vocabulary.isFood !== null || row.words.length > 4);
}

/** Characters at the end of a message in which it may say for how many. */
const longestSaid = 40;
/** Characters of a line that decide what it is. */
const longestLine = 600;

function rowBefore(row: Row, start: number): { tokens: Row['tokens']; words: Row['words'] } {
  const tokens = row.tokens.filter((token) => token.end <= start);
  while (tokens.at(-1)?.kind === 'mark') tokens.pop();
  return { tokens, words: tokens.map(({ word }) => word) };
}

function trimmed(text: string, { start, end }: Span): Span {
  let to = end;
  while (to > start && /[\s(,;:|–—-]/.test(text[to - 1]!)) to--;
  return { start, end: to };
}
