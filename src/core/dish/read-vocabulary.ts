import type { UnitTable } from '../quantity/index.ts';
import type { CookingMethod, Heat, LineRemark, PieceSize } from './recipe.ts';

/** What a verb of the kitchen does to food; `method` null where it cooks nothing ("stir"). */
export interface VerbEntry {
  readonly verb: string;
  readonly forms: readonly string[];
  readonly method: CookingMethod | null;
  readonly heat: Heat | null;
  readonly kind: 'cook' | 'add' | 'move' | 'remove' | 'prepare' | 'wait' | 'serve' | 'heat';
}

/** The compiled data/words/reader.yaml and method.yaml: the words by which a recipe is read. */
export interface ReaderWords {
  readonly numbers: Readonly<Record<string, number>>;
  readonly roughNumbers: Readonly<Record<string, readonly [number, number, number]>>;
  readonly approximate: readonly string[];
  readonly sizes: Readonly<Record<string, PieceSize>>;
  readonly fills: Readonly<Record<string, 'scant' | 'level' | 'heaped'>>;
  readonly leadIns: readonly string[];
  readonly notAmounts: readonly string[];
  readonly notSizes: readonly string[];
  readonly joined: readonly string[];
  readonly pairs: readonly (readonly [string, string])[];
  readonly shorthand: Readonly<Record<string, string>>;
  readonly unitsByFood: readonly { readonly unit: string; readonly food: string; readonly means: string }[];
  readonly sharedHeads: readonly string[];
  readonly attributes: readonly string[];
  readonly qualifiers: readonly string[];
  readonly making: readonly string[];
  readonly makingWith: Readonly<Record<string, readonly string[]>>;
  readonly adverbs: readonly string[];
  readonly remarks: Readonly<Record<string, LineRemark>>;
  /** Parts of a dish that may stand before a colon on an ingredient line. */
  readonly parts: readonly string[];
  readonly headings: { readonly ingredients: readonly string[]; readonly method: readonly string[]; readonly other: readonly string[] };
  readonly timings: readonly string[];
  readonly servings: { readonly before: readonly string[]; readonly after: readonly string[] };
  readonly methodStarts: readonly string[];
  /** Words that only Americans use for it. */
  readonly american: readonly string[];
  readonly sectionStarts: readonly string[];
  readonly verbs: readonly VerbEntry[];
  readonly vessels: Readonly<Record<string, readonly string[]>>;
  readonly everything: readonly string[];
  readonly pronouns: readonly string[];
  readonly notVerbs: readonly string[];
  readonly heatWords: Readonly<Record<string, Heat>>;
  readonly groups: Readonly<Record<string, readonly string[]>>;
  /** Minutes in one. */
  readonly durations: Readonly<Record<string, number>>;
  /** Degrees Celsius of a conventional oven. */
  readonly gasMarks: Readonly<Record<string, number>>;
  /** A fan oven set to x does as a conventional one at x + this, degrees Celsius. */
  readonly fanOffset: number;
  readonly ovenWords: Readonly<Record<string, number>>;
  readonly alsoNouns: readonly string[];
}

/** The words in the shape the reader looks them up in. Made once. */
export interface ReaderVocabulary {
  readonly units: UnitTable;
  readonly words: ReaderWords;
  /** Says whether these words name a food; it decides doubtful splits. Null when no food list is at hand. */
  readonly isFood: ((phrase: string) => boolean) | null;
  readonly approximate: PhraseSet;
  readonly notAmounts: PhraseSet;
  readonly notSizes: PhraseSet;
  readonly leadIns: PhraseSet;
  readonly qualifiers: PhraseSet;
  readonly methodStarts: PhraseSet;
  readonly american: PhraseSet;
  readonly remarks: PhraseSet;
  readonly sizes: PhraseSet;
  readonly adverbs: ReadonlySet<string>;
  readonly making: ReadonlySet<string>;
  readonly attributes: ReadonlySet<string>;
  readonly sharedHeads: ReadonlySet<string>;
  readonly verbForms: ReadonlyMap<string, VerbEntry>;
  readonly notVerbs: ReadonlySet<string>;
  readonly alsoNouns: ReadonlySet<string>;
  /** Words for vessels, and the kind of each. */
  readonly vessels: PhraseSet;
  readonly vesselKinds: ReadonlyMap<string, string>;
  readonly heatWords: PhraseSet;
  readonly everything: PhraseSet;
}

/** Phrases that can be looked for at a place in a row of words. */
export interface PhraseSet {
  /** How many words from `at` on make the longest phrase of the set; 0 for none. */
  longestAt(words: readonly string[], at: number): number;
}

export function phraseSet(phrases: Iterable<string>): PhraseSet {
  const set = new Set(phrases);
  const lengths = new Map<string, number>();
  for (const phrase of set) {
    const parts = phrase.split(' ');
    const first = parts[0]!;
    lengths.set(first, Math.max(lengths.get(first) ?? 0, parts.length));
  }
  return {
    longestAt(words, at) {
      const first = words[at];
      if (first === undefined) return 0;
      const most = lengths.get(first);
      if (most === undefined) return 0;
      for (let n = Math.min(most, words.length - at); n > 1; n--) if (set.has(words.slice(at, at + n).join(' '))) return n;
      return set.has(first) ? 1 : 0;
    },
  };
}

/** Remembers the last answers: the same words are asked about several times while a line is read. */
function remembered(isFood: (phrase: string) => boolean): (phrase: string) => boolean {
  const known = new Map<string, boolean>();
  return (phrase) => {
    const before = known.get(phrase);
    if (before !== undefined) return before;
    if (known.size >= mostRemembered) known.clear();
    const answer = isFood(phrase);
    known.set(phrase, answer);
    return answer;
  };
}

const mostRemembered = 5_000;

export function readerVocabulary(units: UnitTable, words: ReaderWords, isFood: ((phrase: string) => boolean) | null = null): ReaderVocabulary {
  return {
    units,
    words,
    isFood: isFood && remembered(isFood),
    approximate: phraseSet(words.approximate),
    notAmounts: phraseSet(words.notAmounts),
    notSizes: phraseSet(words.notSizes),
    leadIns: phraseSet(words.leadIns),
    qualifiers: phraseSet(words.qualifiers),
    methodStarts: phraseSet(words.methodStarts),
    american: phraseSet(words.american),
    remarks: phraseSet(Object.keys(words.remarks)),
    sizes: phraseSet(Object.keys(words.sizes)),
    adverbs: new Set(words.adverbs),
    making: new Set(words.making),
    attributes: new Set(words.attributes),
    sharedHeads: new Set(words.sharedHeads),
    verbForms: new Map(words.verbs.flatMap((verb) => [verb.verb, ...verb.forms].map((form) => [form, verb] as const))),
    notVerbs: new Set(words.notVerbs),
    alsoNouns: new Set(words.alsoNouns),
    vessels: phraseSet(Object.values(words.vessels).flat()),
    vesselKinds: new Map(Object.entries(words.vessels).flatMap(([kind, names]) => names.map((name) => [name, kind] as const))),
    heatWords: phraseSet(Object.keys(words.heatWords)),
    everything: phraseSet(words.everything),
  };
}
