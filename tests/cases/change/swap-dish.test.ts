import { describe, expect, it } from 'vitest';
import { readChangeTables, readDishTables } from '../../../src/adapters/tables/index.ts';
import { changeContexts } from '../../../src/app/change-tables.ts';
import { usualChoices } from '../../../src/app/dish-choices.ts';
import { priceDish, readPriceList } from '../../../src/app/price-dish.ts';
import { searchWish, wishedSubstances, type SwapWish } from '../../../src/app/search-swaps.ts';
import { swapLine } from '../../../src/app/swap-line.ts';
import { workOutDish, type WorkedDish } from '../../../src/app/work-out-dish.ts';
import { swapInRecipe, type PriceRow } from '../../../src/core/dish/index.ts';

const tables = readDishTables();
// Invented prices.
const row = (food: string, pack: string, price: number): PriceRow => ({ id: food, food, pack, price, shop: 'invented', date: '2026-11-01' });
const list = readPriceList([row('spelt', '500 g', 2.2), row('pearl barley', '500 g', 1.1), row('hazelnuts', '100 g', 2), row('pumpkin seeds', '100 g', 1.2), row('carrots', '1 kg', 1), row('moon fruit', '1 kg', 1), row('kale', 'a heap', 1)], tables);
const context = changeContexts(tables, readChangeTables())({ prices: { list: list.priced, today: '2026-11-25', staleDays: 180 }, currency: '£', allergenList: 'eu', region: 'uk', month: 11, ownSeasons: {} });
const text = 'Spelt and greens\nServes 4\n\nIngredients\n300 g spelt\n50 g hazelnuts, chopped\n200 g spinach\n2 tbsp olive oil\n1 vegetable stock cube\n\nMethod\n1. Simmer the spelt in 1 litre water for 25 minutes.\n2. Stir in the spinach, top with hazelnuts.\n';
const dish = workOutDish(text, usualChoices, tables);
const lineOf = (worked: WorkedDish, words: string): string => worked.lines.find((l) => l.line.text.includes(words))?.line.id ?? '';
const wish: SwapWish = { nutrients: [], costMost: null, without: [], diets: [], keep: [], swaps: 3, strict: false, answers: 3 };

describe('a price list of her own', () => {
  it('finds the foods and what is edible in a pack, and tells the rows that it cannot use', () => {
    expect(list.priced.map((p) => p.entryName)).toEqual(['spelt', 'pearl barley', 'hazelnuts', 'pumpkin seeds', 'carrot']);
    expect(list.priced[4]?.edibleG).toBeLessThan(1000);
    expect(list.problems.map((p) => [p.row.food, p.code])).toEqual([['moon fruit', 'food-not-known'], ['kale', 'pack-not-known']]);
  });
  it('prices a dish with the lines that have a price, and says how many have none', () => {
    const cost = priceDish(dish, context.settings.prices);
    expect(cost.pot).toBeCloseTo(300 * (2.2 / 500) + 50 * (2 / 100), 6);
    expect(cost.missing).toBe(3);
  });
});

describe('swapping a line', () => {
  const effects = swapLine(dish, lineOf(dish, 'spelt'), 8, context);
  const barley = effects.find((e) => e.option.entry.name === 'pearl barley');
  it('tells what a portion gains and loses, the cost, the allergens and the time', () => {
    expect(barley?.text).toBe('300 g pearl barley');
    expect(barley?.cost.change).toBeCloseTo((300 * (1.1 - 2.2)) / 500 / 4, 6);
    expect(barley?.allergens.find((a) => a.item === 'gluten-cereals')).toBeUndefined();
    expect(barley?.option.minutes).toEqual({ before: 25, after: 30 });
  });
  it('agrees with working the whole dish out with the other line', () => {
    const line = dish.lines[0]!.line;
    const swapped = swapInRecipe(dish.recipe, [{ line, text: barley?.text ?? '', name: 'pearl barley' }]);
    expect(swapped).toContain('Simmer the pearl barley in 1 litre');
    const after = workOutDish(swapped, usualChoices, tables);
    for (const id of ['magnesium', 'iron', 'energy', 'folate-dfe', 'vitamin-c'] as const) {
      const change = ((after.totals.totals.get(id)?.known ?? 0) - (dish.totals.totals.get(id)?.known ?? 0)) / 4;
      const told = barley?.nutrients.get(id);
      if (told !== null && told !== undefined) expect(told).toBeCloseTo(change, 6);
    }
    expect(barley?.nutrients.get('magnesium')).not.toBeNull();
  });
  it('keeps the amount’s own words, writes others in spoons or grams that read back', () => {
    for (const line of dish.lines) for (const effect of swapLine(dish, line.line.id, 12, context)) {
      if (effect.text === null || effect.grams.after === null || effect.grams.before === null) continue;
      expect(Math.abs(effect.grams.after / (effect.grams.before * effect.option.ratio) - 1), effect.text).toBeLessThanOrEqual(0.26);
    }
    expect(swapLine(dish, lineOf(dish, 'olive oil'), 3, context)[0]?.text).toMatch(/^2 tbsp /);
  });
  it('does not swap one for one where strength differs', () => {
    const sweet = workOutDish('Tea\nServes 1\n\nIngredients\n100 g honey\n', usualChoices, tables);
    const maple = swapLine(sweet, lineOf(sweet, 'honey'), 12, context).find((e) => e.option.entry.name === 'maple syrup');
    expect(maple?.option.ratio).toBeCloseTo(1.05 / 0.65, 6);
    expect(maple?.option.reasons.find((r) => r.code === 'amount')).toMatchObject({ keeps: 'sweetness' });
  });
  it('sees that walnuts for hazelnuts stay nuts and pumpkin seeds do not', () => {
    const all = swapLine(dish, lineOf(dish, 'hazelnuts'), 40, context);
    expect(all.find((e) => e.option.entry.name === 'walnuts')?.allergens).toEqual([]);
    const seeds = all.find((e) => e.option.entry.name === 'pumpkin seeds');
    expect(seeds?.allergens.find((a) => a.item === 'nuts')).toMatchObject({ before: 'contains', after: 'may' });
  });
});

describe('a wish answered by search', () => {
  it('reaches magnesium without nuts within a cost, and the text it writes holds when worked out again', () => {
    const asked: SwapWish = { ...wish, nutrients: [{ id: 'magnesium', least: 160, most: null }], costMost: 2.5, without: ['nuts'] };
    const { answers } = searchWish(dish, asked, context);
    expect(answers.length).toBeGreaterThan(0);
    for (const answer of answers) {
      const again = workOutDish(answer.text, { ...usualChoices, servings: 4 }, tables);
      expect((again.totals.totals.get('magnesium')?.known ?? 0) / 4).toBeGreaterThanOrEqual(160 * 0.97);
      expect(answer.text).not.toContain('hazelnuts,');
      expect(answer.swaps.some((s) => s.before.includes('hazelnuts'))).toBe(true);
      expect(again.lines.length).toBe(dish.lines.length);
    }
  });
  it('changes nothing when the dish already meets the wish', () => {
    expect(searchWish(dish, { ...wish, nutrients: [{ id: 'magnesium', least: 50, most: null }] }, context).answers[0]?.swaps).toEqual([]);
  });
  it('says what is out of reach', () => {
    expect(searchWish(dish, { ...wish, nutrients: [{ id: 'magnesium', least: 5000, most: null }] }, context)).toMatchObject({ answers: [], outOfReach: [{ kind: 'nutrient', id: 'magnesium' }] });
  });
  it('takes “nuts” for every nut, peanuts and pine nuts too, and refuses words that it does not know', () => {
    expect(wishedSubstances('nuts', context)).toEqual(expect.arrayContaining(['almond', 'pine-nut', 'peanut', 'other-nuts']));
    expect(() => wishedSubstances('moonlight', context)).toThrow(/bad-input/);
  });
  it('leaves lines alone that she keeps', () => {
    const { answers } = searchWish(dish, { ...wish, without: ['nuts'], keep: [lineOf(dish, 'hazelnuts')] }, context);
    expect(answers).toEqual([]);
  });
});
