import { foldWord, readHousehold, type PieceWeight } from '../foods/index.ts';
import type { PieceSize } from './recipe.ts';
import { countStep, startWith, type WeighContext } from './weigh-context.ts';
import { combinedSpread, times, type Estimate, type WeighStep } from './weigh-estimate.ts';
import { fillStep } from './weigh-volume.ts';
import { fits, type UsualPiece } from './weighing-rules.ts';

// Units that a cook uses for the same thing, nearest first. A whole one may be told as any of these.
const wholes = ['piece', 'head', 'bulb', 'root', 'ear', 'breast', 'fillet', 'steak', 'thigh', 'leg', 'drumstick', 'wing', 'chop', 'cutlet', 'shank', 'sausage', 'link', 'loaf', 'ball', 'stalk', 'pod', 'spear', 'leaf', 'cube', 'slice', 'rasher', 'sheet', 'nest', 'block'];
const kin: Readonly<Record<string, readonly string[]>> = {
  piece: wholes,
  head: ['piece', 'bulb'], bulb: ['head', 'piece'], root: ['piece', 'bulb'], ear: ['piece'], breast: ['piece'], fillet: ['piece'], steak: ['piece'], thigh: ['piece'], leg: ['piece'],
  drumstick: ['piece'], wing: ['piece'], chop: ['piece', 'cutlet'], cutlet: ['piece', 'chop'], shank: ['piece'], joint: ['piece'], sausage: ['piece', 'link'], loaf: ['piece'], ball: ['piece', 'block'], block: ['piece', 'packet', 'ball'],
  stalk: ['stick', 'rib', 'stem', 'piece'], stick: ['stalk', 'rib', 'stem', 'piece'], rib: ['stalk', 'stick', 'piece'], stem: ['stalk', 'stick', 'piece'], pod: ['piece'], spear: ['piece', 'stalk'], cube: ['piece'],
  packet: ['bag', 'pouch', 'block', 'tub'], bag: ['packet', 'pouch'], pouch: ['packet', 'bag'], tub: ['carton', 'packet'], carton: ['tub', 'packet'], punnet: ['packet'], box: ['packet'], tray: ['packet'], leaf: ['piece'], slice: [], clove: [], tin: [],
};
const slicedOff = new Set(['chop', 'steak', 'cutlet', 'fillet']);
const jointFrom = 2.5;
const vagueConfidence = 0.75;
const confidences = { kitchen: 0.92, kin: 0.82, table: 0.85, usual: 0.6 };

interface PieceChoice {
  readonly step: WeighStep;
  readonly basis: 'gross' | 'net';
  readonly confidence: number;
  /** The size that the weight is already for. */
  readonly size: PieceSize | null;
}

function sizeRank(piece: { size: PieceSize | null }, asked: PieceSize | null): number {
  if (piece.size === asked) return 0;
  if (asked === null) return piece.size === 'medium' ? 1 : 2;
  return piece.size === null ? 1 : piece.size === 'medium' ? 2 : 3;
}

function kitchenPiece(context: WeighContext, unit: string): PieceChoice | null {
  const { match, amount, tables } = context;
  const all = match.entry?.pieces ?? [];
  const ofUnit = (id: string): PieceWeight[] => all.filter((p) => p.unit === id && (p.form === null || p.form === match.form || (id === 'tin' && match.form === 'canned')));
  const [found, near] = ofUnit(unit).length > 0 ? [ofUnit(unit), false] : [(kin[unit] ?? []).map(ofUnit).find((pieces) => pieces.length > 0) ?? [], true];
  const best = [...found].sort((a, b) => Number(b.form === match.form) - Number(a.form === match.form) || sizeRank(a, amount.size) - sizeRank(b, amount.size))[0];
  if (!best) return null;
  const unsaid = amount.size === null && best.size !== null ? tables.rules.spreads.sizeUnsaid.value : 0;
  return {
    step: { kind: 'kitchen-piece', data: { unit: best.unit, size: best.size ?? '', name: match.entry?.name ?? '' }, factor: best.grams, unit: 'g', spread: combinedSpread(best.spread, unsaid), source: best.source, locator: best.locator },
    basis: best.basis,
    confidence: near && unit !== 'piece' ? confidences.kin : confidences.kitchen,
    size: best.size,
  };
}

function tablePiece(context: WeighContext, unit: string): PieceChoice | null {
  const { food, amount, tables } = context;
  if (!food) return null;
  const nouns = new Set([...context.names.names, food.name.split(',')[0] ?? ''].flatMap((name) => name.split(/\s+/)).map((w) => foldWord(w.toLowerCase())));
  const isWhole = (noun: string): boolean => noun === 'piece' || noun === 'fruit' || noun === 'whole' || noun === 'item' || nouns.has(noun);
  const read = food.household.flatMap((measure) => {
    const reading = readHousehold(measure.text);
    return reading?.kind === 'count' && !reading.isYield && (reading.unit === unit || (unit === 'piece' && isWhole(reading.unit))) ? [{ measure, reading }] : [];
  });
  const best = read.sort((a, b) => sizeRank(a.reading, amount.size) - sizeRank(b.reading, amount.size))[0];
  if (!best) return null;
  const unsaid = amount.size === null ? tables.rules.spreads.sizeUnsaid.value : 0;
  return {
    step: {
      kind: 'table-piece', data: { text: best.measure.text, grams: best.measure.grams, code: food.code }, factor: best.measure.grams / best.reading.count, unit: 'g',
      spread: combinedSpread(tables.rules.spreads.household.value, unsaid), source: food.table, locator: `${food.code}: ${best.measure.text}`,
    },
    basis: best.reading.withRefuse ? 'gross' : 'net',
    confidence: confidences.table,
    size: best.reading.size,
  };
}

function usualPiece(context: WeighContext, unit: string, byWord: boolean): { rule: UsualPiece; choice: PieceChoice } | null {
  const rule = context.tables.rules.pieces.find((piece) => piece.unit === unit && piece.grams !== null && (piece.word === null ? !byWord : byWord && context.words.has(piece.word)) && fits(piece, context.names));
  if (!rule) return null;
  return {
    rule,
    choice: {
      step: { kind: 'usual-piece', data: { unit }, factor: rule.grams ?? 0, unit: 'g', spread: rule.spread, source: rule.source, locator: rule.locator },
      basis: rule.basis === 'gross' ? 'gross' : 'net',
      confidence: confidences.usual,
      size: null,
    },
  };
}

// The line's figure is already that of the drained food.
const statedDrained = /drained\s+(weight|wt)|net\s+drained|\d\s*(g|grams?|oz)\.?\s+(when\s+)?drained/i;

// What the fish or beans lie in is eaten with them.
const eatenWithLiquid = /\bin\b.*\b(sauce|juice|gravy|syrup)\b|undrained|with (its|their|the) (juice|liquid|oil)/i;

/** What is left of a tin when the cook drains it or the table's food is the drained one; null when the liquid is eaten too. */
export function drainedStep(context: WeighContext): WeighStep | null {
  const name = context.food?.name.toLowerCase() ?? '';
  const drainedFood = /drained/.test(name) && !/solids and liquid/.test(name);
  const byCook = context.words.has(foldWord('drained')) || context.words.has(foldWord('rinsed'));
  if (!byCook && (!drainedFood || eatenWithLiquid.test(context.line.text))) return null;
  if (statedDrained.test(context.line.text)) return null;
  const figure = context.tables.rules.drainedShares.find((rule) => fits(rule, context.names));
  return figure ? { kind: 'drained', data: {}, factor: figure.value, unit: '1', spread: figure.spread, source: figure.source, locator: figure.locator } : null;
}

const smallByName = /^(baby|mini|small|dwarf)\b/;
const largeByName = /\b(portobello|portabella|flat mushroom|king|jumbo|giant|beefsteak|beef tomato)\b/;

function sizeStep(context: WeighContext, done: PieceSize | null): WeighStep | null {
  const asked = context.amount.size;
  if (asked === null || asked === done || asked === 'medium') return null;
  // "Baby aubergine" is small already.
  if (asked === 'small' && smallByName.test(context.match.entry?.name ?? '')) return null;
  if (asked === 'large' && done === null && [context.match.entry?.name ?? '', ...(context.match.entry?.also ?? [])].some((name) => largeByName.test(name))) return null;
  const figure = context.tables.rules.sizeFactors[asked];
  const base = done === null ? 1 : context.tables.rules.sizeFactors[done].value;
  return { kind: 'size', data: { size: asked }, factor: figure.value / base, unit: '1', spread: figure.spread, source: figure.source, locator: figure.locator };
}

/** The weight of one of that unit, without counting: kitchen names first, then the table's household weights, then what is usual. */
function onePiece(context: WeighContext, unit: string): { choice: PieceChoice; wholeTin: boolean } | null {
  const worded = usualPiece(context, unit, true);
  const own = worded?.choice ?? kitchenPiece(context, unit) ?? tablePiece(context, unit);
  const cut = own && slicedOff.has(unit) && own.step.data['unit'] !== unit ? usualPiece(context, unit, false) : null;
  // A chop or steak of a joint: the joint's weight is not the chop's.
  if (cut && own && own.step.factor > jointFrom * cut.choice.step.factor) return { choice: cut.choice, wholeTin: false };
  if (own) return { choice: own, wholeTin: false };
  const usual = usualPiece(context, unit, false);
  return usual ? { choice: usual.choice, wholeTin: usual.rule.basis === 'whole-tin' } : null;
}

/** A number of things: cloves, slices, bunches, tins, or bare "2 onions"; null when nothing tells what one weighs. */
export function weighCount(context: WeighContext, unit: string): Estimate | null {
  const vague = context.tables.units.find(unit)?.vague ?? false;
  const start = startWith(countStep(context, 'amount'), 'net', vague ? vagueConfidence : 1);
  const one = onePiece(context, unit);
  if (one) {
    const sized = sizeStep(context, one.choice.size);
    const counted = times(start, one.choice.step, { basis: one.choice.basis, confidence: one.choice.confidence });
    const withSize = sized ? times(counted, sized) : counted;
    const fill = fillStep(context, true);
    const filled = fill ? times(withSize, fill) : withSize;
    const drained = one.wholeTin ? drainedStep(context) : null;
    return drained ? times(filled, drained) : filled;
  }
  const part = context.tables.rules.pieces.find((rule) => rule.unit === unit && rule.shareOfPiece !== null);
  const whole = part ? onePiece(context, 'piece') : null;
  if (!part || !whole) return null;
  const share: WeighStep = { kind: 'usual-piece', data: { unit }, factor: part.shareOfPiece ?? 1, unit: '1', spread: part.spread, source: part.source, locator: part.locator };
  const sized = sizeStep(context, whole.choice.size);
  const estimate = times(times(start, whole.choice.step, { basis: whole.choice.basis, confidence: whole.choice.confidence }), share);
  return sized ? times(estimate, sized) : estimate;
}

/** A length of a root or stick; null when nothing tells what a centimetre of the food weighs. */
export function weighLength(context: WeighContext, unit: string, quantity = context.amount.quantity): Estimate | null {
  const { tables, settings, match } = context;
  const size = tables.units.size(unit, settings.measures);
  if (!size) return null;
  const own = match.entry?.pieces.find((p) => p.unit === 'cm');
  const usual = tables.rules.lengths.find((rule) => fits(rule, context.names));
  const gramsACm = own?.grams ?? usual?.gramsACm;
  const figure = own ?? usual;
  if (gramsACm === undefined || !figure) return null;
  const start = startWith(countStep(context, 'amount', quantity), figure.basis, confidences.usual);
  const sized = times(start, { kind: 'unit-size', data: { unit }, factor: size.value, unit: 'cm', spread: size.spread, source: size.source, locator: size.locator });
  return times(sized, { kind: 'length', data: {}, factor: gramsACm, unit: 'g/cm', spread: figure.spread, source: figure.source, locator: figure.locator });
}
