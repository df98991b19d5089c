import type { WordForms } from './forms.ts';
import type { Token } from './tokens.ts';
import { phraseWords, type Mention } from './word-lists.ts';

/** One step of a turn of phrase (the marks are explained in data/statements/words/patterns.yaml). */
type Step =
  | { readonly kind: 'lists'; readonly lists: ReadonlySet<string>; readonly may: boolean }
  /** Alternatives by their first word: the words that must follow it. */
  | { readonly kind: 'words'; readonly options: ReadonlyMap<string, readonly (readonly string[])[]>; readonly may: boolean }
  | { readonly kind: 'number' }
  | { readonly kind: 'gap'; readonly most: number; readonly overCommas: boolean };

export interface PhrasePattern {
  readonly class: string;
  readonly steps: readonly Step[];
  /** Step at which the span begins and the one before which it ends. */
  readonly from: number;
  readonly needs: string | null;
}

function byFirstWord(options: readonly (readonly string[])[]): Map<string, (readonly string[])[]> {
  const map = new Map<string, (readonly string[])[]>();
  for (const [first = '', ...rest] of options) map.set(first, [...(map.get(first) ?? []), rest]);
  return map;
}

/** Reads a turn of phrase; throws on a mark that it does not know. */
export function readPattern(text: string, forms: WordForms): { steps: Step[]; from: number } {
  const steps: Step[] = [];
  let from = 0;
  for (const part of text.split(/(~~?\d+|\{[^}]*\}|#|\s\+\s|\s\?(?=\s|$)|<)/)) {
    const bit = part.trim();
    if (bit === '' || bit === '+') continue;
    if (bit === '<') from = steps.length;
    else if (bit === '#') steps.push({ kind: 'number' });
    else if (bit === '?') {
      const last = steps.at(-1);
      if (last && (last.kind === 'words' || last.kind === 'lists')) steps[steps.length - 1] = { ...last, may: true };
    } else if (/^~/.test(bit)) steps.push({ kind: 'gap', most: Number(bit.replace(/~/g, '')), overCommas: bit.startsWith('~~') });
    else if (bit.startsWith('{')) steps.push({ kind: 'lists', lists: new Set(bit.slice(1, -1).split('|')), may: false });
    else steps.push({ kind: 'words', options: byFirstWord(bit.split('|').filter((o) => o.trim() !== '').map((o) => phraseWords(o, forms))), may: false });
  }
  return { steps, from };
}

/** Tokens of a sentence with everything that the matchers look at. */
export interface ReadSentence {
  readonly tokens: readonly Token[];
  readonly mentions: readonly (readonly Mention[])[];
  /** Tokens that end a clause: a gap may not pass them. */
  readonly breaks: readonly boolean[];
}

const isComma = (token: Token | undefined): boolean => token?.word === ',';

function wordsAt(sentence: ReadSentence, at: number, option: readonly string[]): boolean {
  return option.every((word, i) => sentence.tokens[at + i]?.forms.includes(word) === true);
}

/** Where a step may end when it begins at `at`. */
function stepEnds(step: Step, sentence: ReadSentence, at: number): number[] {
  switch (step.kind) {
    case 'number':
      return sentence.tokens[at]?.kind === 'number' ? [at + 1] : [];
    case 'lists': {
      const ends: number[] = step.may ? [at] : [];
      for (const m of sentence.mentions[at] ?? []) if (step.lists.has(m.list) && !ends.includes(m.end)) ends.push(m.end);
      return ends.length > 1 ? ends.sort((a, b) => b - a) : ends;
    }
    case 'words': {
      const ends: number[] = step.may ? [at] : [];
      for (const form of sentence.tokens[at]?.forms ?? []) {
        for (const rest of step.options.get(form) ?? []) if (wordsAt(sentence, at + 1, rest) && !ends.includes(at + 1 + rest.length)) ends.push(at + 1 + rest.length);
      }
      return ends.length > 1 ? ends.sort((a, b) => b - a) : ends;
    }
    case 'gap': {
      const ends = [at];
      for (let i = at; i < sentence.tokens.length && ends.length <= step.most; i++) {
        if (sentence.breaks[i] || (isComma(sentence.tokens[i]) && !step.overCommas)) break;
        ends.push(i + 1);
      }
      return ends;
    }
  }
}

function matchFrom(pattern: PhrasePattern, sentence: ReadSentence, at: { step: number; token: number; spanFrom: number }): { start: number; end: number } | null {
  const step = pattern.steps[at.step];
  const spanFrom = at.step === pattern.from ? at.token : at.spanFrom;
  if (step === undefined) return { start: spanFrom, end: at.token };
  const ends = stepEnds(step, sentence, at.token);
  const last = at.step === pattern.steps.length - 1;
  for (const end of last && step.kind === 'gap' ? ends.reverse() : ends) {
    const found = matchFrom(pattern, sentence, { step: at.step + 1, token: end, spanFrom });
    if (found) return found;
  }
  return null;
}

/** The stretch of tokens that a turn of phrase takes when it begins at a token, or null. */
export function matchPattern(pattern: PhrasePattern, sentence: ReadSentence, at: number): { start: number; end: number } | null {
  const found = matchFrom(pattern, sentence, { step: 0, token: at, spanFrom: at });
  return found && found.end > found.start ? found : null;
}

/** What a turn of phrase can begin with: words, lists, or a number. */
export function openings(pattern: PhrasePattern): { words: string[]; lists: string[]; number: boolean } {
  const [first] = pattern.steps;
  if (first?.kind === 'words') return { words: [...first.options.keys()], lists: [], number: false };
  if (first?.kind === 'lists') return { words: [], lists: [...first.lists], number: false };
  return { words: [], lists: [], number: first?.kind === 'number' };
}
