import type { ReadSentence } from './phrase-pattern.ts';
import type { FoundClaim } from './relations.ts';
import type { SenseIndex } from './word-senses.ts';

/** What is known of a word beside the word itself, each as a short text: "list complaint", "kind illness", "turn disease". */
export type Sign = string;

/**
 * The signs at every word of a sentence: the lists of data/statements/words that it belongs to, the kinds of its everyday
 * senses, and the class that the turns of phrase and relations give it.
 */
export function signsOf(sentence: ReadSentence, senses: SenseIndex, turns: readonly FoundClaim[]): Sign[][] {
  const signs: Set<Sign>[] = sentence.tokens.map((token) => new Set([`is ${token.kind}${token.joined ? ' joined' : ''}`]));
  for (const here of sentence.mentions) for (const { list, start, end } of here) for (let i = start; i < end; i++) signs[i]?.add(i > start ? `list ${list} on` : `list ${list}`);
  sentence.tokens.forEach((token, i) => {
    for (const form of token.forms) for (const kind of senses.get(form) ?? []) signs[i]?.add(`kind ${kind}`);
  });
  const turnAt = sentence.tokens.map(() => 'none');
  for (const { class: kind, start, end } of turns) for (let i = start; i < end; i++) turnAt[i] = kind;
  return signs.map((here, i) => [...here, `turn ${turnAt[i] ?? 'none'}`]);
}
