import type { FoodCode } from './food.ts';
import type { FoodForm, KitchenEntry } from './kitchen-name.ts';
import { chooseForm } from './match-form.ts';
import type { FoodIndex } from './match-index.ts';
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
  score: Float64Array;
  matched: Uint8Array;
  touched: number[];
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
    for (const [reading, worth] of readings(word, i === words.length - 1, index)) {
      const posting = index.posting(reading);
      if (!posting) continue;
      const rarity = Math.log(1 + size / posting.length);
      for (const coded of posting) {
        const document = coded >> 2;
        const gain = worth * rarity * (placeWeights[coded & 3] ?? 1);
        if (best[document] === 0) seen.push(document);
        if (gain > (best[document] ?? 0)) best[document] = gain;
      }
    }
    for (const document of seen) {
      if (found.matched[document] === 0) found.touched.push(document);
      found.matched[document] = (found.matched[document] ?? 0) + 1;
      found.score[document] = (found.score[document] ?? 0) + (best[document] ?? 0);
      best[document] = 0;
    }
  });
  return found;
}

function hitOf(at: { document: number; words: readonly string[]; matched: number; score: number }, index: FoodIndex): SearchHit | null {
  const document = index.search().documents[at.document];
  if (!document) return null;
  const coverage = at.matched / at.words.length;
  if (document.entry) {
    const { entry } = document;
    const { form } = chooseForm(entry, { words: at.words, nameWords: readWords(document.name).parts.flat().map(foldWord), unit: null });
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
  const joined = words.length > 1 && search.posting(words.join('')) !== null ? [words.join('')] : words;
  const found = gather(joined, search);
  const ranked = found.touched
    .map((document) => {
      const length = search.documents[document]?.length ?? 1;
      const matched = found.matched[document] ?? 0;
      const coverage = matched / joined.length;
      // A name that is wholly typed stands above one that holds more words.
      const whole = matched / Math.max(length, joined.length);
      return { document, matched, score: (found.score[document] ?? 0) * coverage ** 2 + search.prior(document) + 3 * whole };
    })
    .sort((a, b) => b.score - a.score || a.document - b.document);
  const hits: SearchHit[] = [];
  const entries = new Set<KitchenEntry>();
  for (const at of ranked) {
    if (hits.length >= limit) break;
    const hit = hitOf({ ...at, words: joined }, index);
    if (!hit || (hit.entry && entries.has(hit.entry))) continue;
    if (hit.entry) entries.add(hit.entry);
    hits.push(hit);
  }
  return hits;
}
