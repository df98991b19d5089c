import { plainText } from '../foods/index.ts';
import type { Unit, UnitTable } from '../quantity/index.ts';
import { amountTexts, scaledQuantity, totalText, type AmountAsked } from './scale-amount.ts';
import { roundingKind, type RoundingKind } from './scale-rounding.ts';
import { numbered } from './scale-words.ts';
import type { Amount, IngredientLine, StatedMeasure } from './recipe.ts';

/** A stretch of a line's own text and what stands there instead. */
export interface LineEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export interface ScaledLineText {
  readonly text: string;
  readonly edits: readonly LineEdit[];
}

/** A line as the reader reads it. */
export type ReadBack = (text: string) => readonly Pick<IngredientLine, 'amount' | 'more' | 'instead' | 'food'>[];

export interface LineAsked {
  readonly line: IngredientLine;
  readonly factor: number;
  readonly isEgg: boolean;
  readonly units: UnitTable;
  readonly readBack: ReadBack;
}

const close = (a: number, b: number): boolean => Math.abs(a - b) <= 0.005 * Math.max(Math.abs(a), Math.abs(b)) + 1e-9;

/** Whether the amount read back is the amount meant. */
function isMeant(read: Amount | null, meant: Amount, asked: AmountAsked): boolean {
  if (read === null) return false;
  const unit = meant.unit === null ? null : asked.units.find(meant.unit);
  const wanted = scaledQuantity(meant, asked.factor, asked.kindOf(unit));
  const sameUnit = (read.unit ?? 'piece') === (meant.unit ?? 'piece');
  const sameEach = (read.each === null) === (meant.each === null) && (read.each === null || meant.each === null || (close(read.each.quantity.value, meant.each.quantity.value) && read.each.unit === meant.each.unit));
  // A stated total counts before the amount, so a leftover one would keep the old weight.
  const scaledTotal = totalText(asked);
  const sameTotal = scaledTotal === null ? read.total === null : read.total !== null && meant.total !== null && read.total.unit === meant.total.unit;
  return sameUnit && sameEach && sameTotal && read.size === meant.size && close(read.quantity.low, wanted.low) && close(read.quantity.high, wanted.high);
}

/** Where a stated measure stands in the line: the 250 g of "3 carrots (about 250 g)". */
function measurePlace(text: string, stated: StatedMeasure | null, units: UnitTable): { start: number; end: number } | null {
  if (stated === null) return null;
  const unit = units.get(stated.unit);
  for (const found of text.matchAll(/\d+(?:[.,]\d+)?\s*[a-z]+/gi)) {
    const word = plainText(/[a-z]+$/i.exec(found[0])?.[0] ?? '');
    if (unit.words.includes(word) && close(Number.parseFloat(found[0].replace(',', '.')), stated.quantity.value)) return { start: found.index, end: found.index + found[0].length };
  }
  // "three hundred grams": the only number in words before that unit.
  for (const found of text.matchAll(/\b(?:(?:a|an|one|two|three|four|five|six|seven|eight|nine|ten|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand|half|and)\s+)+([a-z]+)/gi)) {
    if (unit.words.includes(plainText(found[1] ?? ''))) return { start: found.index, end: found.index + found[0].length };
  }
  return null;
}

/** Where an amount's words stand in the line; the reader may have closed up their spaces. */
function amountPlace(text: string, amount: Amount, from: number): { start: number; end: number; words: string } | null {
  const at = text.indexOf(amount.text, from) >= 0 ? text.indexOf(amount.text, from) : text.indexOf(amount.text);
  if (at >= 0) return { start: at, end: at + amount.text.length, words: amount.text };
  const loose = new RegExp(amount.text.split(/\s+/).map((w) => w.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('\\s+')).exec(text);
  return loose ? { start: loose.index, end: loose.index + loose[0].length, words: loose[0] } : null;
}

/** The food's last word in the number that the amount asks for: 1 onion, 2 onions. */
function nounEdit(line: IngredientLine, amount: Amount, quantity: number): LineEdit | null {
  if (amount.unit !== null && amount.unit !== 'piece') return null;
  const at = line.text.indexOf(line.food.name);
  const last = /[a-z]+$/i.exec(line.food.name);
  if (at < 0 || !last || at < line.text.indexOf(amount.text)) return null;
  const word = numbered(last[0], quantity);
  const start = at + last.index;
  return word === last[0] ? null : { start, end: start + last[0].length, text: word };
}

function withEdits(text: string, edits: readonly LineEdit[]): string {
  return [...edits].sort((a, b) => b.start - a.start).reduce((now, edit) => now.slice(0, edit.start) + edit.text + now.slice(edit.end), text);
}

function amountsOf(line: IngredientLine): { readonly amount: Amount; readonly role: 'amount' | 'more' | 'instead'; readonly index: number }[] {
  return [
    ...(line.amount ? [{ amount: line.amount, role: 'amount' as const, index: 0 }] : []),
    ...line.more.map((amount, index) => ({ amount, role: 'more' as const, index })),
    ...line.instead.flatMap(({ amount }, index) => (amount ? [{ amount, role: 'instead' as const, index }] : [])),
  ].filter(({ amount }) => amount.unit !== 'some' && amount.quantity.value > 0 && amount.text !== '');
}

/** Whether a line has an amount that can grow. */
export function canScale(line: IngredientLine): boolean {
  return amountsOf(line).length > 0;
}

/**
 * Writes a line's amounts anew in its own words and units. Each way of writing is read back; the
 * first that reads as the amount meant is taken. Null when none does: then the line is left as it
 * was and the caller says so.
 */
export function scaleLineText(asked: LineAsked): ScaledLineText | null {
  const { line, factor, isEgg, units, readBack } = asked;
  const kindOf = (unit: Unit | null): RoundingKind => roundingKind(unit, isEgg);
  // Other words must not make two lines of one, nor one of two.
  const linesBefore = readBack(line.text).length;
  let edits: LineEdit[] = [];
  let from = 0;
  for (const { amount, role, index } of amountsOf(line)) {
    const where = amountPlace(line.text, amount, from);
    if (!where) return null;
    const { start, end } = where;
    from = end;
    const one: AmountAsked = { amount, factor, units, kindOf };
    const total = totalText(one);
    const outside = (place: { start: number; end: number } | null): boolean => place !== null && (place.end <= start || place.start >= end);
    const place = total === null ? null : measurePlace(line.text, amount.total, units);
    const totalEdits = total !== null && place && outside(place) ? [{ ...place, text: total }] : [];
    // One piece of a stated weight: for more pieces the weight has to say that it is that of each.
    const ofEach = measurePlace(line.text, amount.each, units);
    const eachEdits = ofEach && outside(ofEach) ? [{ start: ofEach.end, end: ofEach.end, text: ' each' }] : [];
    const quantity = scaledQuantity(amount, factor, kindOf(amount.unit === null ? null : units.find(amount.unit))).high;
    const noun = role === 'amount' ? nounEdit(line, amount, quantity) : null;
    const ways = amountTexts(one).flatMap((text) => {
      const bare: LineEdit[] = [{ start, end, text }, ...totalEdits];
      const plain = noun ? [[...bare, noun], bare] : [bare];
      return eachEdits.length === 0 ? plain : [...plain, ...plain.map((way) => [...way, ...eachEdits])];
    });
    const taken = ways.find((way) => {
      const read = readBack(withEdits(line.text, [...edits, ...way]));
      const same = read.find((r) => plainText(r.food.name).slice(0, 4) === plainText(line.food.name).slice(0, 4)) ?? (read.length === 1 ? read[0] : undefined);
      if (read.length !== linesBefore) return false;
      const got = role === 'amount' ? same?.amount : role === 'more' ? same?.more[index] : same?.instead[index]?.amount;
      return isMeant(got ?? null, amount, one);
    });
    if (!taken) return null;
    edits = [...edits, ...taken];
  }
  return { text: withEdits(line.text, edits), edits };
}
