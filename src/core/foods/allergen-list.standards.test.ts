import { describe, expect, it } from 'vitest';
import { testAllergens } from '../../../tests/allergen-tables.ts';
import { allergenList } from './allergen-list.ts';

const list = (id: string): Map<string, readonly string[]> => new Map(allergenList(testAllergens, id).items.map((item) => [item.clause, item.members]));
const members = (id: string): Set<string> => new Set(allergenList(testAllergens, id).items.flatMap((item) => item.members));

describe('Regulation (EU) No 1169/2011, Annex II (read in reproductions of the annex, points 1 to 14)', () => {
  const eu = list('eu');
  it.each([
    ['Annex II, 1', ['wheat', 'rye', 'barley', 'oats']], // wheat takes in spelt and khorasan wheat; hybridised strains: triticale
    ['Annex II, 2', ['crustaceans']],
    ['Annex II, 3', ['egg']],
    ['Annex II, 4', ['fish']],
    ['Annex II, 5', ['peanut']],
    ['Annex II, 6', ['soya']],
    ['Annex II, 7', ['milk']],
    ['Annex II, 8', ['almond', 'hazelnut', 'walnut', 'cashew', 'pecan', 'brazil-nut', 'pistachio', 'macadamia']],
    ['Annex II, 9', ['celery']],
    ['Annex II, 10', ['mustard']],
    ['Annex II, 11', ['sesame']],
    ['Annex II, 12', ['sulphites']],
    ['Annex II, 13', ['lupin']],
    ['Annex II, 14', ['molluscs']],
  ])('%s names %j', (clause, named) => {
    expect(eu.get(clause)).toEqual(expect.arrayContaining(named));
  });

  it('has fourteen points and no more', () => expect([...eu.keys()]).toHaveLength(14));

  it('adds to the nuts of point 8 only black walnut, which is a walnut by name', () => {
    const named = new Set(['almond', 'hazelnut', 'walnut', 'cashew', 'pecan', 'brazil-nut', 'pistachio', 'macadamia']);
    expect(eu.get('Annex II, 8')?.filter((id) => !named.has(id))).toEqual(['black-walnut']);
  });

  it.each(['coconut', 'pine-nut', 'chestnut', 'buckwheat'])('does not name %s', (id) => expect(members('eu').has(id)).toBe(false));

  it('keeps the exceptions of points 1, 4, 6, 7 and 8 in words', () => {
    const except = new Map(allergenList(testAllergens, 'eu').items.map((item) => [item.clause, item.except]));
    expect(except.get('Annex II, 1')).toMatch(/glucose syrups.*maltodextrins.*distillates/);
    expect(except.get('Annex II, 4')).toMatch(/gelatine.*isinglass/);
    expect(except.get('Annex II, 6')).toMatch(/fully refined oil.*E306/);
    expect(except.get('Annex II, 7')).toMatch(/whey.*lactitol/);
    expect(except.get('Annex II, 8')).toMatch(/distillates/);
  });
});

describe('FD&C Act section 201(qq) with the FASTER Act, and FDA guidance edition 5 of January 2025, Table 1', () => {
  it('names nine major food allergens', () => {
    expect(allergenList(testAllergens, 'us').items.map((item) => item.id)).toEqual(['milk', 'egg', 'fish', 'crustaceans', 'tree-nuts', 'wheat', 'peanuts', 'soybeans', 'sesame']);
  });
  it.each(['almond', 'black-walnut', 'walnut', 'brazil-nut', 'cashew', 'hazelnut', 'macadamia', 'pecan', 'pine-nut', 'pistachio'])('has %s among its tree nuts', (id) => expect(members('us').has(id)).toBe(true));
  it.each(['coconut', 'chestnut', 'other-nuts', 'molluscs', 'celery', 'mustard', 'lupin', 'sulphites', 'rye', 'barley', 'oats'])('does not name %s', (id) => expect(members('us').has(id)).toBe(false));
});

describe('Canada, Food and Drug Regulations B.01.010.1(1) (text of the Department of Justice, 31 March 2021)', () => {
  const ca = list('ca');
  it.each([
    ['(a)', ['almond', 'brazil-nut', 'cashew', 'hazelnut', 'macadamia', 'pecan', 'pine-nut', 'pistachio', 'walnut']],
    ['(b)', ['peanut']], ['(c)', ['sesame']], ['(d)', ['wheat', 'triticale']], ['(e)', ['egg']], ['(f)', ['milk']], ['(g)', ['soya']], ['(h)', ['crustaceans']], ['(i)', ['molluscs']], ['(j)', ['fish']], ['(k)', ['mustard']],
  ])('food allergen %s names %j', (letter, named) => {
    expect(ca.get(`B.01.010.1(1) food allergen ${letter}`)).toEqual(expect.arrayContaining(named));
  });
  it('names the five gluten sources', () => expect([...(ca.get('B.01.010.1(1) gluten (a)') ?? [])].sort()).toEqual(['barley', 'oats', 'rye', 'triticale', 'wheat']));
  it('names neither celery nor lupin', () => expect(['celery', 'lupin'].filter((id) => members('ca').has(id))).toEqual([]));
});

describe('Codex CXS 1-1985, 4.2.1.4, before 2024 (as quoted by two reproductions)', () => {
  it('has nine substances in eight dashes and no celery, mustard, sesame, lupin or molluscs', () => {
    expect(allergenList(testAllergens, 'codex').items).toHaveLength(9);
    expect(['celery', 'mustard', 'sesame', 'lupin', 'molluscs', 'coconut'].filter((id) => members('codex').has(id))).toEqual([]);
  });
});

describe('where the places differ', () => {
  it('pine nut: named by the United States, Canada and Australia, not by the European Union', () => {
    expect(['eu', 'us', 'ca', 'au-nz'].map((id) => members(id).has('pine-nut'))).toEqual([false, true, true, true]);
  });
  it('coconut: named nowhere, and still told', () => {
    expect(['eu', 'us', 'ca', 'au-nz', 'codex'].map((id) => members(id).has('coconut'))).toEqual([false, false, false, false, false]);
    expect(testAllergens.saidAnyway).toContain('coconut');
  });
});
