import { isSlipInContext } from './edit-distance.ts';
import type { FoodIndex } from './match-index.ts';
import { abbreviations, colourWords, formOfWord, idleWords, phraseBreaks } from './match-words.ts';
import { foldWord, nameKey } from './word-forms.ts';

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

/** Whether all these words name one and the same food ("lentil", "lentille"). */
function sameFood(near: readonly { word: string }[], index: FoodIndex): boolean {
  const [first, ...rest] = near.map(({ word }) => index.targets(word));
  const target = first?.length === 1 ? first[0] : undefined;
  return target !== undefined && rest.every((others) => others.length === 1 && others[0]?.entry === target.entry && others[0]?.own === target.own);
}

const shortestAbbreviation = 3;
const leastCutOff = 2;

/** Whether a typed word is a word cut short ("tom", "brocc") or without its vowels ("stk", "wht"). */
function abbreviates(typed: string, word: string): boolean {
  if (typed.length < 2 || typed.length > word.length - leastCutOff) return false;
  if (word.startsWith(typed)) return true;
  const bones = (text: string): string => text.charAt(0) + text.slice(1).replace(/[aeiouy]/g, '').replace(/(.)\1/g, '$1');
  return bones(word) === bones(typed) || bones(word).replace(/[lrnc](?=[ktm])/g, '') === typed;
}

/** The word that an abbreviation stands for: one beside its neighbours, else the one food whose name begins so; null when it is in doubt. */
function unabbreviated(words: readonly string[], at: number, index: FoodIndex): string | null {
  const typed = words[at] ?? '';
  const beside = new Set<string>();
  for (const neighbour of [words[at - 1], words[at + 1]]) {
    if (neighbour !== undefined) for (const word of index.besides(neighbour)) if (abbreviates(typed, word)) beside.add(word);
  }
  if (beside.size === 1) return [...beside][0] ?? null;
  if (beside.size > 1 || typed.length < shortestAbbreviation) return null;
  const names = index.namesBeginning(typed);
  // The first name of a food goes before other foods' other names ("ginger" before "gingelly").
  const main = names.filter((name) => index.targets(name).some((t) => t.own !== null || (t.entry !== null && t.words.join('') === nameKey([t.entry.name]))));
  if (main.length === 1 && main[0] !== undefined) return abbreviates(typed, main[0]) ? main[0] : null;
  const one = names.length === 1 || sameFood(names.map((word) => ({ word })), index);
  return one ? (names.find((name) => abbreviates(typed, name)) ?? null) : null;
}

/** The word that a typed word is a slip of, first as the neighbours suggest ("frsh yeast"), then where exactly one name word is near; null when none is or it is in doubt. */
function unslipped(words: readonly string[], at: number, index: FoodIndex): string | null {
  const context = inContext(words, at, index);
  const typed = words[at] ?? '';
  // A short word that lacks letters is rather cut short than a slip ("anch" is no ancho).
  const all = context.length > 0 ? context : index.slipsOf(typed).filter(({ word }) => typed.length > 4 || word.length <= typed.length);
  // Among equally near words a whole name goes before a part of one.
  const names = all.filter(({ word }) => index.targets(word).length > 0);
  const near = names.length > 0 ? names : all;
  const one = near.length === 1 || sameFood(near, index);
  return one && (context.length > 0 || !index.isKnownWord(words[at] ?? '')) ? (near[0]?.word ?? null) : null;
}

export interface CorrectedWords {
  readonly words: readonly string[];
  readonly slips: readonly (readonly [typed: string, read: string])[];
}

/** The phrase with unknown words read as slips, and with them read as abbreviations; known words are never touched. */
export function correctedWords(words: readonly string[], index: FoodIndex): readonly CorrectedWords[] {
  const short = spelledOut(words);
  if (words.every((word) => isPlainlyKnown(word, index))) return short;
  const correct = (first: typeof unslipped, second: typeof unslipped): CorrectedWords => {
    const slips: [string, string][] = [];
    const out = words.map((word, at) => {
      if (isPlainlyKnown(word, index)) return word;
      const read = first(words, at, index) ?? second(words, at, index);
      if (read === null) return word;
      slips.push([word, read]);
      return foldWord(read);
    });
    return { words: out, slips };
  };
  const ways = [correct(unslipped, unabbreviated), correct(unabbreviated, unslipped)].filter((way) => way.slips.length > 0);
  return [...short, ...distinctWays(ways)];
}

/** The phrase with the usual abbreviations spelled out; none where no word of it is one. */
function spelledOut(words: readonly string[]): CorrectedWords[] {
  const slips: [string, string][] = [];
  const out = words.flatMap((word) => {
    const long = abbreviations.get(word);
    if (long) slips.push([word, long.join(' ')]);
    return long ?? [word];
  });
  return slips.length > 0 ? [{ words: out, slips }] : [];
}

function distinctWays(ways: CorrectedWords[]): CorrectedWords[] {
  return ways.length === 2 && ways[0]?.words.join(' ') === ways[1]?.words.join(' ') ? ways.slice(0, 1) : ways;
}
