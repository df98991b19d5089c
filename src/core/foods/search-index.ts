import type { FoodTable } from './food-table.ts';
import type { Food } from './food.ts';
import type { KitchenEntry } from './kitchen-name.ts';
import { isSlipOf } from './edit-distance.ts';
import { foldWord, plainText } from './word-forms.ts';

/** One thing that can be found: a name of a kitchen entry, or a table food. */
export interface SearchDocument {
  readonly entry: KitchenEntry | null;
  readonly food: Food | null;
  readonly name: string;
  /** How many words its name has. */
  readonly length: number;
  /** What is added to its score before any word matches: plain foods above made-up ones. */
  readonly prior: number;
}

/** Where a word stands: document numbers, with how near the start of the name the word is. */
export interface Posting {
  readonly documents: readonly number[];
  readonly weights: readonly number[];
}

export interface SearchIndex {
  readonly documents: readonly SearchDocument[];
  posting(word: string): Posting | null;
  /** Words that begin with these letters, at most `limit`. */
  withPrefix(prefix: string, limit: number): readonly string[];
  /** Words that a typed word can be a slip of. */
  slipsOf(word: string): readonly string[];
  hasTableWord(word: string): boolean;
}

// Groups that a cook seldom means when she types a food; a search for them by name still finds them.
const made = /baby foods|fast foods|restaurant|meals and entrees|snacks|breakfast cereals|indigenous|soups, sauces|sausages|baked products|sweets|beverages/i;
const brand = /\b[A-Z][A-Z'&]{3,}\b/;

/** What a table food starts with: raw and short names above, brands, ready meals and long names below. */
function priorOf(food: Food): number {
  let prior = 0;
  if (food.table === 'own') prior += 4;
  if (/\braw\b|\bfresh\b|\bdried\b/.test(food.name)) prior += 0.6;
  if (made.test(food.group)) prior -= 1.2;
  if (/Baby foods|Fast foods|Restaurant/.test(food.group)) prior -= 1;
  if (brand.test(food.name.replace(/\bUSDA\b|\bNLEA\b/g, ''))) prior -= 1.2;
  return prior - Math.min(1.5, 0.1 * food.name.split(',').length);
}

const wordsOf = (name: string): string[] => plainText(name).replace(/'/g, '').split(/[^a-z0-9%]+/).filter((w) => w !== '');

/** The postings of every kitchen name and every food name of the tables. */
export function buildSearchIndex(entries: readonly KitchenEntry[], table: FoodTable): SearchIndex {
  const documents: SearchDocument[] = [];
  const postings = new Map<string, { documents: number[]; weights: number[] }>();
  const tableWords = new Set<string>();
  const add = (document: SearchDocument, words: readonly string[], firstPart: number): void => {
    const number = documents.length;
    documents.push(document);
    for (let i = 0; i < words.length; i++) {
      const word = words[i] ?? '';
      const there = postings.get(word);
      const weight = i < firstPart ? 1.3 : i < firstPart + 2 ? 1 : 0.75;
      if (!there) postings.set(word, { documents: [number], weights: [weight] });
      else if (there.documents.at(-1) !== number) {
        there.documents.push(number);
        there.weights.push(weight);
      }
    }
  };
  for (const entry of entries) {
    for (const name of [entry.name, ...entry.also]) {
      const words = wordsOf(name).map(foldWord);
      add({ entry, food: null, name, length: words.length, prior: name === entry.name ? 3 : 2.8 }, words, words.length);
    }
  }
  for (const food of table.foods) {
    const comma = food.name.indexOf(',');
    const words = wordsOf(food.name).map(foldWord);
    // "Nuts, almonds", "Fish, trout, raw": the class word in front is not yet the food.
    const first = comma < 0 ? words.length : wordsOf(food.name.slice(0, comma)).length + (/^(Nuts|Seeds|Fish|Spices|Beans|Cheese|Oil|Game meat|Crustaceans|Mollusks|Beverages|Snacks|Soup|Squash|Peppers|Mushrooms|Milk|Alcoholic beverage|Babyfood|Candies)\b/.test(food.name) ? 1 : 0);
    add({ entry: null, food, name: food.name, length: words.length, prior: priorOf(food) }, words, first);
    for (const word of words) tableWords.add(word);
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
  return {
    documents,
    posting: (word) => postings.get(word) ?? null,
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
    hasTableWord: (word) => tableWords.has(word),
  };
}
