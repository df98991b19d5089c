import { foodTable, nutrientIds, type FoodEntry, type FoodMatch, type KitchenEntry } from '../foods/index.ts';
import { exactly, unitTable, type Interval, type Unit, type UnitKind } from '../quantity/index.ts';
import type { Amount, IngredientLine, LineRemark, MethodStep, Recipe, StepAction } from './recipe.ts';
import type { WeighTables } from './weigh-context.ts';
import { eatenCodes, type Figure, type WeighingRules } from './weighing-rules.ts';

/** Tables for tests of weighing: round numbers, so that a sum can be done in the head. */
const cited = { source: 'sample', locator: 'sample' };
const figure = (value: number, spread = 0): Figure => ({ value, spread, ...cited });

const unit = (id: string, kind: UnitKind, size: number | null, more: Partial<Unit> = {}): Unit => ({
  id, kind, one: id, many: `${id}s`, words: [id], exactWords: [], vague: false, container: false, holds: false, inName: false, spoon: false,
  sizes: size === null ? {} : { any: { value: size, spread: more.vague ? 0.4 : 0, ...cited } }, ...more,
});

export const sampleUnits = unitTable([
  unit('g', 'mass', 1), unit('kg', 'mass', 1000), unit('ml', 'volume', 1), unit('tbsp', 'volume', 15), unit('tsp', 'volume', 5), unit('cup', 'volume', 250), unit('cm', 'length', 1),
  unit('handful', 'volume', 120, { vague: true }), unit('pinch', 'volume', 0.3, { vague: true }), unit('thumb', 'length', 5, { vague: true }),
  ...['piece', 'clove', 'slice', 'stick', 'stalk', 'bunch', 'sprig', 'leaf', 'half', 'breast', 'head', 'fillet'].map((id) => unit(id, 'count', null)), unit('tin', 'count', null, { container: true }), unit('some', 'count', null, { vague: true }),
]);

const food = (code: string, name: string, group: string, more: Partial<FoodEntry> = {}): FoodEntry => ({ code, table: 'sr28', name, scientificName: null, localNames: null, group, refusePercent: 0, refuseText: null, household: [], energyFactors: null, ...more });

const entries: FoodEntry[] = [
  food('sr28:1', 'Onions, raw', 'Vegetables', { refusePercent: 10, refuseText: 'Stem ends', household: [{ text: '1 cup, chopped', grams: 160 }, { text: '1 medium (2-1/2" dia)', grams: 110 }] }),
  food('sr28:2', 'Beans, canned, drained solids', 'Legumes'),
  food('sr28:3', 'Oil, olive', 'Fats and oils', { household: [{ text: '1 tablespoon', grams: 13.5 }] }),
  food('sr28:4', 'Lemon juice, raw', 'Fruits and juices'),
  food('sr28:5', 'Salt, table', 'Spices and herbs', { household: [{ text: '1 tsp', grams: 6 }] }),
  food('sr28:6', 'Fish, trout, raw', 'Fish and shellfish', { refusePercent: 53, refuseText: 'Skin, head, bones', household: [{ text: '1 fish', grams: 332 }] }),
  food('sr28:7', 'Ginger root, raw', 'Vegetables', { refusePercent: 0 }),
  food('sr28:8', 'Water, tap', 'Beverages', { household: [{ text: '1 fl oz', grams: 29.6 }] }),
  food('sr28:9', 'Spices, bay leaf', 'Spices and herbs'),
  food('sr28:10', 'Quince, raw', 'Fruits and juices'),
];
const cells = entries.length * nutrientIds.length;

const shares = Object.fromEntries(eatenCodes.map((code) => [code, { low: 0, value: code === 'all' ? 1 : code === 'taken-out' || code === 'cooking-water' || code === 'left-out' || code === 'optional-unmeasured' || code === 'counted-before' || code === 'bones' ? 0 : 0.2, high: 1, ...cited }])) as unknown as WeighingRules['eaten']['shares'];

export const sampleRules: WeighingRules = {
  spreads: { weighed: figure(0.02), measured: figure(0.05), household: figure(0.15), container: figure(0.03), refuse: figure(0.05), sizeUnsaid: figure(0.2) },
  tableMeasures: { cup: figure(236.588), tbsp: figure(14.787), tsp: figure(4.929), 'fl-oz': figure(29.574) },
  fills: { scant: figure(0.8, 0.1), level: figure(1), heaped: figure(1.5, 0.2) },
  softFills: { scant: figure(0.9, 0.1), level: figure(1), heaped: figure(1.2, 0.1) },
  sizeFactors: { small: figure(0.5, 0.1), medium: figure(1), large: figure(1.5, 0.1) },
  drainedShares: [{ name: null, group: null, ...figure(0.6, 0.1) }],
  pieces: [
    { unit: 'tin', word: null, name: null, group: null, grams: 400, shareOfPiece: null, spread: 0.1, basis: 'whole-tin', ...cited },
    { unit: 'sprig', word: null, name: null, group: null, grams: 1, shareOfPiece: null, spread: 0.5, basis: 'net', ...cited },
    { unit: 'half', word: null, name: null, group: null, grams: null, shareOfPiece: 0.5, spread: 0.05, basis: 'net', ...cited },
    { unit: 'thumb', word: null, name: 'ginger', group: null, grams: 20, shareOfPiece: null, spread: 0.3, basis: 'gross', ...cited },
  ],
  lengths: [{ name: 'ginger', group: null, gramsACm: 5, spread: 0.4, basis: 'gross', ...cited }],
  densities: [{ name: 'oil$|juice$|water$', group: null, fluid: true, ...figure(1, 0.03) }, { name: null, group: 'spices', fluid: false, ...figure(0.5, 0.3) }],
  noAmount: [{ remark: null, name: 'salt', group: null, gramsAServing: 1, spread: 0.7, ...cited }],
  servingsUnsaid: 4,
  mostAServing: [{ name: 'salt', group: null, grams: 10 }, { name: null, group: null, grams: 1000 }],
  fruits: [{ food: 'lemon', juiceMl: figure(45, 0.3), zestG: figure(5, 0.4) }],
  fruitSizes: { small: figure(0.7, 0.1), medium: figure(1), large: figure(1.3, 0.1) },
  eaten: {
    shares, deepFryingFromGAServing: 60,
    alwaysTakenOut: [{ name: 'bay lea(f|ves)', units: null, unlessForm: null, unlessWords: [] }, { name: 'cinnamon', units: ['stick'], unlessForm: null, unlessWords: [] }, { name: 'lemongrass', units: ['stalk'], unlessForm: null, unlessWords: ['chopped'] }],
    takingOut: ['remove', 'discard', 'fish out'], pouringAway: ['drain', 'discard', 'pour away'], marinated: 'chicken|tofu', bones: '\\bbones?$',
  },
};

export const sampleTables: WeighTables = {
  units: sampleUnits,
  foods: foodTable({ nutrients: nutrientIds, entries, values: new Float64Array(cells).fill(NaN), kinds: new Uint8Array(cells), deviations: new Float64Array(cells).fill(NaN), cellSources: new Map() }),
  rules: sampleRules,
};

export const onion: KitchenEntry = {
  name: 'onion', also: [], area: 'sample', usual: 'raw', forms: { raw: { code: 'sr28:1', nearness: 'same', note: null } }, refusePercent: null,
  pieces: [{ unit: 'piece', size: null, form: null, grams: 150, spread: 0.2, basis: 'gross', ...cited }, { unit: 'piece', size: 'large', form: null, grams: 200, spread: 0.2, basis: 'gross', ...cited }, { unit: 'handful', size: null, form: null, grams: 60, spread: 0.4, basis: 'net', ...cited }],
  densities: [{ state: 'chopped', form: null, gramsAMillilitre: 0.6, spread: 0.1, ...cited }, { state: 'grated', form: null, gramsAMillilitre: 1, spread: 0.1, ...cited }],
};
export const bareEntry = (name: string, code: string, form: KitchenEntry['usual'] = 'raw'): KitchenEntry => ({ ...onion, name, usual: form, forms: { [form]: { code, nearness: 'same', note: null } }, pieces: [], densities: [] });

export function matchOf(entry: KitchenEntry | null, code: string | null = entry?.forms[entry.usual]?.code ?? null): FoodMatch {
  return { via: entry ? 'kitchen-name' : 'none', entry, form: entry?.usual ?? null, code, nearness: 'same', note: null, confidence: 1, reasons: [], alternatives: [] };
}

export function amountOf(quantity: number | Interval, unitId: string | null, more: Partial<Amount> = {}): Amount {
  return { quantity: typeof quantity === 'number' ? exactly(quantity) : quantity, unit: unitId, size: null, fill: null, each: null, total: null, vague: false, text: `${typeof quantity === 'number' ? quantity : quantity.value} ${unitId ?? ''}`, ...more };
}

export function lineOf(text: string, amount: Amount | null, more: Partial<IngredientLine> & { name?: string; qualifiers?: string[]; remarks?: LineRemark[] } = {}): IngredientLine {
  const { name, qualifiers, ...rest } = more;
  return { id: 'l1', text, span: { start: 0, end: text.length }, section: null, amount, more: [], food: { name: name ?? text, qualifiers: qualifiers ?? [] }, instead: [], remarks: [], confidence: 1, ...rest };
}

export function recipeOf(lines: readonly IngredientLine[], steps: readonly { text: string; actions?: readonly Partial<StepAction>[] }[] = [], title: string | null = null): Recipe {
  const made: MethodStep[] = steps.map((step, i) => ({
    number: i + 1, text: step.text, span: { start: 0, end: 0 },
    actions: (step.actions ?? []).map((a) => ({ verb: '', method: null, minutes: null, celsius: null, heat: null, lid: null, until: null, lines: [], inPot: [], span: { start: 0, end: 0 }, ...a })),
  }));
  return { title, servings: null, lines, steps: made, findings: [], text: '' };
}
