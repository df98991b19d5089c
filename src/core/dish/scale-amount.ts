import { plainText } from '../foods/index.ts';
import type { Unit, UnitTable } from '../quantity/index.ts';
import { numbered } from './scale-words.ts';
import { cookRound, quantityText, type RoundingKind } from './scale-rounding.ts';
import type { Amount, StatedMeasure } from './recipe.ts';

const figure = String.raw`(?:\d+\s+\d+\s*[/⁄]\s*\d+|\d+\s*[/⁄]\s*\d+|\d+\s*[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|\d+(?:[.,]\d+)?)`;
const words = '(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|dozen|half|quarter|third|an?|and|of|a couple|couple|a few|few|several)';
/** A number at the start of an amount: "2", "1½", "1-2", "1 to 2", "half a", "one and a half", "a couple of". */
/** "about", "roughly": gone after scaling, as the cook's rounding says as much. */
const roughly = '(?:(?:about|around|roughly|approximately|approx\\.?|nearly|maybe|some|say|or so|~)\\s*)*';
const leading = new RegExp(String.raw`^\s*${roughly}(?:${figure}(?:\s*(?:-|–|—|to|or)\s*${figure})?(?:\s+dozen\b)?|${words}\b(?:\s+${words}\b)*)\s*`, 'i');

export interface ScaledQuantity {
  readonly low: number;
  readonly high: number;
}

/** The quantity of an amount after scaling, as a cook measures it. Both ends of a range are rounded. */
export function scaledQuantity(amount: Amount, factor: number, kind: RoundingKind): ScaledQuantity {
  const low = cookRound(amount.quantity.low * factor, kind);
  return { low, high: amount.quantity.high === amount.quantity.low ? low : Math.max(low, cookRound(amount.quantity.high * factor, kind)) };
}

const numberText = ({ low, high }: ScaledQuantity): string => (high > low ? `${quantityText(low)}–${quantityText(high)}` : quantityText(low));

/** The unit's own word in a stretch of text, and where it stands. */
function unitWordAt(text: string, unit: Unit): { readonly start: number; readonly word: string } | null {
  const plain = text.toLowerCase();
  let best: { start: number; word: string } | null = null;
  for (const spelled of unit.words) {
    const at = new RegExp(`(?<![a-z])${spelled.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![a-z])`, 'i').exec(plain);
    if (at && (!best || spelled.length > best.word.length)) best = { start: at.index, word: text.slice(at.index, at.index + spelled.length) };
  }
  return best;
}

/** The writer's word for the unit, in the number that the amount asks for. */
function unitWord(word: string, unit: Unit, quantity: number): string {
  const last = /[a-z]+$/i.exec(word)?.[0] ?? '';
  if (unit.kind === 'mass' || unit.id === 'ml' || last.length < 3 || !/[aeiou]/i.test(last)) return word;
  const other = word.slice(0, word.length - last.length) + numbered(last, quantity);
  return unit.words.includes(plainText(other)) ? other : word;
}

const measureText = (stated: StatedMeasure, factor: number, units: UnitTable, kind: (unit: Unit) => RoundingKind): string => {
  const unit = units.get(stated.unit);
  const value = cookRound(stated.quantity.value * factor, kind(unit));
  return `${quantityText(value)} ${value > 1 ? unit.many : unit.one}`;
};

export interface AmountAsked {
  readonly amount: Amount;
  readonly factor: number;
  readonly units: UnitTable;
  readonly kindOf: (unit: Unit | null) => RoundingKind;
}

/** Both measures say the same weight or volume ("200g/7oz", "1 cup (240 ml)"): one is enough, and two would drift apart. */
function isDouble(amount: Amount, units: UnitTable): boolean {
  const first = amount.unit === null ? null : units.find(amount.unit);
  return amount.total !== null && first !== null && !first.vague && (first.kind === 'mass' || first.kind === 'volume');
}

/** Ways to write the amount anew, nearest to the writer's own words first. The caller reads them back and takes the first that reads right. */
export function amountTexts(asked: AmountAsked): readonly string[] {
  const { amount, factor, units, kindOf } = asked;
  const unit = amount.unit === null ? null : units.find(amount.unit);
  const quantity = scaledQuantity(amount, factor, kindOf(unit));
  const number = numberText(quantity);
  const lead = leading.exec(amount.text)?.[0] ?? '';
  const rest = amount.text.slice(lead.length);
  const tight = lead !== '' && !/\s$/.test(lead) && /^[a-z]/i.test(rest);
  const inWords = (text: string): string => {
    const found = unit ? unitWordAt(text, unit) : null;
    return found && unit ? text.slice(0, found.start) + unitWord(found.word, unit, quantity.high) + text.slice(found.start + found.word.length) : text;
  };
  const plainUnit = unit === null ? '' : ` ${quantity.high > 1 ? unit.many : unit.one}`;
  const sizeAndFill = [amount.fill === null || amount.fill === 'level' ? null : amount.fill, amount.size].filter((w) => w !== null).join(' ');
  const each = amount.each ? `${quantityText(amount.each.quantity.value)} ${units.get(amount.each.unit).one}` : null;
  const regenerated = each !== null
    ? [`${number} x ${each}${plainUnit}`]
    : [`${number}${sizeAndFill === '' ? '' : ` ${sizeAndFill}`}${plainUnit}`];
  if (isDouble(amount, units)) return [`${number}${tight ? '' : ' '}${inWords(rest).replace(/\s*[/(].*$/, '')}`.trim(), ...regenerated];
  // "400g tin", "a 400g tin": the number that leads is the weight of one.
  const led = new RegExp(String.raw`^\s*(?:an?\s+|one\s+)?(${figure})`, 'i').exec(amount.text)?.[1];
  const leadsWithEach = amount.each !== null && led !== undefined && Math.abs(Number(led.replace(',', '.')) - amount.each.quantity.value) < 1e-9 && !(amount.quantity.value > 1)
    && unitWordAt(amount.text.slice(amount.text.indexOf(led) + led.length).trimStart(), units.get(amount.each.unit))?.start === 0;
  const ownWords = leadsWithEach
    ? [`${number} x ${inWords(amount.text.replace(/^\s*(?:an?|one)\s+/i, ''))}`]
    : [`${number}${tight ? '' : ' '}${inWords(rest)}`.trim(), `${number} ${inWords(rest)}`.trim()];
  return [...new Set([...ownWords, ...regenerated])];
}

/** A stated total anew: "(about 250 g)" for three carrots becomes "(about 420 g)" for five. */
export function totalText(asked: AmountAsked): string | null {
  const { amount, factor, units, kindOf } = asked;
  return amount.total === null || isDouble(amount, units) ? null : measureText(amount.total, factor, units, kindOf);
}
