import { oneSpelling, type WordForms } from './forms.ts';
import type { Token } from './tokens.ts';

/** A word or phrase of a list found in a text: tokens `start` to `end` (excluded). */
export interface Mention {
  readonly list: string;
  /** The phrase as the list has it. */
  readonly phrase: string;
  readonly start: number;
  readonly end: number;
}

interface Node {
  readonly next: Map<string, Node>;
  readonly ends: { list: string; phrase: string }[];
}

const node = (): Node => ({ next: new Map(), ends: [] });

/** All phrases of all lists in one tree, looked up by base form. */
export interface PhraseTree {
  readonly root: Node;
  /** Every single word of the lists. */
  readonly words: ReadonlySet<string>;
  /** Longer words with one letter taken out, for slips of the pen. */
  readonly slips: ReadonlyMap<string, string>;
}

const shortestForSlips = 7;

function withoutOneLetter(word: string): string[] {
  return Array.from(word, (_, i) => word.slice(0, i) + word.slice(i + 1));
}

/** Splits a phrase of a list as texts are split: at spaces, hyphens, and between letters and figures. */
export function phraseWords(phrase: string, forms: WordForms): string[] {
  return phrase.split(/[\s-]+|(?<=\p{L})(?=\p{N})|(?<=\p{N})(?=\p{L})/u).filter((w) => w !== '').map((w) => oneSpelling(w, forms));
}

export function phraseTree(lists: Readonly<Record<string, readonly string[]>>, forms: WordForms, slippery: ReadonlySet<string>): PhraseTree {
  const root = node();
  const words = new Set<string>();
  const slips = new Map<string, string>();
  for (const [list, phrases] of Object.entries(lists)) {
    for (const phrase of phrases) {
      let at = root;
      for (const word of phraseWords(phrase, forms)) {
        words.add(word);
        if (slippery.has(list) && word.length >= shortestForSlips) for (const slip of withoutOneLetter(word)) slips.set(slip, word);
        let next = at.next.get(word);
        if (!next) at.next.set(word, (next = node()));
        at = next;
      }
      at.ends.push({ list, phrase });
    }
  }
  return { root, words, slips };
}

/** The forms under which a token is looked up, with the word it may be a slip of. */
export function lookupForms(token: Token, tree: PhraseTree): readonly string[] {
  if (token.kind === 'mark') return [token.word];
  if (token.word.length < shortestForSlips || token.forms.some((form) => tree.words.has(form))) return token.forms;
  const near = tree.slips.get(token.word) ?? withoutOneLetter(token.word).map((slip) => (tree.words.has(slip) && slip.length >= shortestForSlips ? slip : tree.slips.get(slip))).find((word) => word !== undefined);
  return near === undefined || near[0] !== token.word[0] ? token.forms : [...token.forms, near];
}

function walk(formsOf: readonly (readonly string[])[], from: number, tree: PhraseTree): Mention[] {
  const found: Mention[] = [];
  let level: Node[] = [tree.root];
  for (let i = from; i < formsOf.length && level.length > 0; i++) {
    const reached: Node[] = [];
    for (const at of level) {
      for (const form of formsOf[i] ?? []) {
        const next = at.next.get(form);
        if (next) reached.push(next);
      }
    }
    level = reached;
    for (const at of level) for (const { list, phrase } of at.ends) found.push({ list, phrase, start: from, end: i + 1 });
  }
  return found;
}

/** Every mention of every list, by the token at which it begins. */
export function mentionsOf(tokens: readonly Token[], tree: PhraseTree): Mention[][] {
  const formsOf = tokens.map((token) => lookupForms(token, tree));
  return formsOf.map((_, i) => walk(formsOf, i, tree));
}
