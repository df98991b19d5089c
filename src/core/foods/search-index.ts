import type { FoodTable } from './food-table.ts';
import type { Food } from './food.ts';
import type { KitchenEntry } from './kitchen-name.ts';
import { isSlipOf } from './edit-distance.ts';
import { foldWord, nameWordsOf } from './word-forms.ts';

/** One thing that can be found: a name of a kitchen entry, or a table food. */
export interface SearchDocument {
  readonly entry: KitchenEntry | null;
  readonly food: Food | null;
  readonly name: string;
  /** How many words its name has. */
  readonly length: number;
}

/**
 * Where a word stands: document numbers times four, plus the place of the word in the name
 * (0 the part that names the food, 1 right behind it, 2 later). One number a place keeps the
 * index small and quick to make.
 */
export type Posting = readonly number[];

/** What a word counts at each place. */
export const placeWeights: readonly number[] = [1.3, 1, 0.75];

export interface SearchIndex {
  readonly documents: readonly SearchDocument[];
  posting(word: string): Posting | null;
  /** What is added to a document's score whatever word matches: kitchen names and plain foods above made-up ones. */
  prior(document: number): number;
  /** Words that begin with these letters, at most `limit`. */
  withPrefix(prefix: string, limit: number): readonly string[];
  /** Words that a typed word can be a slip of. */
  slipsOf(word: string): readonly string[];
}

// Groups that a cook seldom means when she types a food; a search for them by name still finds them.
const made = /baby foods|fast foods|restaurant|meals and entrees|snacks|breakfast cereals|indigenous|soups, sauces|sausages|baked products|sweets|beverages/i;
const brand = /\b[A-Z][A-Z'&]{3,}\b/;

const groupLosses = new Map<string, number>();

function groupLoss(group: string): number {
  const there = groupLosses.get(group);
  if (there !== undefined) return there;
  const loss = (made.test(group) ? 1.2 : 0) + (/Baby foods|Fast foods|Restaurant/.test(group) ? 1 : 0);
  groupLosses.set(group, loss);
  return loss;
}

const priorOfName = 3;
const priorOfOtherName = 2.8;

/** What a table food starts with: raw and short names above, brands, ready meals and long names below. */
function priorOf(food: Food): number {
  let prior = 0;
  if (food.table === 'own') prior += 4;
  if (/\braw\b|\bfresh\b|\bdried\b/.test(food.name)) prior += 0.6;
  prior -= groupLoss(food.group);
  if (brand.test(food.name)) prior -= 1.2;
  return prior - Math.min(1.5, 0.1 * food.name.split(',').length);
}

// In these the first word is a class, and the next one already names the food ("Nuts, almonds", "Fish, trout, raw").
const classWords = /^(Nuts|Seeds|Fish|Spices|Beans|Cheese|Oil|Game meat|Crustaceans|Mollusks|Beverages|Snacks|Soup|Squash|Peppers|Mushrooms|Milk|Alcoholic beverage|Babyfood|Candies)\b/;

/** The postings of every kitchen name and every food name of the tables. */
export function buildSearchIndex(entries: readonly KitchenEntry[], table: FoodTable): SearchIndex {
  const documents: SearchDocument[] = [];
  const postings = new Map<string, number[]>();
  const add = (document: SearchDocument, words: readonly string[], firstPart: number): void => {
    const number = documents.length;
    documents.push(document);
    for (let i = 0; i < words.length; i++) {
      const word = words[i] ?? '';
      const coded = number * 4 + (i < firstPart ? 0 : i < firstPart + 2 ? 1 : 2);
      const there = postings.get(word);
      if (!there) postings.set(word, [coded]);
      else if (((there[there.length - 1] ?? -4) >> 2) !== number) there.push(coded);
    }
  };
  for (const entry of entries) {
    for (const name of [entry.name, ...entry.also]) {
      const words = nameWordsOf(name).map(foldWord);
      add({ entry, food: null, name, length: words.length }, words, words.length);
    }
  }
  for (const food of table.foods) {
    const comma = food.name.indexOf(',');
    const words = nameWordsOf(food.name).map(foldWord);
    const first = comma < 0 ? words.length : nameWordsOf(food.name.slice(0, comma)).length + (classWords.test(food.name) ? 1 : 0);
    add({ entry: null, food, name: food.name, length: words.length }, words, first);
  }
  const vocabulary = [...postings.keys()].sort();
  const byStart = new Map<string, string[]>();
  for (const word of vocabulary) {
    if (word.length < 4) continue;
    const start = word[0] ?? '';
    const there = byStart.get(start);
    if (there) there.push(word);
    else byStart.set(start, [word]);
  }
  const firstAtLeast = (text: string): number => {
    let low = 0;
    let high = vocabulary.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((vocabulary[middle] ?? '') < text) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  const priors = new Map<number, number>();
  return {
    documents,
    posting: (word) => postings.get(word) ?? null,
    prior(number) {
      const there = priors.get(number);
      if (there !== undefined) return there;
      const document = documents[number];
      const prior = document?.food ? priorOf(document.food) : document?.name === document?.entry?.name ? priorOfName : priorOfOtherName;
      priors.set(number, prior);
      return prior;
    },
    withPrefix(prefix, limit) {
      const found: string[] = [];
      for (let i = firstAtLeast(prefix); i < vocabulary.length && found.length < limit; i++) {
        const word = vocabulary[i] ?? '';
        if (!word.startsWith(prefix)) break;
        found.push(word);
      }
      return found;
    },
    slipsOf(word) {
      const near: { word: string; distance: number }[] = [];
      for (const start of new Set([word[0] ?? '', word[1] ?? ''])) {
        for (const candidate of byStart.get(start) ?? []) {
          const distance = isSlipOf(word, candidate);
          if (distance !== null) near.push({ word: candidate, distance });
        }
      }
      const least = near.reduce((min, n) => Math.min(min, n.distance), 9);
      return near.filter((n) => n.distance === least).map((n) => n.word);
    },
  };
}
