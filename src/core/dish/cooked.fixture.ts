import { type Food, type FoodValue, type NutrientId } from '../foods/index.ts';
import { exactly, type Interval } from '../quantity/index.ts';
import type { CookedParameters, CookedTables } from './cooked-tables.ts';
import type { IngredientLine, Recipe, StepAction } from './recipe.ts';
import type { PublishedRow } from './retention-published.ts';

/** Small tables, foods and recipes for the tests of cooking: figures chosen to be reckoned by hand, none of them published. */
export function foodOf(name: string, group: string, values: Partial<Record<NutrientId, number>>): Food {
  return {
    code: `own:${name}`, table: 'own', name, scientificName: null, localNames: null, group, refusePercent: null, refuseText: null, household: [], energyFactors: null,
    value: (nutrient): FoodValue => (values[nutrient] === undefined ? { kind: 'not-measured' } : { kind: 'analysed', per100g: values[nutrient], deviation: null, source: null }),
  };
}

export const spinach = foodOf('Spinach, raw', 'Vegetables', { water: 90, protein: 3, 'vitamin-c': 28, potassium: 500, iron: 3, manganese: 1, fat: 0.4 });
export const pepper = foodOf('Peppers, sweet, red, raw', 'Vegetables', { water: 92, protein: 1, 'vitamin-c': 128, potassium: 211 });
export const tinnedBeans = foodOf('Beans, white, mature seeds, canned', 'Legumes', { water: 70, protein: 7, potassium: 454, thiamin: 0.1 });
export const stock = foodOf('Soup, vegetable broth, ready to serve', 'Soups, sauces and gravies', { water: 98, sodium: 300 });
export const rice = foodOf('Rice, white, long-grain, raw', 'Cereal grains and pasta', { water: 12, protein: 7, magnesium: 25 });
export const wine = foodOf('Alcoholic beverage, wine, table, red', 'Beverages', { water: 86, alcohol: 10 });
export const beef = foodOf('Beef, ground, raw', 'Beef', { water: 65, protein: 20, fat: 15, iron: 2, zinc: 5, thiamin: 0.05, retinol: 4 });

const cited = (low: number, value: number, high: number) => ({ low, value, high, source: 'common-practice', locator: 'test' });
const parameters: CookedParameters = {
  evaporation: cited(0.01, 0.02, 0.04), evaporationWithLid: cited(0.05, 0.1, 0.2), evaporationLowHeat: cited(0.3, 0.5, 1), evaporationBoiling: cited(1, 2, 3), panWidth: cited(18, 22, 28),
  mostWaterLost: cited(0.85, 0.85, 0.85), density: cited(0.95, 1, 1.1), solidsKeptWhenDrained: cited(0.9, 0.95, 1), keptWithoutFactor: cited(0.7, 1, 1), compositionSpreadOtherwise: cited(0.15, 0.15, 0.15),
  time: {
    nutrients: ['vitamin-c'], least: 0.3, most: 2.5, source: 'common-practice', locator: 'test',
    minutes: { 'boiled-drained': 10, 'boiled-kept': 10, 'braised-drained': 60, 'braised-kept': 40, steamed: 10, roasted: 40, grilled: 10, fried: 10, 'stir-fried': 5, reheated: 5 },
  },
  minutesUnsaid: { raw: 0, 'boiled-drained': 10, 'boiled-kept': 10, simmered: 20, steamed: 10, stewed: 60, poached: 8, blanched: 2, roasted: 40, baked: 35, grilled: 10, 'stir-fried': 5, fried: 8, 'deep-fried': 6, toasted: 4, microwaved: 6, 'pressure-cooked': 20, reheated: 5, 'kept-hot': 30, soaked: 0 },
};
const noSpread = { animal: { low: -0.1, high: 0.1 }, plant: { low: -0.2, high: 0.2 } };

export const cookedTablesOfTest: CookedTables = {
  published: {
    source: 'usda-retention-6',
    rows: new Map<string, PublishedRow>([
      ['g1', { code: 'g1', description: 'greens, boiled, drained', kept: { 'vitamin-c': 0.5, potassium: 0.8, iron: 0.9 } }],
      ['g2', { code: 'g2', description: 'greens, water used', kept: { 'vitamin-c': 0.7, potassium: 1, iron: 1 } }],
      ['v2', { code: 'v2', description: 'vegetables, stewed, liquid kept', kept: { 'vitamin-c': 0.6, potassium: 1 } }],
      ['rh', { code: 'rh', description: 'pulses, reheated', kept: { thiamin: 0.95, potassium: 1 } }],
      ['b1', { code: 'b1', description: 'beef, ground, fried', kept: { iron: 0.95, zinc: 1, thiamin: 0.8, retinol: 0.75 } }],
      ...(['5002', '5004', '5005', '5006', '5007', '5008', '5009'] as const).map((code, i) => [code, { code, description: 'alcohol', kept: { alcohol: [0.85, 0.4, 0.35, 0.25, 0.2, 0.1, 0.05][i]! } }] as const),
    ]),
    choice: new Map([
      ['leafy-greens boiled-drained', [{ variant: '', code: 'g1' }]],
      ['leafy-greens boiled-kept', [{ variant: '', code: 'g2' }]],
      ['fruit-vegetables braised-kept', [{ variant: '', code: 'v2' }]],
      ['pulses reheated', [{ variant: '', code: 'rh' }]],
      ['beef fried', [{ variant: '', code: 'b1' }]],
    ]),
  },
  fitted: {
    source: 'sr28-pairs', solids: { 'kingdom:animal': 0.1, 'slope:animal': 0.2 }, solidsSpread: noSpread, pairs: new Map([['leafy-greens boiled-drained', 22]]),
    nutrients: new Map([
      ['potassium', { coefficients: { 'group:vegetables': -0.1 }, spread: noSpread, publishedSpread: noSpread, error: { fitted: 0.1, published: 0.12 }, use: 'fitted', pairs: 300 }],
      ['iron', { coefficients: { all: 1 }, spread: noSpread, publishedSpread: noSpread, error: { fitted: 0.1, published: 0.09 }, use: 'published', pairs: 300 }],
      ['manganese', { coefficients: { 'family:leafy-greens': -0.2 }, spread: noSpread, publishedSpread: noSpread, error: { fitted: 0.1, published: 0.2 }, use: 'fitted', pairs: 300 }],
      ['zinc', { coefficients: { all: 2 }, spread: noSpread, publishedSpread: noSpread, error: { fitted: 0.1, published: 0.2 }, use: 'fitted', pairs: 300 }],
    ]),
  },
  yields: new Map([
    ['leafy-greens boiled-drained', { family: 'leafy-greens', way: 'boiled-drained', kept: { ...cited(0.8, 0.9, 1) }, pairs: 22, other: null }],
    ['rice boiled-kept', { family: 'rice', way: 'boiled-kept', kept: { ...cited(2.6, 2.8, 3) }, pairs: 6, other: null }],
    ['pulses boiled-kept', { family: 'pulses', way: 'boiled-kept', kept: { ...cited(2.2, 2.4, 2.6) }, pairs: 0, other: null }],
    ['beef fried', { family: 'beef', way: 'fried', kept: { ...cited(0.7, 0.75, 0.8) }, pairs: 7, other: null }],
  ]),
  compositionSpread: new Map([['potassium', 0.1], ['iron', 0.2]]),
  parameters,
};

export const around = (value: number, share: number): Interval => ({ low: value * (1 - share), value, high: value * (1 + share) });

const span = { start: 0, end: 0 };
export function lineOf(id: string, name: string, qualifiers: readonly string[] = []): IngredientLine {
  return { id, text: name, span, section: null, amount: null, more: [], food: { name, qualifiers }, instead: [], remarks: [], confidence: 1 };
}

type ActionGiven = Partial<Omit<StepAction, 'minutes'>> & { readonly minutes?: number; readonly says?: string };

/** A recipe whose steps hold one action each; `says` is the action's text. */
export function recipeOf(lines: readonly IngredientLine[], actions: readonly ActionGiven[]): Recipe {
  let text = '';
  const steps = actions.map(({ minutes, says = '', ...given }, i) => {
    const at = { start: text.length, end: text.length + says.length };
    text += `${says}\n`;
    const action: StepAction = { verb: 'cook', method: null, celsius: null, heat: null, lid: null, until: null, lines: [], inPot: given.lines ?? [], ...given, minutes: minutes === undefined ? null : exactly(minutes), span: at };
    return { number: i + 1, text: says, span: at, actions: [action] };
  });
  return { title: null, servings: null, lines, steps, findings: [], text };
}
