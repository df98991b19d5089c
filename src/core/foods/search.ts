import type { FoodCode } from './food.ts';
import type { FoodForm, KitchenEntry } from './kitchen-name.ts';
import { chooseForm } from './match-form.ts';
import type { FoodIndex } from './match-index.ts';
import { formOfWord } from './match-words.ts';
import { placeWeights } from './search-index.ts';
import { foldWord, readWords } from './word-forms.ts';

/** One answer of a search, for a picker. */
export interface SearchHit {
  readonly via: 'kitchen-name' | 'own' | 'table';
  readonly entry: KitchenEntry | null;
  readonly form: FoodForm | null;
  readonly code: FoodCode | null;
  /** The kitchen name, or the table's own name. */
  readonly name: string;
  /** The other name that was typed, when it is not the entry's first ("coriander" for "cilantro"). */
  readonly matchedName: string | null;
  /** The state in words of the table, or the form of the kitchen entry: "raw", "canned". */
  readonly state: string | null;
  readonly group: string | null;
  /** Share of the typed words that the name holds, 0 to 1. */
  readonly coverage: number;
  readonly score: number;
}

const stateWords = /^(raw|cooked|boiled|canned|frozen|dried|dehydrated|roasted|smoked|pickled|fresh|ground|prepared|unprepared|baked|fried|steamed|grilled|broiled|braised|stewed|toasted|dry|drained|simmered|microwaved)\b/;

/** The parts of a table name that tell a state: "raw", "cooked". */
export function stateOf(tableName: string): string | null {
  const states = tableName.toLowerCase().split(/,\s*/).filter((part) => stateWords.test(part));
  return states.length > 0 ? states.join(', ') : null;
}

const prefixWordsTried = 60;
const mostQueryWords = 8;
const quality = { exact: 1, prefix: 0.75, slip: 0.6 };

interface Found {
  readonly score: Float64Array;
  /** One bit a typed word that the document holds. */
  readonly matched: Uint8Array;
  readonly touched: number[];
}

/** The words that one typed word stands for: itself, words it begins, or words it is a slip of. */
function readings(word: string, last: boolean, index: ReturnType<FoodIndex['search']>): [string, number][] {
  const out: [string, number][] = [];
  const exact = index.posting(word) !== null;
  if (exact) out.push([word, quality.exact]);
  if (last || !exact) {
    const limit = word.length < 3 ? prefixWordsTried / 2 : prefixWordsTried;
    for (const longer of index.withPrefix(word, limit)) if (longer !== word) out.push([longer, quality.prefix * (0.6 + 0.4 * (word.length / longer.length))]);
  }
  if (out.length === 0) for (const near of index.slipsOf(word)) out.push([near, quality.slip]);
  return out;
}

function gather(words: readonly string[], index: ReturnType<FoodIndex['search']>): Found {
  const size = index.documents.length;
  const found: Found = { score: new Float64Array(size), matched: new Uint8Array(size), touched: [] };
  const best = new Float64Array(size);
  words.forEach((word, i) => {
    const seen: number[] = [];
    const meant = readings(word, i === words.length - 1, index).map(([reading, worth]) => ({ worth, posting: index.posting(reading) ?? [] }));
    // One rarity for all that the word can stand for: a rare longer word is no better than the word itself.
    const rarity = Math.log(1 + size / Math.max(1, meant.reduce((sum, { posting }) => sum + posting.length, 0)));
    for (const { worth, posting } of meant) {
      for (const coded of posting) {
        const document = coded >> 2;
        const gain = worth * rarity * (placeWeights[coded & 3] ?? 1);
        if (best[document] === 0) seen.push(document);
        if (gain > (best[document] ?? 0)) best[document] = gain;
      }
    }
    for (const document of seen) {
      if (found.matched[document] === 0) found.touched.push(document);
      found.matched[document] = (found.matched[document] ?? 0) | (1 << i);
      found.score[document] = (found.score[document] ?? 0) + (best[document] ?? 0);
      best[document] = 0;
    }
  });
  return found;
}

/** How many typed words a document answers: those in its name, and for a kitchen entry the forms that it has ("carrots raw"). */
function answered(words: readonly string[], mask: number, entry: KitchenEntry | null): { inName: number; all: number } {
  let inName = 0;
  let all = 0;
  words.forEach((word, i) => {
    if ((mask & (1 << i)) !== 0) inName++;
    const form = entry ? formOfWord(word)?.form : undefined;
    if ((mask & (1 << i)) !== 0 || (form !== undefined && entry?.forms[form] !== undefined)) all++;
  });
  return { inName, all };
}

interface Ranked {
  readonly document: number;
  readonly words: readonly string[];
  readonly matched: number;
  readonly score: number;
}

/** The documents that hold any of the words, with their scores. */
function rank(words: readonly string[], search: ReturnType<FoodIndex['search']>): Ranked[] {
  const found = gather(words, search);
  return found.touched.map((document) => {
    const { length, entry } = search.documents[document] ?? { length: 1, entry: null };
    const { inName, all } = answered(words, found.matched[document] ?? 0, entry);
    const coverage = all / words.length;
    // A name that is wholly typed stands above one that holds more words.
    const whole = inName / Math.max(length, inName + words.length - all);
    return { document, words, matched: all, score: (found.score[document] ?? 0) * coverage ** 2 + search.prior(document) + 3 * whole };
  });
}

function hitOf(at: Ranked, index: FoodIndex): SearchHit | null {
  const document = index.search().documents[at.document];
  if (!document) return null;
  const coverage = at.matched / at.words.length;
  if (document.entry) {
    const { entry } = document;
    const { form } = chooseForm(entry, { words: at.words, extra: [], product: null, nameWords: readWords(document.name).parts.flat().map(foldWord), unit: null });
    const food = entry.forms[form];
    const group = food?.code ? (index.table.find(food.code)?.group ?? null) : null;
    return { via: 'kitchen-name', entry, form, code: food?.code ?? null, name: entry.name, matchedName: document.name === entry.name ? null : document.name, state: form, group, coverage, score: at.score };
  }
  const { food } = document;
  if (!food) return null;
  return { via: food.table === 'own' ? 'own' : 'table', entry: null, form: null, code: food.code, name: food.name, matchedName: null, state: stateOf(food.name), group: food.group, coverage, score: at.score };
}

/**
 * Foods whose names hold the typed words, best first: kitchen names before table names, plain raw
 * foods before brands and ready meals. The last word may be unfinished; words may hold slips. An
 * empty query gives nothing.
 */
export function searchFoods(query: string, index: FoodIndex, limit: number): readonly SearchHit[] {
  const words = [...new Set(readWords(query).parts.flat().map(foldWord))].slice(0, mostQueryWords);
  if (words.length === 0 || limit <= 0) return [];
  const search = index.search();
  const ways = words.length > 1 && search.posting(words.join('')) !== null ? [words, [words.join('')]] : [words];
  const ranked = ways.flatMap((way) => rank(way, search)).sort((a, b) => b.score - a.score || a.document - b.document);
  const hits: SearchHit[] = [];
  const entries = new Set<KitchenEntry>();
  const seen = new Set<number>();
  for (const at of ranked) {
    if (hits.length >= limit) break;
    if (seen.has(at.document)) continue;
    seen.add(at.document);
    const hit = hitOf(at, index);
    if (!hit || (hit.entry && entries.has(hit.entry))) continue;
    if (hit.entry) entries.add(hit.entry);
    hits.push(hit);
  }
  return hits;
}
