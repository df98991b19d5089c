import { describe, expect, it } from 'vitest';
import type { Food } from '../foods/index.ts';
import { cookedTablesOfTest, foodOf, lineOf, pepper, recipeOf, rice, spinach, stock, tinnedBeans } from './cooked.fixture.ts';
import { isCookedInTable, treatmentOf, type TreatmentOverride } from './treatment.ts';

const unsaid = cookedTablesOfTest.parameters.minutesUnsaid;
const treat = (recipe: ReturnType<typeof recipeOf>, foods: Record<string, Food | null>, id: string, overrides?: Record<string, TreatmentOverride>) =>
  treatmentOf(id, { recipe, foods: new Map(Object.entries(foods)), ...(overrides ? { overrides: new Map(Object.entries(overrides)) } : {}) }, unsaid);

describe('the treatment of a line', () => {
  const stew = recipeOf([lineOf('l1', 'onion'), lineOf('l2', 'stock'), lineOf('l3', 'peppers')], [
    { verb: 'simmer', method: 'simmered', minutes: 35, inPot: ['l1', 'l2'], says: 'simmer for 35 minutes' },
    { verb: 'add', method: 'simmered', minutes: 5, lines: ['l3'], inPot: ['l1', 'l2', 'l3'], says: 'add the peppers for the last 5 minutes' },
  ]);
  const foods = { l1: foodOf('Onions, raw', 'Vegetables', { water: 89 }), l2: stock, l3: pepper };

  it('starts when the line enters the pot: peppers added for the last 5 minutes cook for 5', () => {
    expect(treat(stew, foods, 'l3')).toMatchObject({ method: 'simmered', liquid: 'kept', minutes: { value: 5 } });
  });
  it('does not count the last minutes of a stretch twice for what was in the pot before', () => {
    expect(treat(stew, foods, 'l1').minutes?.value).toBe(35);
  });
  it('adds the minutes of stretches of one way of cooking', () => {
    const fry = recipeOf([lineOf('l1', 'mackerel')], [
      { verb: 'fry', method: 'fried', minutes: 3, lines: ['l1'], says: 'fry for 3 minutes' },
      { verb: 'turn', method: 'fried', minutes: 1, inPot: ['l1'], says: 'turn and fry for 1 minute' },
    ]);
    expect(treat(fry, { l1: null }, 'l1')).toMatchObject({ method: 'fried', liquid: 'none', minutes: { value: 4 } });
  });
  it('is decided by the longest way of cooking', () => {
    const both = recipeOf([lineOf('l1', 'onion'), lineOf('l2', 'stock')], [
      { verb: 'soften', method: 'fried', minutes: 8, lines: ['l1'] },
      { verb: 'simmer', method: 'simmered', minutes: 30, lines: ['l2'], inPot: ['l1', 'l2'] },
    ]);
    const one = treat(both, { l1: foods.l1, l2: stock }, 'l1');
    expect(one.method).toBe('simmered');
    expect(one.stages.map((stage) => stage.method)).toEqual(['fried', 'simmered']);
  });
  it('leaves a line that no step cooks as it is', () => {
    expect(treat(recipeOf([lineOf('l1', 'watercress')], []), { l1: spinach }, 'l1')).toMatchObject({ method: 'raw', why: ['no-step'], stages: [] });
  });
  it('takes the water for poured away when a vegetable boils and no liquid is listed', () => {
    const boil = recipeOf([lineOf('l1', 'spinach')], [{ verb: 'boil', method: 'boiled-kept', minutes: 5, lines: ['l1'] }]);
    expect(treat(boil, { l1: spinach }, 'l1')).toMatchObject({ liquid: 'drained', why: ['step', 'liquid-taken-as-poured-away'] });
  });
  it('keeps the water that rice takes up', () => {
    const boil = recipeOf([lineOf('l1', 'rice')], [{ verb: 'boil', method: 'boiled-kept', minutes: 12, lines: ['l1'] }]);
    expect(treat(boil, { l1: rice }, 'l1')).toMatchObject({ liquid: 'kept', why: ['step', 'absorbs-its-water'] });
  });
  it('only warms what the table gives as cooked or canned, and keeps the steps it lies in', () => {
    const simmer = recipeOf([lineOf('l1', 'white beans', ['tinned']), lineOf('l2', 'stock')], [{ verb: 'simmer', method: 'simmered', minutes: 20, lines: ['l1', 'l2'] }]);
    expect(treat(simmer, { l1: tinnedBeans, l2: stock }, 'l1')).toMatchObject({ method: 'reheated', liquid: 'kept', alreadyCooked: true, why: ['already-cooked'], stages: [{ method: 'simmered' }] });
    expect(treat(recipeOf([lineOf('l1', 'white beans')], []), { l1: tinnedBeans }, 'l1')).toMatchObject({ method: 'raw', why: ['already-cooked-cold'] });
  });
  it('can be overridden, with minutes and with what becomes of the liquid', () => {
    expect(treat(stew, foods, 'l1', { l1: { method: 'stewed', minutes: 40 } })).toMatchObject({ method: 'stewed', liquid: 'kept', minutes: { value: 40 }, why: ['overridden'] });
    expect(treat(stew, foods, 'l1', { l1: { method: 'simmered', liquid: 'drained' } }).liquid).toBe('drained');
    expect(treat(stew, foods, 'l1', { l1: { method: 'raw' } })).toMatchObject({ method: 'raw', stages: [] });
  });
});

describe('whether the table names a cooked food', () => {
  it.each([
    ['Beans, kidney, red, mature seeds, canned, drained solids', true],
    ['Rice, white, long-grain, regular, enriched, cooked', true],
    ['Peppers, sweet, red, raw', false],
    ['Chicken, broilers or fryers, breast, meat only, raw', false],
    ['Bread, whole-wheat, toasted', false],
    ['Nuts, almonds, dry roasted, without salt added', true],
    ['Barley, pearled, raw', false],
  ])('%s: %s', (name, cooked) => {
    expect(isCookedInTable({ name }, null)).toBe(cooked);
  });
});
