import { readCookingTables } from '../../adapters/tables/index.ts';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compileCooking } from '../../../scripts/tables/cooking.ts';
import { readReaderVocabulary } from '../../adapters/tables/index.ts';
import { readRecipe } from '../dish/index.ts';
import { solvePlan } from './cook-plan.ts';
import type { KitchenDish, KitchenStep } from './kitchen.ts';
import { order } from './kitchen.fixture.ts';
import { dishFromRecipe } from './steps-from-recipe.ts';

const root = join(import.meta.dirname, '../../..');
const tables = compileCooking(join(root, 'data'));
const vocabulary = readReaderVocabulary();
const read = (text: string): KitchenDish => dishFromRecipe(readRecipe(text, vocabulary), 'd', tables.habits, tables.rules);
const barleyAndFish = read(readFileSync(join(root, 'tests/cases/cooking/barley-and-fish.recipe.txt'), 'utf8'));
const step = (dish: KitchenDish, words: string): KitchenStep => {
  const found = dish.steps.find((one) => one.title.includes(words));
  if (!found) throw new Error(`no step “${words}” in ${dish.steps.map((one) => one.title).join(' | ')}`);
  return found;
};
const before = (dish: KitchenDish, later: string, earlier: string): boolean => {
  const goal = step(dish, earlier).id;
  const visit = (id: string): boolean => id === goal || (dish.steps.find((one) => one.id === id)?.after ?? []).some((link) => visit(link.step));
  return visit(step(dish, later).id);
};

describe('steps from a written recipe', () => {
  it('leaves out the warming of the oven and gives the roast its temperature and time', () => {
    expect(barleyAndFish.steps.some((one) => one.title.startsWith('Heat the oven'))).toBe(false);
    expect(step(barleyAndFish, 'roast')).toMatchObject({ oven: { celsius: 200 }, minutes: { low: 45, high: 60 }, ring: false });
  });

  it('orders by what goes into what, not by the numbers of the method', () => {
    expect(before(barleyAndFish, 'slice the beetroot', 'roast')).toBe(true);
    expect(before(barleyAndFish, 'simmer for 30 minutes', 'fry the onion')).toBe(true);
    expect(before(barleyAndFish, 'Poach the cod', 'roast')).toBe(false);
    expect(before(barleyAndFish, 'melt the butter', 'fry the onion')).toBe(false);
  });

  it('takes cutting that only the list of ingredients asks for as a step before its use', () => {
    expect(step(barleyAndFish, 'cut and get ready')).toMatchObject({ attention: { kind: 'hands' }, mayPause: true });
    expect(before(barleyAndFish, 'fry the onion', 'cut and get ready')).toBe(true);
  });

  it('hears “stirring all the time” and “stirring occasionally”', () => {
    expect(step(barleyAndFish, 'stirring all the time').attention).toEqual({ kind: 'stir' });
    expect(step(barleyAndFish, 'stirring occasionally').attention).toMatchObject({ kind: 'glance' });
  });

  it('keeps a roux from waiting and ends in one serving step that waits for everything', () => {
    expect(step(barleyAndFish, 'cook for 2 minutes').after[0]!.within).toBeLessThanOrEqual(5);
    const followed = new Set(barleyAndFish.steps.flatMap((one) => one.after.map((link) => link.step)));
    expect(barleyAndFish.steps.filter((one) => !followed.has(one.id)).map((one) => one.title)).toEqual([expect.stringContaining('serve')]);
  });

  it('takes soaking out of the day', () => {
    const beans = read('Beans\n\nServes 4\n\nIngredients\n250 g dried white beans\n1 litre water\n\nMethod\n1. Soak the beans overnight.\n2. Drain the beans. Boil the beans in the water for 60 minutes.\n3. Serve.');
    expect(step(beans, 'Soak').ahead).not.toBeNull();
  });

  it('takes poultry for a matter of safety', () => {
    const chicken = read('Chicken\n\nServes 2\n\nIngredients\n2 chicken breasts\n1 tbsp oil\n\nMethod\nHeat the oil in a frying pan. Fry the chicken for 12 minutes. Rest for 5 minutes and serve.');
    expect(chicken.holdReason).toBe('safety');
  });

  it('gives a plan for the whole recipe with two rings', () => {
    expect(solvePlan({ request: order([barleyAndFish], { kitchen: { rings: 2 } }), rules: tables.rules, budget: { conflicts: 20_000 } }).kind).toBe('solved');
  });
});

describe('what may wait in a hot pan', () => {
  const dish = (method: string) => {
    const text = `A dish\nServes 2\n\n2 mackerel fillets\n1 tbsp oil\n2 tins beans\n1 tin tomatoes\n100 g chard\n\n${method}`;
    return dishFromRecipe(readRecipe(text, readReaderVocabulary()), 'd', readCookingTables().habits, readCookingTables().rules);
  };
  const waitBefore = (method: string, words: RegExp): number | null | undefined => dish(method).steps.find((step) => words.test(step.title))?.after.find((link) => link.within !== null)?.within;

  it('is next to nothing while food is frying, also while it is turned', () => {
    const method = 'Heat the oil in a frying pan. Fry the mackerel skin side down for 3 minutes, then turn and fry for 1 minute.';
    expect(waitBefore(method, /^turn/)).toBe(1);
    expect(waitBefore(method, /fry for 1 minute/)).toBe(1);
  });

  it('is longer where a liquid can be turned down', () => {
    expect(waitBefore('Simmer the beans and tomatoes in a large pan for 20 minutes. Stir in the chard and cook for 3 minutes.', /stir in the chard/i)).toBe(10);
  });
});
