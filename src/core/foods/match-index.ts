import type { FoodTable } from './food-table.ts';
import type { Food } from './food.ts';
import type { KitchenEntry } from './kitchen-name.ts';
import { isSlipOf } from './edit-distance.ts';
import { colourWords, formOfWord, formSpellings, idleWords, phraseBreaks } from './match-words.ts';
import { buildSearchIndex, type SearchIndex } from './search-index.ts';
import { foldWord, nameWordsOf } from './word-forms.ts';

/** What a name in the index leads to: a kitchen entry, or a food of her own. */
export interface NameTarget {
  readonly entry: KitchenEntry | null;
  readonly own: Food | null;
  /** The name as written in the data. */
  readonly name: string;
  readonly words: readonly string[];
  /** The words unfolded: they decide between foods whose names fold to the same ("chili powder", "chilli powder"). */
  readonly spelled: readonly string[];
}

/** All names a line is matched against. Built once from the kitchen names and the table; read only after that. */
export interface FoodIndex {
  readonly entries: readonly KitchenEntry[];
  readonly table: FoodTable;
  /** The targets of a joined key (see nameKey). */
  targets(key: string): readonly NameTarget[];
  readonly longestName: number;
  /** Whether a folded word is part of a kitchen name or one of her own. */
  isNameWord(word: string): boolean;
  /** Whether a folded word needs no correcting: a name word, an idle word or a word of the tables. */
  isKnownWord(word: string): boolean;
  /** Name words that a folded word can be a slip of, nearest first; words at the same distance come together. */
  slipsOf(word: string): readonly { word: string; distance: number }[];
  /** Words that stand beside a folded word in some name: "dried" beside "yeast". */
  besides(word: string): ReadonlySet<string>;
  /** The one-word names that begin with these letters, without those that are longer forms of one of them. */
  namesBeginning(start: string): readonly string[];
  /** The ranked search over every food; made on first use. */
  search(): SearchIndex;
}

const slipsKept = 5000;
const none: ReadonlySet<string> = new Set();

const foldedWords = (name: string): string[] => nameWordsOf(name).map(foldWord);

/** Builds the index. Her own foods (table `own`) are named by their own name only. */
export function buildFoodIndex(entries: readonly KitchenEntry[], table: FoodTable): FoodIndex {
  const byKey = new Map<string, NameTarget[]>();
  const nameWords = new Set<string>();
  const byStart = new Map<string, string[]>();
  const besides = new Map<string, Set<string>>();
  let longestName = 1;
  const add = (target: NameTarget): void => {
    if (target.words.length === 0) return;
    const key = target.words.join('');
    const there = byKey.get(key);
    if (!there) byKey.set(key, [target]);
    else if (!there.some((other) => other.entry === target.entry && other.own === target.own)) there.push(target);
    longestName = Math.max(longestName, target.words.length);
    target.words.forEach((word, i) => {
      nameWords.add(word);
      for (const other of [target.words[i - 1], target.words[i + 1]]) {
        if (other === undefined) continue;
        const there = besides.get(word);
        if (there) there.add(other);
        else besides.set(word, new Set([other]));
      }
    });
  };
  for (const entry of entries) for (const name of [entry.name, ...entry.also]) add({ entry, own: null, name, words: foldedWords(name), spelled: nameWordsOf(name) });
  for (const food of table.foods) if (food.table === 'own') add({ entry: null, own: food, name: food.name, words: foldedWords(food.name), spelled: nameWordsOf(food.name) });
  for (const word of new Set([...nameWords, ...formSpellings])) {
    const start = word[0] ?? '';
    const there = byStart.get(start);
    if (there) there.push(word);
    else byStart.set(start, [word]);
  }
  const slips = new Map<string, readonly { word: string; distance: number }[]>();
  // Only the words, without the search's postings: many runs need no more.
  let tableWords: Set<string> | null = null;
  const isTableWord = (word: string): boolean => (tableWords ??= new Set(table.foods.flatMap((food) => foldedWords(food.name)))).has(word);
  let search: SearchIndex | null = null;
  const index: FoodIndex = {
    entries,
    table,
    targets: (key) => byKey.get(key) ?? [],
    longestName: longestName + 1,
    isNameWord: (word) => nameWords.has(word),
    isKnownWord: (word) =>
      nameWords.has(word) || byKey.has(word) || idleWords.has(word) || colourWords.has(word) || phraseBreaks.has(word) || formOfWord(word) !== null || isTableWord(word),
    slipsOf(word) {
      const known = slips.get(word);
      if (known) return known;
      const near: { word: string; distance: number }[] = [];
      for (const start of new Set([word[0] ?? '', word[1] ?? ''])) {
        for (const candidate of byStart.get(start) ?? []) {
          const distance = isSlipOf(word, candidate);
          if (distance !== null && distance > 0) near.push({ word: candidate, distance });
        }
      }
      near.sort((a, b) => a.distance - b.distance || (a.word < b.word ? -1 : 1));
      const nearest = near.filter((n) => n.distance === near[0]?.distance);
      if (slips.size < slipsKept) slips.set(word, nearest);
      return nearest;
    },
    besides: (word) => besides.get(word) ?? none,
    namesBeginning(start) {
      const names = new Set<string>();
      for (const word of byStart.get(start[0] ?? '') ?? []) if (word.startsWith(start) && word.length > start.length && byKey.has(word)) names.add(word);
      return [...names].filter((name) => ![...names].some((other) => other !== name && name.startsWith(other)));
    },
    search: () => (search ??= buildSearchIndex(entries, table)),
  };
  return index;
}

/** Whether a phrase is the whole name of a kitchen entry or of one of her own foods. */
export function isFoodName(phrase: string, index: FoodIndex): boolean {
  return index.targets(foldedWords(phrase).join('')).length > 0;
}
