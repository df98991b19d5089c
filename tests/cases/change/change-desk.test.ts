import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openEmbeddedStore } from '../../../src/adapters/store/index.ts';
import { readChangeTables, readDishTables } from '../../../src/adapters/tables/index.ts';
import { createChangeDesk, type ChangeDesk } from '../../../src/app/change-desk.ts';
import { usualChoices } from '../../../src/app/dish-choices.ts';
import type { Store } from '../../../src/app/ports.ts';
import { countingIds, steppingClock } from '../../contract/store-contract.ts';

let store: Store;
let desk: ChangeDesk;
const tables = readDishTables();
beforeAll(async () => {
  store = await openEmbeddedStore({ file: ':memory:', migrations: join(import.meta.dirname, '../../../migrations') }, steppingClock(), countingIds());
  desk = createChangeDesk({ tables: () => tables, change: readChangeTables(), values: store.values, dishes: store.dishes, clock: steppingClock(), ids: countingIds() });
});
afterAll(() => store.close());

const dish = (text: string) => ({ text, choices: usualChoices });
const soup = 'Kale soup\nServes 2\n\nIngredients\n200 g kale\n1 tbsp groundnut oil\n2 tbsp dark soy sauce\n\nMethod\n1. Simmer for 10 minutes. Top with walnuts.\n';

describe('the change desk', () => {
  it('tells allergens of compound foods, of the method, and what is not known', async () => {
    const report = await desk.allergens(dish(soup));
    const state = new Map(report.items.map((i) => [i.id, i.state]));
    expect(state.get('soybeans')).toBe('contains');
    expect(state.get('gluten-cereals')).toBe('contains');
    expect(state.get('peanuts')).toBe('contains');
    expect(report.items.find((i) => i.id === 'nuts')?.reasons.join(' ')).toMatch(/method speaks of “walnuts?”/);
    expect(state.get('crustaceans')).toBe('unknown');
    expect(JSON.stringify(report).toLowerCase()).not.toMatch(/free from|free of/);
  });

  it('tells by another law when asked, and refuses one that is none', async () => {
    expect((await desk.allergens(dish('1 tin coconut milk\n20 g pine nuts'), 'us')).items.find((i) => i.id === 'tree-nuts')?.state).toBe('contains');
    await expect(desk.allergens(dish('kale'), 'moon')).rejects.toMatchObject({ code: 'bad-input' });
  });

  it('never tells an empty or unread text as without something', async () => {
    for (const text of ['', 'hello there, how are you']) {
      const report = await desk.allergens(dish(text));
      expect(report.items.filter((i) => i.state === 'not')).toEqual([]);
    }
  });

  it('keeps prices, brings CSV in over older rows, and gives it out again', async () => {
    const brought = await desk.bringPrices('food,pack,price,shop,date\nkale,200 g,1.20,invented,2026-01-02\nkale,200 g,lots,x,2026-01-02\n');
    expect(brought).toMatchObject({ added: 1, faults: [expect.stringContaining('Row 3')] });
    await desk.bringPrices('food,pack,price,shop,date\nKale,200 g,1.60,invented,2026-01-04\n');
    expect((await desk.prices()).rows.map((r) => r.price)).toEqual([1.6]);
    expect(await desk.pricesCsv()).toContain('Kale,200 g,1.6,invented,2026-01-04');
    const cost = await desk.cost(dish(soup));
    expect(cost.missing).toBe(2);
    expect(cost.portion).toMatch(/^at least £/);
  });

  it('tells the price of a nutrient only for foods that have a price', async () => {
    expect((await desk.cheapest('magnesium', 100)).map((c) => c.food)).toEqual(['kale']);
    await expect(desk.cheapest('vibes', 100)).rejects.toMatchObject({ code: 'unknown-nutrient' });
  });

  it('puts two dishes side by side and says which foods are in one only', async () => {
    const report = await desk.compare([{ name: 'one', ...dish(soup) }, { name: 'two', ...dish(soup.replace('1 tbsp groundnut oil', '1 tbsp olive oil')) }]);
    expect(report.allergens.find((a) => a.name === 'peanuts')).toMatchObject({ differ: true });
    expect(report.onlyIn).toEqual([{ name: 'one', lines: ['1 tbsp groundnut oil'] }, { name: 'two', lines: ['1 tbsp olive oil'] }]);
    expect(report.nutrients.find((n) => n.id === 'magnesium')?.cells).toHaveLength(2);
    await expect(desk.compare([{ name: 'one', ...dish(soup) }])).rejects.toMatchObject({ code: 'bad-input' });
  });

  it('keeps her months before the table’s and takes them back', async () => {
    expect((await desk.saveSeason('kale', '1')).find((r) => r.name === 'kale')).toMatchObject({ months: '1', own: true, state: 'in' });
    expect((await desk.saveSeason('kale', null)).find((r) => r.name === 'kale')).toMatchObject({ own: false });
    await expect(desk.saveSeason('kale', 'spring')).rejects.toMatchObject({ code: 'bad-input' });
  });

  it('suggests the saved dish that uses up what she has', async () => {
    await store.dishes.create({ name: 'Kale soup', text: soup, choices: usualChoices });
    await store.dishes.create({ name: 'Toast', text: 'Toast\nServes 1\n\nIngredients\n2 slices white bread\n', choices: usualChoices });
    const report = await desk.savePantry([{ food: 'kale', amount: '300 g', useBy: '2026-01-07' }, { food: 'moonbeams', amount: '', useBy: null }]);
    expect(report.suggestions.map((s) => [s.name, s.uses, s.firstUseBy])).toEqual([['Kale soup', ['kale'], '2026-01-07']]);
    expect(report.items.map((i) => i.readAs)).toEqual(['kale', null]);
  });

  it('keeps her settings and tells money in her currency', async () => {
    await desk.saveSettings({ currency: 'kr', staleDays: 30, allergenList: 'us', region: 'uk' });
    expect((await desk.cost(dish(soup))).pot).toMatch(/ kr$/);
    await expect(desk.saveSettings({ currency: 'kr', staleDays: 30, allergenList: 'moon', region: 'uk' })).rejects.toMatchObject({ code: 'bad-input' });
  });

  it('explains why a wish has no answer', async () => {
    const report = await desk.wish(dish(soup), { nutrients: [{ id: 'magnesium', least: 9000, most: null }], costMost: null, without: [], diets: [], keep: [], swaps: 3, strict: false, answers: 3 });
    expect(report.answers).toEqual([]);
    expect(report.words).toContain('magnesium');
  });
});
