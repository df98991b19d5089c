import { describe, expect, it } from 'vitest';
import { testVocabulary } from '../../../tests/reader-vocabulary.ts';
import { readJsonLd } from './read-json-ld.ts';

const base = { '@context': 'https://schema.org', '@type': 'Recipe', name: 'Leek soup', recipeIngredient: ['2 leeks'], recipeInstructions: 'Fry the leeks for 5 minutes.' };
const read = (change: object): ReturnType<typeof readJsonLd> => readJsonLd({ ...base, ...change }, testVocabulary);
const texts = (change: object): string[] => read(change)!.steps.map(({ text }) => text);

describe('schema.org/Recipe as published at schema.org/Recipe, with the JSON-LD 1.1 (W3C, 2020) ways of writing it', () => {
  it('takes the name (schema.org/name) as title', () => expect(read({})!.title).toBe('Leek soup'));

  it('takes recipeIngredient, and its superseded name ingredients (schema.org/recipeIngredient)', () => {
    expect(read({ recipeIngredient: ['2 leeks', '500 g potatoes'] })!.lines.map(({ food }) => food.name)).toEqual(['leeks', 'potatoes']);
    expect(read({ recipeIngredient: undefined, ingredients: '2 leeks\n500 g potatoes' })!.lines).toHaveLength(2);
  });

  it('takes recipeInstructions as Text, as an ItemList, as CreativeWork and as HowToStep (schema.org/recipeInstructions)', () => {
    expect(texts({ recipeInstructions: 'Fry the leeks.\nAdd the stock.' })).toEqual(['Fry the leeks.', 'Add the stock.']);
    expect(texts({ recipeInstructions: ['Fry the leeks.', 'Add the stock.'] })).toEqual(['Fry the leeks.', 'Add the stock.']);
    expect(texts({ recipeInstructions: { '@type': 'ItemList', itemListElement: [{ '@type': 'HowToStep', text: 'Fry the leeks.' }, { '@type': 'ListItem', item: { '@type': 'HowToStep', text: 'Add the stock.' } }] } })).toEqual(['Fry the leeks.', 'Add the stock.']);
    expect(texts({ recipeInstructions: { '@type': 'CreativeWork', text: 'Fry the leeks.' } })).toEqual(['Fry the leeks.']);
    expect(texts({ recipeInstructions: [{ '@type': 'HowToStep', name: 'Fry the leeks.' }] })).toEqual(['Fry the leeks.']);
  });

  it('takes HowToSection with its name and itemListElement (schema.org/HowToSection), and HowToStep made of HowToDirection (schema.org/HowToStep)', () => {
    const recipe = read({ recipeInstructions: [{ '@type': 'HowToSection', name: 'Soup', itemListElement: [{ '@type': 'HowToStep', itemListElement: [{ '@type': 'HowToDirection', text: 'Fry the leeks.' }, { '@type': 'HowToDirection', text: 'Add the stock.' }] }] }] });
    expect(recipe!.steps.map(({ text }) => text)).toEqual(['Fry the leeks.', 'Add the stock.']);
  });

  it.each([
    [4, 4, null], ['4', 4, null], ['Serves 4', 4, null], [['4', '4 servings'], 4, null], ['12 pancakes', 12, 'pancakes'], [{ '@type': 'QuantitativeValue', value: 6, unitText: 'servings' }, 6, null], [['1 loaf'], 1, 'loaf'],
  ] as const)('takes recipeYield %j (schema.org/recipeYield: Text or QuantitativeValue)', (recipeYield, count, of) => {
    expect(read({ recipeYield })!.servings).toMatchObject({ count: { value: count }, of });
  });

  it('finds the recipe in an array, in @graph, among several types and under a full type address (JSON-LD 1.1, 4.9 and 3.5)', () => {
    for (const document of [[{ '@type': 'WebSite' }, base], { '@graph': [{ '@type': 'WebPage' }, base] }, { ...base, '@type': ['Recipe', 'NewsArticle'] }, { ...base, '@type': 'http://schema.org/Recipe' }, { '@type': 'WebPage', mainEntity: base }]) {
      expect(readJsonLd(document, testVocabulary)!.lines.map(({ food }) => food.name)).toEqual(['leeks']);
    }
  });
});
