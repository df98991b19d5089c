import { foodTable, type FoodEntry, type FoodTable } from './food-table.ts';
import { nutrientIds } from './nutrient.ts';
import { sampleEntries } from './kitchen-sample.fixture.ts';

const entry = (code: string, name: string, group: string, more: Partial<FoodEntry> = {}): FoodEntry => ({
  code, table: code.startsWith('own:') ? 'own' : code.startsWith('ifct') ? 'ifct2017' : 'sr28', name, scientificName: null, localNames: null, group, refusePercent: 0, refuseText: null, household: [], energyFactors: null, ...more,
});

/** Table foods for tests, without numbers: every cell is missing. Names and groups are shaped like a composition table's. */
export function sampleTable(more: readonly FoodEntry[] = []): FoodTable {
  const named: Record<string, [string, string]> = {
    '11529': ['Tomatoes, red, ripe, raw', 'Vegetables'], '05006': ['Chicken, meat and skin, raw', 'Poultry'], '05062': ['Chicken, breast, meat only, raw', 'Poultry'], '02042': ['Spices, thyme, dried', 'Spices and herbs'], '02030': ['Spices, pepper, black', 'Spices and herbs'],
    '11821': ['Peppers, sweet, red, raw', 'Vegetables'], '11233': ['Kale, raw', 'Vegetables'], '17001': ['Lamb, composite, raw', 'Lamb, veal and game'], '11165': ['Coriander leaves, raw', 'Vegetables'],
  };
  const codes = new Set(sampleEntries.flatMap((e) => Object.values(e.forms).map((f) => f.code ?? '')));
  const foods = [...codes].map((code) => {
    const [name, group] = named[code.replace('sr28:', '')] ?? [`Sample ${code.replace('sr28:', '')}`, 'Vegetables'];
    return entry(code, name, group);
  });
  const others = [
    entry('sr28:90001', 'Seaweed, kelp, raw', 'Vegetables'), entry('sr28:90002', 'Salsify, cooked, boiled', 'Vegetables'), entry('sr28:90003', 'Salsify, raw', 'Vegetables'), entry('sr28:90004', 'Babyfood, salsify and lamb', 'Baby foods'),
    entry('sr28:90005', 'Fast foods, potato wedge', 'Fast foods'), entry('sr28:90006', 'Nuts, pecans', 'Nuts and seeds'), entry('sr28:90007', 'Pie, pecan', 'Baked products'), ...more,
  ];
  const entries = [...foods, ...others];
  const cells = entries.length * nutrientIds.length;
  return foodTable({ nutrients: nutrientIds, entries, values: new Float64Array(cells).fill(NaN), kinds: new Uint8Array(cells), deviations: new Float64Array(cells).fill(NaN), cellSources: new Map() });
}

export const sampleOwnFood = (name: string): FoodEntry => entry(`own:${name.replace(/\W+/g, '-')}`, name, 'Own foods');
