import { bench, describe } from 'vitest';
import { readChangeTables, readDishTables } from '../src/adapters/tables/index.ts';
import { changeContexts } from '../src/app/change-tables.ts';
import { usualChoices } from '../src/app/dish-choices.ts';
import { readPriceList } from '../src/app/price-dish.ts';
import { searchWish, type SwapWish } from '../src/app/search-swaps.ts';
import { workOutDish } from '../src/app/work-out-dish.ts';
import { searchSwaps, type SearchAsked } from '../src/core/dish/index.ts';

// The promise: a wish over 25 lines with up to 40 alternatives each, 3 swaps at once, within 2 s.

/** A small generator of its own, so that every run asks the same (mulberry32). */
function randomOf(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** 25 lines × 40 alternatives; `need` says how far towards the best reachable the least is set: near 1 is the hardest. */
function instance(seed: number, need: number): SearchAsked {
  const random = randomOf(seed);
  const lines = Array.from({ length: 25 }, () => ({
    options: Array.from({ length: 41 }, (_, o) => ({ values: [random() * (o === 0 ? 4 : 12), random() * 0.3], loss: o === 0 ? 0 : 0.05 + random(), forbidden: false })),
  }));
  const gains = lines.map((l) => Math.max(...l.options.map((o) => o.values[0]!)) - l.options[0]!.values[0]!).sort((a, b) => b - a);
  const base = lines.reduce((sum, l) => sum + l.options[0]!.values[0]!, 0);
  const cost = lines.reduce((sum, l) => sum + l.options[0]!.values[1]!, 0);
  return { lines, bounds: [{ measure: 0, least: base + need * gains.slice(0, 3).reduce((a, b) => a + b, 0), most: null }, { measure: 1, least: null, most: cost * 0.97 }], swaps: 3, answers: 15 };
}

const text = `Big pot\nServes 6\n\nIngredients\n${['300 g spelt', '50 g hazelnuts, chopped', '200 g spinach', '2 onions, chopped', '2 tbsp olive oil', '1 tbsp lemon juice', '1 vegetable stock cube', '100 g feta', '2 carrots, diced', '2 sticks celery, sliced', '1 leek, sliced', '3 cloves garlic, crushed', '1 tin chickpeas, drained', '1 tin chopped tomatoes', '200 g mushrooms, sliced', '1 red pepper, sliced', '1 tsp ground cumin', '1 tsp ground coriander', '1 red chilli, chopped', '1 handful parsley, chopped', '2 tbsp plain yoghurt', '1 tbsp honey', '30 g pumpkin seeds', '2 salmon fillets', '150 g kale, chopped'].join('\n')}\n\nMethod\n1. Fry the onions, carrots, celery and leek in the oil for 10 minutes.\n2. Add everything else and 1 litre water and simmer for 30 minutes.\n`;
const tables = readDishTables();
const prices = readPriceList(
  ['spelt 500 g 2.20', 'pearl barley 500 g 1.10', 'spinach 200 g 1.50', 'kale 200 g 1.20', 'pumpkin seeds 100 g 1.20', 'feta 200 g 2.00', 'chickpeas 400 g 0.90'].map((row, i) => {
    const [, food = '', pack = '', price = '0'] = /^(.+?) (\d+ g) ([\d.]+)$/.exec(row) ?? [];
    return { id: `p${i}`, food, pack, price: Number(price), shop: 'bench', date: '2026-11-01' };
  }),
  tables,
);
const context = changeContexts(tables, readChangeTables())({ prices: { list: prices.priced, today: '2026-11-25', staleDays: 180 }, currency: '£', allergenList: 'eu', region: 'uk', month: 11, ownSeasons: {} });
const dish = workOutDish(text, usualChoices, tables);
const wish = (least: number): SwapWish => ({ nutrients: [{ id: 'magnesium', least, most: null }], costMost: 2.5, without: ['nuts'], diets: [], keep: [], swaps: 3, strict: false, answers: 5 });

describe('swap search, 25 lines × 40 alternatives, up to 3 swaps, exact', () => {
  const settings = { time: 2000, iterations: 3, warmupIterations: 1 };
  for (const need of [0.5, 0.9, 0.99]) bench(`search alone, least set at ${need} of the reachable`, () => void searchSwaps(instance(7, need)), settings);
  bench('a wish on a real 25-line pot, from worked dish to written answers', () => void searchWish(dish, wish(220), context), settings);
});
