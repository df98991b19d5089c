import { evaluatePhrase, type Candidate, type PhraseToMatch } from './match-candidates.ts';
import type { FoodMatch, MatchAlternative, MatchContext, MatchNote, MatchNoteCode } from './food-match.ts';
import type { FoodIndex } from './match-index.ts';
import { findInTables } from './match-search.ts';
import { correctedWords } from './match-slips.ts';
import { cutWords, phraseBreaks } from './match-words.ts';
import { foldWord, nameWordsOf, readWords } from './word-forms.ts';

/** The words of a food as a line names it. */
export interface NamedWords {
  readonly name: string;
  readonly qualifiers: readonly string[];
}

// Below this a kitchen name is not taken: something in the words says that another food is meant.
const acceptedFrom = 0.5;
const alternativesShown = 4;
const longestPhrase = 24;
const partNouns = new Set(['top', 'green', 'leaf', 'seed', 'skin', 'stalk', 'stem', 'yolk', 'white', 'flower', 'frond', 'greens'].map(foldWord));
const longestText = 200;
const mostTelling = 3;
// Reading a word as cut short is a little less sure than reading it as a slip.
const secondWayCost = 0.03;
// Of several notes the one that most likely tells of a wrong food is shown.
const shownFirst: readonly MatchNoteCode[] = ['no-table-food', 'slip-read', 'unknown-words', 'form-missing', 'second-food', 'several-meanings', 'kitchen-note', 'part-ignored'];

interface Phrase {
  readonly words: readonly string[];
  readonly extra: readonly string[];
  readonly turned: boolean;
}

/** The words of the qualifiers, and apart those that start with "in", "on", "with": what follows is no food of its own. */
interface Qualifiers {
  readonly texts: readonly (readonly string[])[];
  readonly words: readonly string[];
  readonly phrases: readonly (readonly string[])[];
}

function readQualifiers(written: readonly string[]): Qualifiers {
  const all = written.slice(0, longestPhrase).map((text) => readWords(text).parts.flat().slice(0, longestPhrase).map(foldWord));
  const phrasesOf = all.filter((words) => words.length > 1 && phraseBreaks.has(words[0] ?? ''));
  const texts = [...new Map(all.filter((words) => words.length > 0 && !phrasesOf.includes(words)).map((words) => [words.join(' '), words])).values()];
  return { texts, words: texts.flat().slice(0, longestPhrase), phrases: phrasesOf };
}

// Words by which the unit may stand in a name: an ear of corn is a cob, what comes in a tin is tinned.
const unitBefore: Readonly<Record<string, readonly string[]>> = { tin: ['canned'], jar: ['jarred'] };
const unitBehind: Readonly<Record<string, readonly (readonly string[])[]>> = { ear: [['cob'], ['on', 'the', 'cob']], jar: [['in', 'a', 'jar']] };

/** The phrase with the unit as part of the name: "2 breasts" of "chicken" is "chicken breast". */
function withUnit(phrase: Phrase, unit: string | null): Phrase[] {
  if (unit === null || unit === 'piece') return [];
  const behind = [[foldWord(unit)], ...(unitBehind[unit] ?? [])].map((more) => ({ ...phrase, words: [...phrase.words, ...more] }));
  return [...behind, ...(unitBefore[unit] ?? []).map((word) => ({ ...phrase, words: [word, ...phrase.words] }))];
}

/** "85% lean" tells the fat by what it is not. */
function leanAsFat(words: readonly string[]): string[] {
  return words.map((word, i) => {
    const percent = /^(\d{2})%$/.exec(word);
    return percent && words[i + 1] === 'lean' ? `${100 - Number(percent[1])}%` : word === 'lean' && /^\d{2}%$/.test(words[i - 1] ?? '') ? 'fat' : word;
  });
}

/** The orders in which the parts of a name may be read: "flour, plain" is also "plain flour". */
function phrases(parts: readonly (readonly string[])[], qualifiers: Qualifiers, unit: string | null): Phrase[] {
  const [first = [], ...rest] = parts;
  const all = rest.flat();
  const { words } = qualifiers;
  // "Corn" with "on the cob", "tuna" with "in oil": read as one.
  const whole = [...first, ...qualifiers.phrases.flat()];
  const out: Phrase[] = [{ words: whole, extra: [...all, ...words], turned: false }];
  for (const part of rest.slice(0, 4)) {
    const others = rest.filter((other) => other !== part).flat();
    out.push({ words: [...part, ...first], extra: [...others, ...words], turned: true });
    out.push({ words: [...first, ...part], extra: [...others, ...words], turned: true });
  }
  if (rest.length > 1) out.push({ words: [...[...rest].reverse().flat(), ...first], extra: words, turned: true });
  // Cutting words stay out: "2 tomatoes, chopped" is not "chopped tomatoes", which is a tin.
  const telling = qualifiers.texts.filter((text) => text.length <= mostTelling && !text.some((word) => cutWords.has(word)));
  for (const text of telling) out.push({ words: [...text, ...whole], extra: [...all, ...words.filter((q) => !text.includes(q))], turned: false });
  // "Tops" of "beetroot": the part may stand behind the plant in its name.
  for (const text of telling) if (text.length === 1 && partNouns.has(text[0] ?? '')) out.push({ words: [...whole, ...text], extra: [...all, ...words.filter((q) => !text.includes(q))], turned: false });
  // "Red split lentils" are "split red lentils".
  if (whole.length === 3) out.push({ words: [whole[1] ?? '', whole[0] ?? '', whole[2] ?? ''], extra: [...all, ...words], turned: true });
  const single = telling.filter((text) => text.length === 1).flat();
  if (single.length > 1 && single.length <= mostTelling) out.push({ words: [...single, ...whole], extra: [...all, ...words.filter((q) => !single.includes(q))], turned: false });
  return [...out, ...withUnit({ words: whole, extra: [...all, ...words], turned: false }, unit)];
}

function better(a: Candidate, b: Candidate): number {
  return b.rank - a.rank || b.covered - a.covered || Number(b.target.own !== null) - Number(a.target.own !== null) || b.fit - a.fit || b.confidence - a.confidence;
}

const targetId = (c: Candidate): string => `${c.target.own?.code ?? c.target.entry?.name ?? ''} ${c.form ?? ''}`;

function alternativeOf(c: Candidate): MatchAlternative {
  return { name: c.target.own?.name ?? c.target.entry?.name ?? c.target.name, entry: c.target.entry, form: c.form, code: c.code, confidence: c.confidence };
}

/** The best readings of other foods, each food once. */
function distinct(candidates: readonly Candidate[]): MatchAlternative[] {
  const byFood = new Map<string, MatchAlternative>();
  for (const candidate of candidates) {
    const key = candidate.target.own?.code ?? candidate.target.entry?.name ?? '';
    if (!byFood.has(key) && byFood.size < alternativesShown) byFood.set(key, alternativeOf(candidate));
  }
  return [...byFood.values()];
}

/** `counted`: bare things are counted ("1 pepper"), so nothing but the number speaks for one meaning. */
function kitchenMatch(best: Candidate, others: readonly Candidate[], counted: boolean): FoodMatch {
  const rivals = others.filter((other) => targetId(other) !== targetId(best));
  const tied = rivals.some((r) => r.rank === best.rank && (counted || r.fit === best.fit) && r.code !== best.code && (r.target.entry === null || r.target.entry !== best.target.entry) && r.covered === best.covered && r.target.words.join('') === best.target.words.join(''));
  const notes: MatchNote[] = [...best.notes];
  if (tied) notes.push({ code: 'several-meanings', data: { name: best.target.name, other: rivals[0]?.target.entry?.name ?? rivals[0]?.target.name ?? '' } });
  const shown = shownFirst.map((code) => notes.find((n) => n.code === code)).find((n) => n !== undefined);
  return {
    via: best.target.own ? 'own' : 'kitchen-name',
    entry: best.target.entry,
    form: best.form,
    code: best.code,
    nearness: best.nearness,
    note: shown ?? null,
    confidence: tied ? Math.min(best.confidence, 0.8) : best.confidence,
    reasons: notes,
    alternatives: distinct(rivals),
  };
}

/**
 * The table food that the words of a line mean. Kitchen names and her own foods come first, the
 * longest name inside the words wins, and a word that makes another food of it ("chicken stock")
 * rules it out. Without a kitchen name the tables are searched and only a full match is taken.
 * Never throws; a name it cannot read gives `via: 'none'` with the nearest foods as alternatives.
 */
export function matchFood(named: NamedWords, context: MatchContext, index: FoodIndex): FoodMatch {
  const parts = readWords(named.name).parts.map((part) => leanAsFat(part.slice(0, longestPhrase).map(foldWord)));
  const qualifiers = readQualifiers(named.qualifiers);
  const tried = phrases(parts.slice(0, 6), qualifiers, context.unitKind === 'count' ? context.unit : null);
  const typed = new Set([named.name, ...named.qualifiers].flatMap((text) => nameWordsOf(text.slice(0, longestText))));
  const evaluate = (phrase: Phrase, slips: PhraseToMatch['slips'] = []): Candidate[] => evaluatePhrase({ ...phrase, typed, slips }, context, index);
  let found = tried.flatMap((phrase) => evaluate(phrase)).sort(better);
  const again = tried.flatMap((phrase) => correctedWords(phrase.words, index).flatMap((read, way) => evaluate({ ...phrase, words: read.words }, read.slips).map((c) => ({ ...c, confidence: Math.max(0, c.confidence - way * secondWayCost), rank: c.rank - way * secondWayCost }))));
  if (again.length > 0) found = [...found, ...again].sort(better);
  const best = found[0];
  if (best && best.confidence >= acceptedFrom) return kitchenMatch(best, found.slice(1), context.hasAmount && context.unit === null);
  return findInTables({ parts, qualifiers: [...qualifiers.words, ...qualifiers.phrases.flat()], rejected: distinct(found) }, context, index);
}
