import type { FoodMatch, MatchAlternative, MatchContext, MatchNote } from './food-match.ts';
import type { FoodForm } from './kitchen-name.ts';
import { formsAsked } from './match-form.ts';
import type { FoodIndex } from './match-index.ts';
import { fleshGroup, formOfWord, idleWords, phraseBreaks, productForms } from './match-words.ts';
import { searchFoods, type SearchHit } from './search.ts';
import { foldWord, plainText } from './word-forms.ts';

export interface UnmatchedName {
  readonly parts: readonly (readonly string[])[];
  readonly qualifiers: readonly string[];
  /** Kitchen readings that were found and not good enough. */
  readonly rejected: readonly MatchAlternative[];
}

const hitsConsidered = 60;
const alternativesShown = 4;
const confidenceOfSearch = 0.62;
const lostAnExtraWord = 0.07;
const extraWordsAllowed = 1;
const unlikelyGroups = /baby foods|fast foods|restaurant|indigenous|meals and entrees/i;

const fold = (text: string): ReadonlySet<string> => new Set(text.split(' ').map(foldWord));
// The tables put these in front of the food itself: "Spices, cumin seed", "Fish, tuna, raw".
const classWords = fold('nuts seeds fish spices crustaceans mollusks beverages snacks soup candies alcoholic game seaweed');
// Of these, the ones that are the food: "Soup, beef stroganoff" is no stroganoff.
const tellingClasses = fold('soup snacks candies alcoholic');
// Strengthened or made-up forms that nobody means without saying so.
const unlessAsked = fold('condensed dehydrated concentrate concentrated powder powdered mix cube cubes instant imitation substitute frosting baby infant');
const dryUnlessAsked = /soups|beverages|sweets|dairy|meals/i;
// Words of table names that do not make another food.
const neutralWords = fold(`raw fresh dried dry cooked boiled canned frozen ground whole all types type varieties variety commercial commercially prepared unprepared plain regular
  enriched unenriched fortified with without and or in of from salt added fat fluid liquid solids solid drained mature immature seeds seed kernels kernel only meat skin flesh ripe red green white yellow
  style home homemade average year round includes unsweetened table ready serve eat to light heated roasted toasted smoked pickled packed domestic composite mixed species shelf stable uncooked cured unspecified
  large small medium leaves leaf root peeled unblanched blanched salted unsalted unflavored pack not natural pasteurized food foods product products salad cooking`);

/** The words that name the food: idle words and states stay out, products ("juice", "flour") stay in. */
function nameWords(parts: readonly (readonly string[])[]): string[] {
  const first = parts[0] ?? [];
  const cut = first.findIndex((w, i) => i > 0 && phraseBreaks.has(w));
  const words = cut < 0 ? first : first.slice(0, cut);
  const isState = (word: string): boolean => {
    const form = formOfWord(word)?.form;
    return form !== undefined && !productForms.has(form);
  };
  return [...new Set(words.filter((w) => !idleWords.has(w) && !phraseBreaks.has(w) && w !== 'of' && w !== 'and' && !isState(w)))];
}

function segmentsOf(name: string): string[][] {
  return plainText(name)
    .replace(/\(.*?\)/g, ' ')
    .replace(/'/g, '')
    .split(',')
    .map((part) => part.split(/[^a-z0-9%]+/).filter((w) => w !== '').map(foldWord))
    .filter((part) => part.length > 0);
}

/**
 * How many words of a table name say something that was not asked for; null when the name is not
 * that of the food: a word is missing, or the last typed word is not what the name is about.
 */
function extraWords(hit: SearchHit, words: readonly string[], asked: ReadonlySet<string>): number | null {
  const segments = segmentsOf(hit.name);
  const all = new Set(segments.flat());
  if (!words.every((word) => all.has(word))) return null;
  const head = words.at(-1) ?? '';
  const [first = [], second = []] = segments;
  const isClass = first.length === 1 && classWords.has(first[0] ?? '');
  const headStands = first.at(-1) === head || (isClass && second.at(-1) === head) || (fleshGroup.test(hit.group ?? '') && all.has(head));
  if (!headStands) return null;
  const said = (word: string): boolean => words.includes(word) || asked.has(word);
  if (isClass && tellingClasses.has(first[0] ?? '') && !said(first[0] ?? '')) return null;
  if ([...all].some((w) => unlessAsked.has(w) && !said(w)) || (all.has('dry') && dryUnlessAsked.test(hit.group ?? '') && !said('dry') && !said('dried'))) return null;
  return [...all].filter((w) => !words.includes(w) && !neutralWords.has(w) && !asked.has(w) && !(isClass && w === first[0]) && !/^\d/.test(w)).length;
}

const alternativeOf = (hit: SearchHit): MatchAlternative => ({ name: hit.name, entry: hit.entry, form: hit.form, code: hit.code, confidence: 0.3 * hit.coverage });

const stateText: Readonly<Partial<Record<FoodForm, RegExp>>> = {
  raw: /raw|fresh/, dried: /dried|dry|dehydrated/, canned: /canned/, cooked: /cooked|boiled|roasted|prepared/, frozen: /frozen/, ground: /ground/, smoked: /smoked/, roasted: /roasted/, pickled: /pickled/,
};

/** The plainest state when none is asked for: raw or dry, then one that names no state. */
function stateRank(hit: SearchHit, states: readonly FoodForm[]): number {
  const name = hit.name.toLowerCase();
  if (states.some((state) => stateText[state]?.test(name))) return 0;
  if (/\braw\b|\bfresh\b/.test(name)) return 1;
  return hit.state === null || /\bdry\b|\bdried\b/.test(hit.state) ? 2 : 3;
}

/** Last resort: a table food whose name says the words and little else; otherwise no food, with the nearest ones to choose from. */
export function findInTables(named: UnmatchedName, context: MatchContext, index: FoodIndex): FoodMatch {
  const words = nameWords(named.parts);
  const described = [...named.parts.flat(), ...named.qualifiers];
  const states = formsAsked(described).map((a) => a.form);
  if (states.length === 0 && context.unit === 'tin') states.push('canned');
  const text = (named.parts[0] ?? []).join(' ');
  const hits = words.length === 0 ? [] : searchFoods([...words, ...states].join(' '), index, hitsConsidered);
  const fitting = hits
    .filter((hit) => hit.entry === null && !unlikelyGroups.test(hit.group ?? ''))
    .map((hit, order) => ({ hit, order, extra: extraWords(hit, words, new Set(described)), state: stateRank(hit, states) }))
    .filter((f): f is typeof f & { extra: number } => f.extra !== null && f.extra <= extraWordsAllowed)
    .sort((a, b) => Number(b.hit.via === 'own') - Number(a.hit.via === 'own') || (states.length > 0 ? Math.min(a.state, 1) - Math.min(b.state, 1) : 0) || a.extra - b.extra || a.state - b.state || a.order - b.order);
  const best = fitting[0];
  const others = [...named.rejected, ...hits.filter((hit) => hit !== best?.hit).map(alternativeOf)];
  const alternatives = [...new Map(others.map((other) => [other.name, other])).values()].slice(0, alternativesShown);
  if (!best) {
    const note: MatchNote = { code: 'no-food', data: { name: text } };
    return { via: 'none', entry: null, form: null, code: null, nearness: 'none', note, confidence: 0, reasons: [note], alternatives };
  }
  const note: MatchNote = { code: 'table-name', data: { name: text, table: best.hit.name } };
  const confidence = confidenceOfSearch - lostAnExtraWord * best.extra - (best.state === 3 ? lostAnExtraWord : 0) - (states.length > 0 && best.state > 0 ? 2 * lostAnExtraWord : 0);
  return { via: best.hit.via === 'own' ? 'own' : 'search', entry: null, form: null, code: best.hit.code, nearness: 'near', note, confidence, reasons: [note], alternatives };
}
