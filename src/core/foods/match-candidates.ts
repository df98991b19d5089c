import type { MatchContext, MatchNote } from './food-match.ts';
import type { FoodCode } from './food.ts';
import type { FoodForm, Nearness } from './kitchen-name.ts';
import { chooseForm } from './match-form.ts';
import type { FoodIndex, NameTarget } from './match-index.ts';
import { isPlainlyKnown } from './match-slips.ts';
import { colourWords, fleshGroup, formOfWord, idleWords, kindHeads, leafyPlants, meatParts, phraseBreaks, tinLiquids, varieties } from './match-words.ts';
import { foldWord } from './word-forms.ts';

/** One way to read a phrase: a name found inside it and what the other words say. */
export interface Candidate {
  readonly target: NameTarget;
  readonly form: FoodForm | null;
  readonly code: FoodCode | null;
  readonly nearness: Nearness;
  readonly confidence: number;
  /** The confidence before words of other parts took from it: readings are ranked by this. */
  readonly rank: number;
  /** Letters of the phrase that the name takes up. */
  readonly covered: number;
  /** How well the unit suits the food, to choose between two foods of one name. */
  readonly fit: number;
  readonly notes: readonly MatchNote[];
}

export interface PhraseToMatch {
  readonly words: readonly string[];
  /** Words of other parts of the line and its qualifiers: they choose the form and cost little. */
  readonly extra: readonly string[];
  readonly turned: boolean;
  /** The words as typed, unfolded. */
  readonly typed: ReadonlySet<string>;
  readonly slips: readonly (readonly [string, string])[];
}

// What each departure from the plain name costs, out of a confidence of 1. Judged on test lines, not measured.
const costs = { otherFood: 0.6, unknownAfter: 0.6, unknownBefore: 0.15, nameWordBefore: 0.25, unknownBeforeKind: 0.55, extraWord: 0.04, participle: 0.14, extraFood: 0.25, colour: 0.08, part: 0.1, slip: 0.12, slipAndUnknown: 0.2, unknownInPhrase: 0.15, secondFood: 0.15, turned: 0.02, missedForm: 0.12, missedProduct: 0.7, noTableFood: 0 };
/** Parts of a plant that are another food than its root or fruit. */
const plantParts = new Set(['top', 'frond', 'flower', 'blossom']);
const mostUnknownBefore = 3;
const exactSpelling = 3;
const participle = /^.{3,}[^e]ed$/;

const tolerated = (word: string, nameWords: readonly string[]): boolean => varieties.some(([before, heads]) => before.has(word) && nameWords.some((n) => heads.has(n)));

/** "juice of lemon" reads as "lemon juice", "leg of lamb" as "lamb leg". */
function turnedAtOf(words: readonly string[]): string[] {
  const at = words.indexOf('of');
  if (at <= 0 || at === words.length - 1) return [...words];
  return [...words.slice(at + 1), ...words.slice(0, at).filter((w) => !idleWords.has(w) || formOfWord(w) !== null)];
}

/**
 * "olive or vegetable oil" reads as "olive oil": the first food takes the last word of the second
 * when that makes a name. Null when the second part is no food either ("chicken and mushroom pie").
 */
function firstOfTwo(words: readonly string[], index: FoodIndex): readonly string[] | null {
  const at = words.findIndex((w) => w === 'or' || w === 'and');
  if (at <= 0 || at === words.length - 1) return null;
  const first = words.slice(0, at);
  const rest = words.slice(at + 1);
  const cut = rest.findIndex((w) => phraseBreaks.has(w));
  const second = (cut < 0 ? rest : rest.slice(0, cut)).filter((w) => !idleWords.has(w));
  const last = second.at(-1) ?? '';
  if (index.targets([...first, last].join('')).length > 0) return [...first, last];
  const isFood = second.some((_, i) => index.targets(second.slice(i).join('')).length > 0);
  return isFood ? first : null;
}

function tableWords(code: FoodCode | null, index: FoodIndex): ReadonlySet<string> {
  const food = code === null ? null : index.table.find(code);
  return new Set(food ? food.name.toLowerCase().split(/[^a-z]+/).filter((w) => w !== '').map(foldWord) : []);
}

/** Whether a word after the name leaves the food what it is, and at what cost; null when it makes another food. */
function afterName(word: string, nameWords: readonly string[], chosen: { inTable: ReadonlySet<string>; group: string }, index: FoodIndex): number | null {
  if (word === 'leaf' || word === 'saag') return nameWords.some((n) => leafyPlants.has(n)) || chosen.inTable.has('leaf') ? 0 : null;
  if (meatParts.has(word) && fleshGroup.test(chosen.group)) return chosen.inTable.has(word) ? 0 : costs.part;
  if (idleWords.has(word) || chosen.inTable.has(word)) return 0;
  if (word === 'fish' && fleshGroup.test(chosen.group)) return 0;
  if (formOfWord(word)) return 0;
  // "Stock cube dissolved", "butter rubbed in": what was done with it.
  return participle.test(word) && !index.isNameWord(word) ? costs.participle : null;
}

function fitOf(target: NameTarget, context: MatchContext, group: string): number {
  const pieces = target.entry?.pieces ?? [];
  const unit = context.unit ?? 'piece';
  if (!context.hasAmount) return /spice|fats and oils/i.test(group) ? 1 : 0;
  if (context.unit === null || context.unitKind === 'count') return pieces.some((p) => p.unit === unit) ? 2 : pieces.length > 0 ? 1 : 0;
  if (context.unitKind === 'volume') return (/spice/i.test(group) ? 1 : 0) + ((target.entry?.densities.length ?? 0) > 0 ? 1 : 0);
  return 0;
}

function ownCandidate(target: NameTarget, base: Omit<Candidate, 'target' | 'form' | 'code' | 'nearness' | 'fit'>): Candidate {
  return { ...base, target, form: null, code: target.own?.code ?? null, nearness: 'same', fit: 0, notes: [{ code: 'own-food', data: { name: target.name } }, ...base.notes] };
}

/** Reads one name at words[from..to) of a phrase; null when it cannot be meant at all. */
function readSpan(target: NameTarget, span: { words: readonly string[]; from: number; to: number }, phrase: PhraseToMatch, at: { context: MatchContext; index: FoodIndex }): Candidate {
  const { words, from, to } = span;
  const { index, context } = at;
  const cut = words.findIndex((w, i) => i >= to && phraseBreaks.has(w));
  const before = words.slice(0, from);
  const after = words.slice(to, cut < 0 ? words.length : cut);
  const phraseRest = cut < 0 ? [] : words.slice(cut + 1);
  const notes: MatchNote[] = [{ code: 'name', data: { name: target.name } }];
  let confidence = 1;
  const lose = (amount: number): void => {
    confidence -= amount;
  };
  // Nobody squeezes a tin: what lies in juice is not the juice.
  const remarks = context.unit === 'tin' || context.unit === 'jar' ? [] : context.remarks;
  const product = remarks.includes('juice-only') || remarks.includes('juice-and-zest') ? 'juice' : remarks.includes('zest-only') ? 'peel' : null;
  // "Kidney beans in chilli sauce", "tuna in oil" come in tins.
  const tinned = cut >= 0 && words[cut] === 'in' && phraseRest.some((w) => tinLiquids.has(w)) ? ['jar'] : [];
  const request = { words: [...after, ...before], extra: [...tinned, ...phrase.extra, ...phraseRest], nameWords: target.words, unit: context.unit, product } as const;
  const choice = target.entry ? chooseForm(target.entry, request) : null;
  const food = choice ? target.entry?.forms[choice.form] : undefined;
  const code = target.own?.code ?? food?.code ?? null;
  const chosen = { inTable: tableWords(code, index), group: (code === null ? null : index.table.find(code))?.group ?? '' };

  const unknown: string[] = [];
  for (let i = 0; i < before.length; i++) {
    const word = before[i] ?? '';
    if (idleWords.has(word) || phraseBreaks.has(word) || chosen.inTable.has(word) || tolerated(word, target.words)) continue;
    const form = formOfWord(word) ?? formOfWord(`${word}${before[i + 1] ?? ''}`);
    if (colourWords.has(word)) {
      lose(costs.colour);
      notes.push({ code: 'colour-ignored', data: { word } });
    } else if (index.targets(word).some((t) => t.entry !== target.entry || t.own !== target.own) && formOfWord(word)?.form !== choice?.form) lose(costs.otherFood);
    else if (!form && formOfWord(`${before[i - 1] ?? ''}${word}`) === null) unknown.push(word);
  }
  const bareKind = !target.own && target.words.length === 1 && kindHeads.has(target.words[0] ?? '');
  // A word of other foods' names ("prickly" pea) is more suspicious than one that no name holds ("Jersey" potatoes).
  for (const word of unknown.slice(0, mostUnknownBefore)) lose(bareKind ? costs.unknownBeforeKind : index.isNameWord(word) ? costs.nameWordBefore : costs.unknownBefore);
  for (const word of after) {
    const cost = afterName(word, target.words, chosen, index);
    if (cost === null) lose(costs.unknownAfter);
    else if (cost > 0) {
      lose(cost);
      if (cost === costs.part) notes.push({ code: 'part-ignored', data: { word } });
    }
  }
  let lostToExtra = 0;
  for (const word of new Set(phrase.extra)) {
    if (plantParts.has(word) && !chosen.inTable.has(word) && !target.words.includes(word)) {
      lose(costs.part);
      notes.push({ code: 'part-ignored', data: { word } });
      continue;
    }
    if (idleWords.has(word) || colourWords.has(word) || phraseBreaks.has(word) || chosen.inTable.has(word) || formOfWord(word)) continue;
    const other = index.targets(word).some((t) => t.entry !== target.entry);
    if (other && !index.targets(word).some((t) => t.entry === target.entry)) lose(costs.extraFood);
    else if (!index.targets(word).length) lostToExtra += costs.extraWord;
  }
  if (unknown.length > 0) notes.push({ code: 'unknown-words', data: { words: unknown.join(' ') } });
  for (const word of phraseRest.slice(0, mostUnknownBefore)) if (!isPlainlyKnown(word, index)) lose(costs.unknownInPhrase);
  if (phrase.slips.length > 0 && unknown.length > 0) lose(costs.slipAndUnknown);
  for (const [typed, read] of phrase.slips) {
    lose(costs.slip);
    notes.push({ code: 'slip-read', data: { typed, read } });
  }
  if (phrase.turned) lose(costs.turned);
  const own = Math.max(0, confidence - lostToExtra);
  const base = { confidence: own, rank: own + lostToExtra, covered: words.slice(from, to).join('').length, notes };
  if (!choice) return ownCandidate(target, base);
  const missed = choice.missed;
  if (choice.wrongProduct) lose(costs.missedProduct);
  else if (missed !== null) lose(costs.missedForm);
  if (missed !== null) notes.push({ code: 'form-missing', data: { name: target.entry?.name ?? target.name, asked: missed, used: choice.form } });
  else if (choice.form !== target.entry?.usual) notes.push({ code: 'form-asked', data: { form: choice.form } });
  if (choice.byCustom) notes.push({ code: 'several-meanings', data: { name: target.entry?.name ?? target.name, other: `fresh ${target.entry?.name ?? target.name}` } });
  if (food?.note) notes.push({ code: 'kitchen-note', data: { text: food.note } });
  if (code === null) notes.push({ code: 'no-table-food', data: { name: target.entry?.name ?? target.name, text: food?.note ?? '' } });
  const nearness: Nearness = code === null ? 'none' : missed !== null && food?.nearness === 'same' ? 'near' : (food?.nearness ?? 'none');
  return { ...base, confidence: Math.max(0, Math.min(1, confidence - lostToExtra)), rank: Math.max(0, confidence), target, form: choice.form, code, nearness, fit: fitOf(target, context, chosen.group) + (target.spelled.every((w) => phrase.typed.has(w)) ? exactSpelling : 0) };
}

/** Every name that stands inside a phrase, read with the words around it. */
export function evaluatePhrase(phrase: PhraseToMatch, context: MatchContext, index: FoodIndex): Candidate[] {
  const out: Candidate[] = [];
  const at = { context, index };
  const scan = (words: readonly string[], second: boolean): void => {
    // Behind "in", "from", "with" no food begins that the line is about.
    const cut = words.findIndex((w, i) => i > 0 && phraseBreaks.has(w));
    for (let from = 0; from < (cut < 0 ? words.length : cut); from++) {
      for (let to = from + 1; to <= Math.min(words.length, from + index.longestName); to++) {
        for (const target of index.targets(words.slice(from, to).join(''))) {
          const read = readSpan(target, { words, from, to }, phrase, at);
          out.push(second ? { ...read, confidence: Math.max(0, read.confidence - costs.secondFood), rank: read.rank - costs.secondFood, notes: [...read.notes, { code: 'second-food', data: { name: target.name } }] } : read);
        }
      }
    }
  };
  scan(phrase.words, false);
  if (phrase.words.includes('of')) scan(turnedAtOf(phrase.words), false);
  const two = firstOfTwo(phrase.words, index);
  if (two) scan(two, true);
  return out;
}
