import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kitchenNameSet, testAllergens } from '../../../tests/allergen-tables.ts';
import { allergenReader, type FoodAsked } from './allergen-food.ts';
import { listedAllergens, allergenList, saidAnyway } from './allergen-list.ts';
import { together } from './allergen-state.ts';
import { toldDiets } from './diet.ts';
import type { FoodForm, KitchenEntry } from './kitchen-name.ts';

const entry = (name: string, area = 'vegetables'): KitchenEntry => ({ name, also: [], area, usual: 'raw', forms: {}, pieces: [], densities: [], refusePercent: null });
const asked = (name: string, more: Partial<FoodAsked> = {}): FoodAsked => ({ entry: entry(name), form: null, food: null, name, text: name, lineId: 'l1', ...more });
const reader = allergenReader(testAllergens, []);
const state = (at: FoodAsked, id: string): string | undefined => reader.states(at).get(id)?.state;

describe('what a food holds', () => {
  it('is curated for every kitchen name; the names without a composition are listed here', () => {
    const without = [...kitchenNameSet].filter((name) => testAllergens.entries[name] === undefined);
    expect(without).toEqual([]);
  });

  it('is unknown, for every substance, where nobody has entered it', () => {
    const states = reader.states(asked('moon fruit paste'));
    expect(new Set([...states.values()].map((s) => s.state))).toEqual(new Set(['unknown']));
    expect([...states.values()][0]?.reasons[0]?.code).toBe('no-composition');
  });

  it('is unknown for the rest where the food is bought ready', () => {
    expect(state(asked('pesto'), 'milk')).toBe('contains');
    expect(state(asked('pesto'), 'crustaceans')).toBe('unknown');
    expect(state(asked('kale'), 'crustaceans')).toBe('not');
    expect(state(asked('kale', { text: 'shop-bought kale crisps' }), 'crustaceans')).toBe('unknown');
  });

  it('is read from words where no food was found, and stays unknown elsewhere', () => {
    const at = asked('prawn crackle', { entry: null });
    expect(state(at, 'crustaceans')).toBe('contains');
    expect(state(at, 'milk')).toBe('unknown');
  });

  it('keeps a claim of the line as "check the pack", never as absence', () => {
    const claimed = asked('plain flour', { text: 'gluten-free plain flour' });
    expect(state(claimed, 'wheat')).toBe('may');
    expect(reader.states(claimed).get('wheat')?.reasons[0]?.code).toBe('claim');
  });

  it('does not take oyster mushrooms, butter beans or coconut milk for what they sound like', () => {
    for (const name of ['oyster mushroom', 'butter beans', 'coconut milk']) {
      expect(state(asked(name, { entry: null }), 'molluscs')).toBe('unknown');
      expect(state(asked(name, { entry: null }), 'milk')).toBe('unknown');
    }
  });

  it('counts pork as meat', () => expect(state(asked('lard'), 'meat')).toBe('contains'));

  it('adds what a form brings', () => {
    const dried = asked('fig', { entry: entry('fig', 'fruit'), form: 'dried' satisfies FoodForm });
    expect(state(dried, 'sulphites')).toBe('may');
    expect(state(asked('fig', { entry: entry('fig', 'fruit') }), 'sulphites')).toBe('not');
  });
});

describe('a dish', () => {
  const names = Object.keys(testAllergens.entries);
  const some = fc.array(fc.constantFrom(...names), { minLength: 1, maxLength: 12 });

  it('never holds less than one of its foods, whatever is added', () => {
    fc.assert(fc.property(some, fc.constantFrom(...names), (dish, more) => {
      const rank = { not: 0, unknown: 1, may: 2, contains: 3 } as const;
      const parts = dish.map((name) => reader.states(asked(name)));
      const before = together(reader.ids, parts);
      const after = together(reader.ids, [...parts, reader.states(asked(more))]);
      for (const id of reader.ids) expect(rank[after.get(id)?.state ?? 'not']).toBeGreaterThanOrEqual(rank[before.get(id)?.state ?? 'not']);
    }));
  });

  it('is never said not to hold a substance when one food is unknown', () => {
    fc.assert(fc.property(some, (dish) => {
      const whole = together(reader.ids, [...dish.map((name) => reader.states(asked(name))), reader.states(asked('nobody knows this'))]);
      expect([...whole.values()].filter((s) => s.state === 'not')).toEqual([]);
    }));
  });
});

describe('a legal list and the diets told for a dish', () => {
  const dish = together(reader.ids, ['kale', 'coconut milk', 'pine nuts', 'parmesan'].map((name) => reader.states(asked(name))));

  it('give each entry the gravest state of its members', () => {
    const told = new Map(listedAllergens(allergenList(testAllergens, 'us'), dish).map((l) => [l.item.id, l.state]));
    expect(told.get('tree-nuts')).toBe('contains');
    expect(told.get('fish')).toBe('not');
    const eu = listedAllergens(allergenList(testAllergens, 'eu'), dish).find((l) => l.item.id === 'nuts');
    expect(eu?.state).toBe('may');
    expect(eu?.found.map((f) => f.substance)).toContain('almond');
  });

  it('tell coconut and pine nut anyway where the list leaves them out', () => {
    expect(saidAnyway(testAllergens, allergenList(testAllergens, 'eu'), dish).map((s) => s.substance.id)).toEqual(['coconut', 'pine-nut']);
    expect(saidAnyway(testAllergens, allergenList(testAllergens, 'us'), dish).map((s) => s.substance.id)).toEqual(['coconut']);
  });

  it('tell that rennet breaks vegetarian, and that traces alone break nothing', () => {
    const told = new Map(toldDiets(testAllergens, dish).map((d) => [d.diet.id, d.verdict]));
    expect(told.get('vegetarian')).toBe('breaks');
    const oats = together(reader.ids, [reader.states(asked('rolled oats'))]);
    expect(toldDiets(testAllergens, oats).find((d) => d.diet.id === 'vegan')?.verdict).toBe('fits');
    const unsaid = together(reader.ids, [reader.states(asked('what is this'))]);
    expect(toldDiets(testAllergens, unsaid).every((d) => d.verdict === 'unknown')).toBe(true);
  });
});
