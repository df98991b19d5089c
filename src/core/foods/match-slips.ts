import { isSlipInContext } from './edit-distance.ts';
import type { FoodIndex } from './match-index.ts';
import { colourWords, formOfWord, idleWords, phraseBreaks } from './match-words.ts';
import { foldWord } from './word-forms.ts';

const longestContextWord = 24;

/** Whether a word plainly needs no correcting; the tables' words are not asked, that index takes longest to make. */
export function isPlainlyKnown(word: string, index: FoodIndex): boolean {
  return index.isNameWord(word) || idleWords.has(word) || colourWords.has(word) || phraseBreaks.has(word) || formOfWord(word) !== null || index.targets(word).length > 0 || /\d/.test(word);
}

/** The words that a typed word can be a slip of beside its neighbours in some food's name; empty when no neighbour speaks for one. */
function inContext(words: readonly string[], at: number, index: FoodIndex): { word: string; distance: number }[] {
  const typed = words[at] ?? '';
  if (typed.length > longestContextWord) return [];
  const near = new Map<string, number>();
  for (const neighbour of [words[at - 1], words[at + 1]]) {
    if (neighbour === undefined) continue;
    for (const word of index.besides(neighbour)) {
      const distance = isSlipInContext(typed, word);
      if (distance !== null && distance > 0) near.set(word, distance);
    }
  }
  const least = Math.min(...near.values());
  return [...near].filter(([, distance]) => distance === least).map(([word, distance]) => ({ word, distance }));
}

/**
 * Words with slips corrected: first as the neighbours suggest ("frsh yeast"), then where exactly
 * one name word is near. A word that is known is never touched. Null when nothing was corrected.
 */
export function correctedWords(words: readonly string[], index: FoodIndex): { words: readonly string[]; slips: readonly (readonly [string, string])[] } | null {
  const slips: [string, string][] = [];
  const out = words.map((word, at) => {
    if (isPlainlyKnown(word, index)) return word;
    const context = inContext(words, at, index);
    const near = context.length > 0 ? context : index.slipsOf(word);
    const only = near[0];
    if (!only || near.length > 1 || (context.length === 0 && index.isKnownWord(word))) return word;
    const read = foldWord(only.word);
    slips.push([word, only.word]);
    return read;
  });
  return slips.length > 0 ? { words: out, slips } : null;
}
