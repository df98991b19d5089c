import type { WordForms } from './forms.ts';
import type { Token } from './tokens.ts';
import { phraseWords, type Mention } from './word-lists.ts';

/** One step of a turn of phrase (the marks are explained in data/statements/words/patterns.yaml). */
type Step =
  | { readonly kind: 'lists'; readonly lists: readonly string[]; readonly may: boolean }
  | { readonly kind: 'words'; readonly options: readonly (readonly string[])[]; readonly may: boolean }
  | { readonly kind: 'number' }
  | { readonly kind: 'gap'; readonly most: number; readonly overCommas: boolean };

export interface PhrasePattern {
  readonly class: string;
  readonly steps: readonly Step[];
  /** Step at which the span begins and the one before which it ends. */
  readonly from: number;
  readonly needs: string | null;
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
    else if (bit.startsWith('{')) steps.push({ kind: 'lists', lists: bit.slice(1, -1).split('|'), may: false });
    else steps.push({ kind: 'words', options: bit.split('|').filter((o) => o.trim() !== '').map((o) => phraseWords(o, forms)), may: false });
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
      const ends = (sentence.mentions[at] ?? []).filter((m) => step.lists.includes(m.list)).map((m) => m.end);
      return [...new Set(step.may ? [...ends, at] : ends)].sort((a, b) => b - a);
    }
    case 'words': {
      const ends = step.options.filter((option) => wordsAt(sentence, at, option)).map((option) => at + option.length);
      return [...new Set(step.may ? [...ends, at] : ends)].sort((a, b) => b - a);
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
  if (first?.kind === 'words') return { words: first.options.map((o) => o[0] ?? ''), lists: [], number: false };
  if (first?.kind === 'lists') return { words: [], lists: [...first.lists], number: false };
  return { words: [], lists: [], number: first?.kind === 'number' };
}
