import type { WordForms } from './forms.ts';
import { openings, readPattern, type PhrasePattern } from './phrase-pattern.ts';
import type { SeenWords } from './tokens.ts';
import type { Claim } from './claim.ts';
import type { ClaimReader } from './claim-reader.ts';
import type { PolarityWeights } from './polarity-weights.ts';
import { phraseTree, type PhraseTree } from './word-lists.ts';
import type { SenseIndex } from './word-senses.ts';

/** The words of statements as data/statements/words has them. */
export interface StatementWords {
  readonly forms: WordForms;
  /** Lists by name; those of relations begin with `rel:`, nutrients with `nutrient`, polarity with `frame:`. */
  readonly lists: Readonly<Record<string, readonly string[]>>;
  /** Nutrient or substance by the phrase that names it. */
  readonly nutrientOf: Readonly<Record<string, string>>;
  readonly patterns: readonly { readonly class: string; readonly words: string; readonly needs?: string }[];
}

/** What is known of English words at large, and what was fitted; without it only turns of phrase, relations and the grammar of polarity are read. */
export interface WordGround {
  readonly senses: SenseIndex;
  readonly fitted: { readonly reader: ClaimReader; readonly polarity: PolarityWeights } | null;
}

/** The words made ready for reading. */
export interface StatementVocabulary {
  readonly words: StatementWords;
  readonly tree: PhraseTree;
  readonly byWord: ReadonlyMap<string, readonly PhrasePattern[]>;
  readonly byList: ReadonlyMap<string, readonly PhrasePattern[]>;
  readonly byNumber: readonly PhrasePattern[];
  readonly seen: SeenWords;
  readonly ground: WordGround;
  /** Claims of sentences read before, by their text; offsets within the sentence. */
  readonly read: Map<string, readonly Claim[]>;
}

const slippery = new Set(['condition', 'complaint', 'hormone', 'cycle', 'nutrient', 'low-state', 'good-state']);

/** Builds the trees and the index of turns of phrase; done once. */
export function statementVocabulary(words: StatementWords, ground: WordGround): StatementVocabulary {
  const byWord = new Map<string, PhrasePattern[]>();
  const byList = new Map<string, PhrasePattern[]>();
  const byNumber: PhrasePattern[] = [];
  const put = (map: Map<string, PhrasePattern[]>, key: string, pattern: PhrasePattern): void => {
    const there = map.get(key);
    if (there) {
      if (!there.includes(pattern)) there.push(pattern);
    } else map.set(key, [pattern]);
  };
  for (const row of words.patterns) {
    const pattern: PhrasePattern = { class: row.class, ...readPattern(row.words, words.forms), needs: row.needs ?? null };
    const opens = openings(pattern);
    opens.words.forEach((word) => put(byWord, word, pattern));
    opens.lists.forEach((list) => put(byList, list, pattern));
    if (opens.number) byNumber.push(pattern);
  }
  return { words, tree: phraseTree(words.lists, words.forms, slippery), byWord, byList, byNumber, seen: new Map(), ground, read: new Map() };
}
