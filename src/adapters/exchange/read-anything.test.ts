import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testVocabulary } from '../../../tests/reader-vocabulary.ts';
import { kindOfText, readAnything } from './read-anything.ts';

const data = { '@context': 'https://schema.org', '@graph': [{ '@type': 'WebSite', name: 'x' }, { '@type': ['Recipe'], name: 'Leek &amp; potato soup', recipeYield: '4 servings', recipeIngredient: ['2 leeks, sliced', '&frac12; tsp salt', '<b>500g</b> potatoes'], recipeInstructions: [{ '@type': 'HowToStep', text: '<p>Fry the leeks for 5 minutes.</p><p>Add the potatoes.</p>' }] }] };
const page = (script: string, body = ''): string => `<!DOCTYPE html><html><head><title>Soup</title><script type="application/ld+json">${script}</script></head><body><nav>Home <a>All soups</a></nav>${body}</body></html>`;
const visible = '<h1>Leek soup</h1><p>A story about 3 friends.</p><h2>Ingredients</h2><ul><li>2 leeks</li><li><span>500</span> <span>g</span> potatoes</li></ul><h2>Method</h2><ol><li>Fry the leeks for 5 minutes.</li></ol><h2>Comments</h2><p>I added 2 carrots.</p>';
const read = (text: string): ReturnType<typeof readAnything> => readAnything(text, testVocabulary);
const foods = (text: string): string[] => read(text).lines.map(({ food }) => food.name);
const codes = (text: string): string[] => read(text).findings.map(({ code }) => code);

describe('whatever she pastes or opens', () => {
  it('is told apart: page, data, words', () => {
    expect(kindOfText(page(''))).toBe('page');
    expect(kindOfText(JSON.stringify(data))).toBe('data');
    expect(kindOfText('Soup\n2 leeks\n< 5 g salt')).toBe('text');
    expect(kindOfText('[ ] 2 leeks\n[ ] 1 onion')).toBe('text');
  });

  it('reads the data of a saved page, mark-up and entities resolved', () => {
    const recipe = read(page(JSON.stringify(data), visible));
    expect(recipe.title).toBe('Leek & potato soup');
    expect(recipe.lines.map(({ amount, food }) => [amount?.quantity.value, amount?.unit, food.name])).toEqual([[2, null, 'leeks'], [0.5, 'tsp', 'salt'], [500, 'g', 'potatoes']]);
    expect(recipe.steps.map(({ text }) => text)).toEqual(['Fry the leeks for 5 minutes.', 'Add the potatoes.']);
    expect(recipe.servings?.count.value).toBe(4);
  });

  it('reads data saved as a file', () => expect(foods(JSON.stringify(data, null, 2))).toEqual(['leeks', 'salt', 'potatoes']));

  it('reads what is seen on a page without data, and leaves menus, stories and comments out', () => {
    expect(foods(page('', visible))).toEqual(['leeks', 'potatoes']);
    expect(read(page('', visible)).title).toBe('Leek soup');
    expect(read(page('', visible)).steps).toHaveLength(1);
  });

  it('says so when the data cannot be read, and reads what is seen instead', () => {
    expect(codes(page('{"@type":"Recipe", oops', visible))).toContain('bad-json-ld');
    expect(foods(page('{"@type":"Recipe", oops', visible))).toEqual(['leeks', 'potatoes']);
  });

  it('forgives line ends inside texts and a comma too many', () => {
    expect(foods(page('{"@type":"Recipe","recipeIngredient":["2 leeks",],"recipeInstructions":"Fry\nthe leeks"}'))).toEqual(['leeks']);
  });

  it('goes on to the next block when the first holds no recipe', () => {
    expect(foods(`<html><script type="application/ld+json">{"@type":"Person"}</script><script type='application/ld+json; charset=utf-8'>${JSON.stringify(data)}</script></html>`)).toHaveLength(3);
  });

  it('survives elements and data nested very deep', () => {
    expect(foods(`<html>${'<div>'.repeat(200_000)}${visible}`)).toEqual(['leeks', 'potatoes']);
    expect(foods(page('['.repeat(200_000), visible))).toEqual(['leeks', 'potatoes']);
  });

  it('names in a finding what it did not look at', () => {
    const long = `${visible}<p>${'word '.repeat(1_100_000)}</p>`;
    expect(codes(long)).toContain('text-cut');
    expect(foods(long)).toEqual(['leeks', 'potatoes']);
  });

  it('never throws on any mixture of mark-up and words', () => {
    const parts = fc.constantFrom('<', '>', '</', '<script type="application/ld+json">', '</script>', '<li>', '&frac12;', '&', '{', '}', '"@type":"Recipe"', '"recipeIngredient":', '["2 leeks"]', '2 leeks', '<h1>', '<!--', '-->', '<![CDATA[', '\u0000', '<table', '"');
    fc.assert(fc.property(fc.oneof(fc.array(parts, { maxLength: 40 }).map((list) => list.join('')), fc.string({ unit: 'binary', maxLength: 200 })), (text) => {
      read(text);
      read(`<html>${text}`);
      read(`{"@type":${text}`);
    }));
  });
});
