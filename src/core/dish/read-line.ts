import type { Amount, Finding, IngredientLine, LineRemark, NamedFood } from './recipe.ts';
import { countIsFood, readAmount, type ReadAmount } from './read-amount.ts';
import { splitChoices, splitFoods } from './read-choices.ts';
import { namedFood, onlyQualifiers, qualifierAt, readFoodWords, readRemarks, splitQualifiers } from './read-food-words.ts';
import { readPartOf, splitItems } from './read-items.ts';
import { cutParts, handMeasure } from './read-parts.ts';
import { bareLine } from './read-text-lines.ts';
import { joinRows, partOfRow, readTokens, wordsOf, type Row } from './read-tokens.ts';
import { readUnit } from './read-unit.ts';
import type { Span } from './recipe.ts';
import type { ReaderVocabulary } from './read-vocabulary.ts';

/** An ingredient line before it has its id and section. */
export type ReadLine = Omit<IngredientLine, 'id' | 'section'> & { readonly problems: readonly Omit<Finding, 'lineId'>[] };

interface Draft {
  amount: Amount | null;
  /** "of" stood between unit and food. */
  ofUnit: boolean;
  more: Amount[];
  instead: { amount: Amount | null; food: NamedFood }[];
  leading: readonly string[];
  qualifiers: string[];
  remarks: LineRemark[];
  problems: Omit<Finding, 'lineId'>[];
}

const add = <T>(list: T[], items: readonly T[]): void => {
  for (const item of items) if (!list.includes(item)) list.push(item);
};

const isPart = (remark: LineRemark): boolean => remark === 'juice-only' || remark === 'zest-only' || remark === 'juice-and-zest';

/** "about 200 g", "(2 x 400 g)": words behind the food that say only how much. */
function settleMeasure(draft: Draft, said: Amount, vocabulary: ReaderVocabulary, each: boolean): void {
  const unit = said.unit === null ? null : vocabulary.units.get(said.unit);
  if (draft.amount === null || (draft.amount.unit === 'some' && unit && unit.kind !== 'count')) {
    draft.amount = said; // "some oil, say two tablespoons"
    return;
  }
  if (!unit || unit.kind === 'count') return;
  const stated = { quantity: said.quantity, unit: unit.id };
  const single = draft.amount.quantity.value === 1 && draft.amount.unit !== null && vocabulary.units.get(draft.amount.unit).kind === 'count';
  if (draft.amount.each === null && (each || single || (draft.amount.unit === null && draft.amount.quantity.value === 1))) draft.amount = { ...draft.amount, each: stated };
  else if (draft.amount.total === null) draft.amount = { ...draft.amount, total: stated };
}

/** Whether a stretch says only an amount, perhaps with "each" or state words behind. */
function readOnlyAmount(row: Row, vocabulary: ReaderVocabulary): { amount: Amount; each: boolean; rest: Row } | null {
  const start = ['x', '×'].includes(row.words[0] ?? '') ? 1 : 0;
  const read = readAmount(row, start, vocabulary);
  if (!read || read.article) return null;
  const rest = partOfRow(row, read.next, row.words.length);
  const measuring = ['total', 'in', 'weight', 'each', 'or', 'so', 'altogether', 'drained', 'net', 'prepared', ',', '.'];
  const told = rest.words.filter((word) => !measuring.includes(word));
  if (told.length > 0 && !onlyQualifiers(rest, vocabulary) && !onlyQualifiers(readTokens(told.join(' '), { start: 0, end: told.join(' ').length }), vocabulary)) return null;
  return { amount: read.amount, each: read.shared || rest.words.includes('each'), rest };
}

/** The amount before a food; in "3 cloves" the count word stays as the food. */
function readFoodAmount(row: Row, at: number, vocabulary: ReaderVocabulary): ReadAmount | null {
  const read = readAmount(row, at, vocabulary);
  if (!read || !countIsFood(row, read, vocabulary)) return read;
  return { ...read, amount: { ...read.amount, unit: null }, next: read.unitAt };
}

/** One comma part or bracket behind the food. */
function readTail(tail: Row, draft: Draft, vocabulary: ReaderVocabulary): void {
  if (tail.words.length === 0) return;
  if (tail.words[0] === 'or' && tail.words.length > 1 && !onlyQualifiers(tail, vocabulary) && vocabulary.remarks.longestAt(tail.words, 1) === 0 && vocabulary.remarks.longestAt(tail.words, 0) === 0) {
    readInstead(partOfRow(tail, 1, tail.words.length), draft, vocabulary);
    return;
  }
  const plus = tail.words[0] === 'plus' || tail.words[0] === '+' || (tail.words[0] === 'and' && tail.words.length > 2);
  const further = plus ? readAmount(tail, 1, vocabulary) : null;
  if (further && !further.article) {
    draft.more.push(further.amount, ...further.more);
    add(draft.qualifiers, splitQualifiers(partOfRow(tail, further.next, tail.words.length), vocabulary));
    if (further.next < tail.words.length) add(draft.remarks, ['plus-extra']); // what is said behind is said of the extra
    return;
  }
  if (plus && tail.words[0] !== 'and') {
    add(draft.remarks, ['plus-extra']);
    add(draft.qualifiers, splitQualifiers(tail, vocabulary));
    return;
  }
  const from = draft.amount === null && tail.words[0] === 'from' ? readAmount(tail, 1, vocabulary) : null;
  if (from) draft.amount = from.amount; // "stalks (from a small bunch)"
  const dashed = draft.amount === null ? readAmount(tail, 0, vocabulary) : null;
  if (dashed?.amount.unit && tail.tokens[dashed.next]?.kind === 'mark') {
    draft.amount = dashed.amount; // "parsley (a small bunch - leaves only)"
    readTail(partOfRow(tail, dashed.next + 1, tail.words.length), draft, vocabulary);
    return;
  }
  const measured = draft.amount === null ? readAmount(tail, 0, vocabulary) : null;
  const measuring = measured?.amount.unit == null ? null : vocabulary.units.get(measured.amount.unit);
  if (measured && measuring && !measuring.vague && (measuring.kind === 'mass' || measuring.kind === 'volume') && tail.tokens[0]!.kind === 'number') {
    draft.amount = measured.amount; // "rice (200 g basmati)"
    draft.more.push(...measured.more);
    readTail(partOfRow(tail, measured.next, tail.words.length), draft, vocabulary);
    return;
  }
  const byHand = draft.amount === null ? handMeasure(tail, vocabulary) : null;
  if (byHand) {
    draft.amount = byHand;
    return;
  }
  const size = tail.words.join(' ');
  if (draft.amount && draft.amount.size === null && Object.hasOwn(vocabulary.words.sizes, size)) {
    draft.amount = { ...draft.amount, size: vocabulary.words.sizes[size]! }; // "1 potato, medium-sized"
    return;
  }
  const only = readOnlyAmount(tail, vocabulary);
  if (only) {
    const countBehind = draft.amount !== null && (only.amount.unit === null || vocabulary.units.get(only.amount.unit).kind === 'count');
    settleMeasure(draft, only.amount, vocabulary, only.each);
    if (countBehind) draft.qualifiers.push(wordsOf(tail, 0, tail.words.length).toLowerCase());
    else add(draft.qualifiers, splitQualifiers(only.rest, vocabulary).filter((word) => !['each', 'total', 'in total'].includes(word)));
    return;
  }
  const said = readRemarks(tail, vocabulary);
  const early = said.at <= 2;
  add(draft.remarks, said.remarks.filter((remark) => early || !isPart(remark)));
  const parts = splitQualifiers(tail, vocabulary);
  add(draft.qualifiers, parts.filter((part) => part !== 'optional'));
}

function readInstead(row: Row, draft: Draft, vocabulary: ReaderVocabulary): void {
  const read = readFoodAmount(row, 0, vocabulary);
  const words = readFoodWords(partOfRow(row, read?.next ?? 0, row.words.length), vocabulary);
  if (words.name !== '') draft.instead.push({ amount: read?.amount ?? null, food: namedFood(words.name, words.qualifiers) });
}

/** "2 garlic cloves": a count word behind the food is the unit. Gives the name without it where it is no part of it. */
function takeUnitBehind(name: string, draft: Draft, vocabulary: ReaderVocabulary): string {
  const { amount } = draft;
  if (!amount || amount.unit !== null) return name;
  const words = name.split(' ');
  const last = words.at(-1)!;
  if (words.length < 2 || words.at(-2) === 'of') return name;
  const found = readUnit(readTokens(last, { start: 0, end: last.length }), 0, vocabulary)?.unit;
  if (!found || found.kind !== 'count' || found.vague || found.id === 'half' || found.id === 'quarter') return name;
  if (amount.quantity.value > 1 && !found.words.includes(last.toLowerCase())) return name;
  const rest = words.slice(0, -1).join(' ');
  if (onlyQualifiers(readTokens(rest, { start: 0, end: rest.length }), vocabulary)) return name; // "whole cloves"
  if (found.container && vocabulary.isFood && !vocabulary.isFood(rest.toLowerCase())) return name; // "swt pot"
  draft.amount = { ...amount, unit: found.id };
  return found.inName ? name : rest;
}

function sureness(draft: Draft, name: string, vocabulary: ReaderVocabulary): number {
  if (name === '') return 0.1;
  let sure = 1;
  if (draft.amount === null && !draft.remarks.some((remark) => remark === 'to-taste' || remark === 'to-serve' || remark === 'garnish' || remark.startsWith('for-'))) sure *= 0.8;
  if (name.split(' ').length > 5) sure *= 0.5;
  if (/[\p{L}]/u.test(name) && !/\p{Script=Latin}/u.test(name)) sure *= 0.2;
  if (/\d/.test(name) && !/%|^0+ |\d-\p{L}/u.test(name)) sure *= 0.6;
  if (vocabulary.isFood && !vocabulary.isFood(name.toLowerCase())) sure *= 0.7;
  if (draft.problems.length > 0) sure *= 0.8;
  return Math.round(sure * 100) / 100;
}

function judgeAmount(draft: Draft, vocabulary: ReaderVocabulary): void {
  const { amount } = draft;
  if (!amount) return;
  const stated = amount.total ?? amount.each ?? (amount.unit === null ? null : { quantity: amount.quantity, unit: amount.unit });
  const unit = stated && vocabulary.units.get(stated.unit);
  const times = amount.each === stated && stated !== null && amount.total === null ? amount.quantity.value : 1;
  if (stated && unit && (unit.kind === 'mass' || unit.kind === 'volume')) {
    const size = stated.quantity.value * times * (unit.sizes.any?.value ?? 0);
    if (size > largestGrams) draft.problems.push({ code: 'very-large-amount', data: { amount: amount.text }, severity: 'question' });
  } else if (amount.quantity.value > largestCount) draft.problems.push({ code: 'very-large-amount', data: { amount: amount.text }, severity: 'question' });
  if (amount.quantity.high === 0) draft.problems.push({ code: 'zero-amount', data: { amount: amount.text }, severity: 'question' });
}

/** Above these a line is asked about; a home kitchen holds no more. Grams or millilitres, and pieces. */
const largestGrams = 25_000;
const largestCount = 1_000;

const emptyDraft = (): Draft => ({ amount: null, ofUnit: false, more: [], instead: [], leading: [], qualifiers: [], remarks: [], problems: [] });

function readItem(row: Row, runOn: boolean, vocabulary: ReaderVocabulary): ReadLine[] {
  const draft = emptyDraft();
  let at = 0;
  const part = readPartOf(row, 0);
  if (part) {
    draft.remarks.push(part.remark);
    at = part.next;
    if (row.words[at] === 'the') at++;
  }
  const partly = part ? null : readSomeOf(row, vocabulary);
  if (partly) {
    draft.qualifiers.push(partly.words);
    at = partly.next;
  }
  const negative = ['-', '−', '–'].includes(row.words[at] ?? '') && row.tokens[at + 1]?.kind === 'number' && !row.tokens[at + 1]!.spaced;
  if (negative) at++;
  const read = readFoodAmount(row, at, vocabulary);
  if (read) {
    draft.amount = read.amount;
    draft.more = [...read.more];
    draft.qualifiers.push(...read.qualifiers);
    at = read.next;
    draft.ofUnit = row.words[at - 1] === 'of';
  }
  if (negative && read) {
    draft.amount = null;
    draft.problems.push({ code: 'negative-amount', data: { amount: `-${read.amount.text}` }, severity: 'question' });
  }
  const parts = cutParts(partOfRow(row, at, row.words.length), draft.amount !== null || negative, vocabulary);
  draft.leading = parts.leading;
  if (parts.amount && draft.amount) settleMeasure(draft, parts.amount, vocabulary, false);
  else if (parts.amount) draft.amount = parts.amount;
  const foods = splitFoods(parts.main, { runOn, shared: read?.shared ?? false, amount: draft.amount !== null, tails: parts.tails }, vocabulary);
  for (const tail of foods.tails) readTail(tail, draft, vocabulary);
  if (foods.foods.length > 1 && draft.amount !== null && !(read?.shared ?? false)) {
    draft.problems.push({ code: 'shared-amount', data: { amount: draft.amount.text, foods: foods.foods.length }, severity: 'question' });
    const n = foods.foods.length;
    const { low, value, high } = draft.amount.quantity;
    draft.amount = { ...draft.amount, quantity: { low: low / n, value: value / n, high: high / n } };
  }
  if (foods.foods.length === 2 && isShorthand(foods.foods, vocabulary)) return foods.foods.map((food) => ({ ...finishItem(row, food, copyDraft(draft), vocabulary), food: namedFood(vocabulary.words.shorthand[food.words[0]!]!, []) }));
  const lines = withSharedState(foods.foods.map((food) => finishItem(row, food, copyDraft(draft), vocabulary)), foods.foods, vocabulary);
  return [...lines, ...foods.others.map((food) => finishItem(row, food, emptyDraft(), vocabulary))];
}

/** "ground cumin and coriander", "chopped parsley and mint": the state word in front is said of all. */
function withSharedState(lines: readonly ReadLine[], foods: readonly Row[], vocabulary: ReaderVocabulary): ReadLine[] {
  const [first] = foods;
  const length = first && lines.length > 1 ? Math.max(qualifierAt(first, 0, vocabulary), vocabulary.making.has(first.words[0] ?? '') ? 1 : 0) : 0;
  if (!first || length === 0 || length >= first.words.length) return [...lines];
  const state = wordsOf(first, 0, length).toLowerCase();
  return lines.map((line, n) => {
    const own = n === 0 || qualifierAt(foods[n]!, 0, vocabulary) > 0 || vocabulary.making.has(foods[n]!.words[0] ?? '');
    return own ? line : { ...line, food: namedFood(line.food.name, [state, ...line.food.qualifiers]) };
  });
}

const isShorthand = (foods: readonly Row[], vocabulary: ReaderVocabulary): boolean => foods.every(({ words }) => words.length === 1 && Object.hasOwn(vocabulary.words.shorthand, words[0]!));

const copyDraft = (draft: Draft): Draft => ({ ...draft, more: [...draft.more], instead: [...draft.instead], qualifiers: [...draft.qualifiers], remarks: [...draft.remarks], problems: [...draft.problems] });

const partWords = new Set(['yolk', 'white', 'seeds', 'leaves', 'flesh', 'kernels', 'whites', 'yolks', 'tops', 'stalks', 'pulp', 'meat', 'skins', 'greens', 'fronds', 'tips', 'florets', 'stems']);

/** "seeds of 1 pomegranate", "whites of 2 eggs": the part used stands before the amount. */
function readSomeOf(row: Row, vocabulary: ReaderVocabulary): { words: string; next: number } | null {
  const from = row.words.indexOf('from');
  const of = from > 0 && from < 3 && partWords.has(row.words[from - 1]!) ? from : row.words.indexOf('of');
  if (of < 1 || of > 3 || row.tokens[0]!.kind !== 'word' || (row.tokens[of + 1]?.kind !== 'number' && !(['a', 'an', 'one', 'two', 'three'].includes(row.words[of + 1] ?? '') && partWords.has(row.words[of - 1]!)))) return null;
  if (readAmount(row, 0, vocabulary) !== null) return null;
  return { words: wordsOf(row, row.words[0] === 'the' ? 1 : 0, of).toLowerCase(), next: of + 1 };
}

function finishItem(row: Row, food: Row, draft: Draft, vocabulary: ReaderVocabulary): ReadLine {
  const choices = splitChoices(food, vocabulary);
  const words = readFoodWords(choices.first, vocabulary);
  for (const other of choices.others) readInstead(other, draft, vocabulary);
  const qualifiers = [...draft.leading];
  add(qualifiers, words.qualifiers);
  add(qualifiers, choices.qualifiers);
  add(qualifiers, draft.qualifiers);
  const juiced = qualifiers.some((word) => /\bjuiced\b/.test(word));
  const zested = qualifiers.some((word) => /\bzested\b/.test(word));
  if (juiced || zested) {
    draft.remarks = draft.remarks.filter((remark) => !isPart(remark));
    draft.remarks.push(juiced && zested ? 'juice-and-zest' : juiced ? 'juice-only' : 'zest-only');
  }
  if (qualifiers.includes('divided')) add(draft.remarks, ['divided']);
  if (qualifiers.includes('optional')) add(draft.remarks, ['optional']);
  let name = takeUnitBehind(words.name, draft, vocabulary);
  const unit = draft.amount?.unit == null ? null : vocabulary.units.get(draft.amount.unit);
  // "leg of lamb": the cut belongs to the name, as in "lamb leg"
  if (unit?.inName && draft.ofUnit && !name.toLowerCase().includes(unit.one)) name = `${name} ${unit.one}`;
  const other = vocabulary.words.unitsByFood.find((rule) => rule.unit === draft.amount?.unit && rule.food === name.toLowerCase());
  if (other && draft.amount) draft.amount = { ...draft.amount, unit: other.means };
  if (/^baby /i.test(name) && draft.amount && draft.amount.unit === null) draft.amount = { ...draft.amount, size: draft.amount.size ?? 'small' };
  if (draft.remarks.includes('juice-only') && draft.remarks.includes('zest-only')) draft.remarks = [...draft.remarks.filter((remark) => !isPart(remark)), 'juice-and-zest'];
  const yolk = qualifiers.findIndex((word) => /^(?:yolk|white)s?$/.test(word));
  if (yolk >= 0 && /^eggs?$/i.test(name)) name = `egg ${qualifiers.splice(yolk, 1)[0]!}`;
  if (!/[\p{L}]/u.test(name)) draft.problems.push({ code: 'no-food', data: { text: wordsOf(row, 0, row.words.length).slice(0, 80) }, severity: 'question' });
  else if (!/\p{Script=Latin}/u.test(name)) draft.problems.push({ code: 'other-alphabet', data: { text: name.slice(0, 80) }, severity: 'question' });
  judgeAmount(draft, vocabulary);
  const start = Math.min(...row.tokens.map((token) => token.start));
  const end = Math.max(...row.tokens.map((token) => token.end));
  return {
    text: row.text.slice(start, end),
    span: { start, end },
    amount: draft.amount,
    more: draft.more,
    food: namedFood(name, qualifiers.filter((word) => word !== 'optional')),
    instead: draft.instead,
    remarks: draft.remarks,
    confidence: sureness(draft, name, vocabulary),
    problems: draft.problems,
  };
}

/** "[optional] 1 tbsp seeds": what stands in brackets in front is said behind as well. */
function withoutBracketInFront(row: Row): Row {
  if (row.words[0] !== '[' && row.words[0] !== '(') return row;
  const close = row.words.indexOf(row.words[0] === '[' ? ']' : ')');
  if (close < 2 || close > 6 || close + 1 >= row.words.length || row.tokens[1]!.kind !== 'word') return row;
  return joinRows(partOfRow(row, close + 1, row.words.length), partOfRow(row, 0, close + 1));
}

/** Reads one line of the ingredients: one or, where it names several foods, more of them. Never throws; linear in the length of the line. */
export function readIngredientLine(text: string, span: Span, vocabulary: ReaderVocabulary): ReadLine[] {
  const row = withoutBracketInFront(readTokens(text, bareLine(text, span)));
  if (row.tokens.length === 0) return [];
  if (row.tokens.length > longestLine) {
    const problem = { code: 'line-too-long', data: { characters: span.end - span.start }, severity: 'warning' as const };
    return [{ text: text.slice(span.start, span.end), span, amount: null, more: [], food: namedFood(text.slice(span.start, span.start + 80).trim(), []), instead: [], remarks: [], confidence: 0, problems: [problem] }];
  }
  const items = splitItems(row, vocabulary);
  return shareHeads(items.flatMap(({ from, to }) => readItem(partOfRow(row, from, to), items.length > 1, vocabulary)), vocabulary);
}

/** "2 red, 1 yellow and 1 green pepper": the last word belongs to all three. */
function shareHeads(lines: ReadLine[], vocabulary: ReaderVocabulary): ReadLine[] {
  let head: string | null = null;
  return lines.toReversed().map((line) => {
    const words = line.food.name.split(' ');
    const last = words.at(-1)!.toLowerCase();
    if (words.length > 1 && vocabulary.sharedHeads.has(last)) head = last;
    else if (head !== null && words.length === 1 && vocabulary.attributes.has(last) && !vocabulary.sharedHeads.has(last)) return { ...line, food: namedFood(`${line.food.name} ${head}`, line.food.qualifiers) };
    else head = null;
    return line;
  }).toReversed();
}

/** Words and marks above which a line is kept unread. */
const longestLine = 400;
