import { describe, expect, it } from 'vitest';
import type { FoodMatch } from '../foods/index.ts';
import { exactly } from '../quantity/index.ts';
import { eatenShare, type Eaten } from './eaten.ts';
import type { IngredientLine, LineRemark, Recipe } from './recipe.ts';
import { amountOf, bareEntry, lineOf, matchOf, recipeOf, sampleRules } from './weigh.fixture.ts';

const named = (name: string, form: Parameters<typeof bareEntry>[2] = 'raw'): FoodMatch => matchOf(bareEntry(name, 'sr28:1', form));

function eaten(line: IngredientLine, more: { recipe?: Recipe; match?: FoodMatch; grams?: number; countOptional?: boolean } = {}): Eaten {
  return eatenShare(line, more.match ?? named(line.food.name), {
    recipe: more.recipe ?? recipeOf([line]), rules: sampleRules.eaten, grams: more.grams === undefined ? null : exactly(more.grams), servings: 4, countOptional: more.countOptional ?? true,
  });
}
const item = (name: string, more: { text?: string; remarks?: LineRemark[]; unit?: string | null; qualifiers?: string[]; section?: string; id?: string } = {}): IngredientLine =>
  lineOf(more.text ?? name, amountOf(1, more.unit ?? null), { name, remarks: more.remarks ?? [], qualifiers: more.qualifiers ?? [], section: more.section ?? null, id: more.id ?? 'l1' });

describe('what is not eaten is not counted', () => {
  it('when it always comes out: bay leaves, a cinnamon stick, a whole stalk of lemongrass', () => {
    expect(eaten(item('bay leaf', { unit: 'leaf' })).code).toBe('taken-out');
    expect(eaten(item('cinnamon', { unit: 'stick' })).code).toBe('taken-out');
    expect(eaten(item('cinnamon', { unit: 'tsp' })).code).toBe('all');
    expect(eaten(item('lemongrass', { unit: 'stalk' })).code).toBe('taken-out');
    expect(eaten(item('lemongrass', { unit: 'stalk', qualifiers: ['finely chopped'] })).code).toBe('all');
  });

  it('when a step throws it away, and only that food', () => {
    const line = item('thyme', { unit: 'sprig' });
    const steps = (text: string): Recipe => recipeOf([line], [{ text }]);
    expect(eaten(line, { recipe: steps('Discard the thyme sprigs.') }).code).toBe('taken-out');
    expect(eaten(line, { recipe: steps('Remove the thyme and serve.') }).code).toBe('taken-out');
    expect(eaten(line, { recipe: steps('Add the thyme. Discard the water.') }).code).toBe('all');
    const chicken = item('chicken');
    expect(eaten(chicken, { recipe: recipeOf([chicken], [{ text: 'Remove the chicken from the pan and set aside.' }]) }).code).toBe('all');
    const mussels = item('mussels');
    expect(eaten(mussels, { recipe: recipeOf([mussels], [{ text: 'Discard any mussels that do not open.' }]) }).code).toBe('all');
    const tomatoes = item('tomatoes');
    expect(eaten(tomatoes, { recipe: recipeOf([tomatoes], [{ text: 'Discard the seeds of the tomatoes.' }]) }).code).toBe('all');
  });

  it('when it is frying oil, by how much there is and what is done with it', () => {
    const oil = item('sunflower oil');
    expect(eaten(oil, { grams: 14 }).code).toBe('all');
    expect(eaten(item('sunflower oil', { remarks: ['for-frying'] }), { grams: 30 }).code).toBe('shallow-frying-oil');
    expect(eaten(item('sunflower oil', { remarks: ['for-frying'] }), { grams: 1000 }).code).toBe('deep-frying-oil');
    expect(eaten(oil, { recipe: recipeOf([oil], [{ text: '', actions: [{ method: 'deep-fried', lines: ['l1'] }] }]), grams: 500 }).code).toBe('deep-frying-oil');
    expect(eaten(item('butter', { remarks: ['for-greasing'] })).code).toBe('greasing');
    expect(eaten(item('flour', { remarks: ['for-dusting'] })).code).toBe('dusting');
  });

  it('when it is water or its salt that is drained', () => {
    const drained = (line: IngredientLine): Recipe => recipeOf([line], [{ text: 'Boil the pasta and drain.', actions: [{ method: 'boiled-drained', lines: ['l1'] }] }]);
    const simmered = (line: IngredientLine): Recipe => recipeOf([line], [{ text: 'Simmer.', actions: [{ method: 'simmered', lines: ['l1'] }] }]);
    for (const [name, code] of [['water', 'cooking-water'], ['salt', 'cooking-water-salt']] as const) {
      const line = item(name);
      expect(eaten(line, { recipe: drained(line) }).code).toBe(code);
      expect(eaten(line, { recipe: simmered(line) }).code).toBe('all');
      expect(eaten(line).code).toBe('all');
    }
    expect(eaten(item('salt', { text: 'salt for the pasta water' })).code).toBe('cooking-water-salt');
    const seasoning = item('salt');
    const twice = recipeOf([seasoning, item('pasta', { id: 'l2' })], [
      { text: 'Boil the pasta in salted water.', actions: [{ method: 'boiled-drained', lines: ['l1'], inPot: ['l1', 'l2'] }] },
      { text: 'Season with salt.', actions: [{ lines: ['l1'] }] },
    ]);
    expect(eaten(seasoning, { recipe: twice }).code).toBe('all');
    const coconut = item('coconut water');
    expect(eaten(coconut, { recipe: drained(coconut) }).code).toBe('all');
  });

  it('when the marinade is poured away, not when it is cooked with', () => {
    const soy = item('soy sauce', { section: 'For the marinade' });
    expect(eaten(soy, { recipe: recipeOf([soy], [{ text: 'Lift the fish from the marinade and discard the marinade.' }]) }).code).toBe('marinade-poured-away');
    const chicken = item('chicken thighs', { section: 'For the marinated chicken' });
    const thrown = (line: IngredientLine): Recipe => recipeOf([line], [{ text: 'Lift the chicken out of the marinade and throw away what is left.' }]);
    expect(eaten(chicken, { recipe: thrown(chicken) }).code).toBe('all');
    const yoghurt = item('yoghurt', { section: 'For the marinated chicken' });
    expect(eaten(yoghurt, { recipe: thrown(yoghurt) }).code).toBe('marinade-poured-away');
    expect(eaten(soy, { recipe: recipeOf([soy], [{ text: 'Pour the fish and its marinade into the pan.' }]) }).code).toBe('all');
  });

  it('never as frying oil when it is a fish in oil', () => {
    const sardines = item('sardines in olive oil');
    expect(eaten(sardines, { recipe: recipeOf([sardines], [{ text: 'Fry the garlic in the oil from the sardines.' }]) }).code).toBe('all');
  });

  it('when it is bone', () => {
    expect(eaten(item('beef bones')).code).toBe('bones');
    for (const name of ['chicken thighs on the bone', 'T-bone steak', 'bone broth', 'boneless chicken']) expect(eaten(item(name)).code, name).toBe('all');
  });

  it('when it is pickling liquid', () => {
    const vinegar = item('cider vinegar');
    expect(eaten(vinegar, { recipe: recipeOf([vinegar], [], 'Pickled red onions') }).code).toBe('pickling-liquid');
    expect(eaten(item('sugar', { section: 'Pickling liquid' })).code).toBe('pickling-liquid');
    expect(eaten(vinegar).code).toBe('all');
  });

  it('twice when a line was divided', () => {
    const first = item('olive oil', { text: '3 tbsp olive oil, divided', remarks: ['divided'] });
    const rest = item('olive oil', { text: 'remaining olive oil', id: 'l2' });
    const recipe = recipeOf([first, rest]);
    expect(eaten(first, { recipe })).toMatchObject({ code: 'all', note: 'counted-once' });
    expect(eaten(rest, { recipe }).code).toBe('counted-before');
    expect(eaten(item('olive oil', { text: 'remaining olive oil' })).code).toBe('all');
  });
});

describe('optional things', () => {
  it('count, and say so, unless she chose otherwise', () => {
    expect(eaten(item('feta', { remarks: ['to-serve'] }))).toMatchObject({ code: 'all', note: 'to-serve-counted' });
    expect(eaten(item('flatbread', { remarks: ['optional'] })).code).toBe('optional-unmeasured');
    expect(eaten(item('feta', { remarks: ['optional'] }), { grams: 30 })).toMatchObject({ code: 'all', note: 'optional-counted' });
    expect(eaten(item('feta', { remarks: ['optional'] }), { countOptional: false })).toMatchObject({ code: 'left-out', share: { value: 0 } });
    expect(eaten(item('feta'), { countOptional: false }).code).toBe('all');
  });
});

describe('a share', () => {
  it('lies in its range and names its source', () => {
    const e = eaten(item('bay leaf'));
    expect(e.share.low <= e.share.value && e.share.value <= e.share.high).toBe(true);
    expect(e.source).toBe('sample');
  });
});
