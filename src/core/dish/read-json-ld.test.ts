import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testVocabulary } from '../../../tests/reader-vocabulary.ts';
import { readJsonLd } from './read-json-ld.ts';
import { readRecipe } from './read-recipe.ts';

describe('schema.org recipe data', () => {
  it('reads to the same lines and steps as the same words pasted as text', () => {
    const ingredients = ['2 x 400 g tins chickpeas, drained', '1 onion, chopped', 'salt and pepper'];
    const steps = ['Fry the onion for 10 minutes.', 'Add the chickpeas and simmer for 20 minutes.'];
    const data = readJsonLd({ '@type': 'Recipe', name: 'Chickpeas', recipeYield: 4, recipeIngredient: ingredients, recipeInstructions: steps }, testVocabulary)!;
    const text = readRecipe(`Chickpeas\nServes 4\nIngredients\n${ingredients.join('\n')}\nMethod\n${steps.join('\n')}`, testVocabulary);
    const bare = (recipe: typeof text): unknown => [recipe.title, recipe.servings?.count, recipe.lines.map(({ span, ...line }) => [line, span.end - span.start]), recipe.steps.map(({ actions }) => actions.map(({ span, ...action }) => [action, span.end - span.start]))];
    expect(bare(data)).toEqual(bare(text));
  });

  it('takes a heading among the ingredients as a section', () => {
    const recipe = readJsonLd({ '@type': 'Recipe', recipeIngredient: ['For the sauce:', '1 tbsp oil'] }, testVocabulary)!;
    expect(recipe.lines.map(({ section, food }) => [section, food.name])).toEqual([['sauce', 'oil']]);
  });

  it('says null to a document without a recipe, and never throws', () => {
    expect(readJsonLd({ '@type': 'WebSite', name: 'x' }, testVocabulary)).toBeNull();
    fc.assert(fc.property(fc.jsonValue(), fc.jsonValue(), fc.jsonValue(), (a, b, c) => {
      readJsonLd(a, testVocabulary);
      readJsonLd({ '@type': 'Recipe', name: a, recipeIngredient: b, recipeInstructions: c, recipeYield: a }, testVocabulary);
    }));
  });

  it('survives data nested a hundred thousand deep', () => {
    let deep: unknown = 'Fry the leeks.';
    for (let n = 0; n < 100_000; n++) deep = n % 2 ? { '@type': 'HowToSection', itemListElement: deep, text: deep, name: deep } : [deep];
    const recipe = readJsonLd({ '@type': 'Recipe', name: deep, recipeIngredient: ['2 leeks', deep], recipeInstructions: deep, recipeYield: deep }, testVocabulary)!;
    expect(recipe.lines).toHaveLength(1);
  });

  it('points its spans into the text it gives back', () => {
    const recipe = readJsonLd({ '@type': 'Recipe', name: 'Soup', recipeIngredient: ['2 leeks', '1 onion and 1 carrot'], recipeInstructions: ['Fry the leeks.'] }, testVocabulary)!;
    for (const { span, text } of [...recipe.lines, ...recipe.steps]) expect(recipe.text.slice(span.start, span.end)).toBe(text);
  });
});
