import { describe, expect, it } from 'vitest';
import { readReaderVocabulary } from '../../adapters/tables/index.ts';
import { readRecipe } from './read-recipe.ts';

const vocabulary = readReaderVocabulary();

describe('servings', () => {
  it.each([
    ['Serves 4', 4, null],
    ['Prep: 15 min Cook: 6 hrs Servings: 8', 8, null],
    ['Mushroom stroganoff 4 portions', 4, null],
    ['Feeds a family of 5', 5, null],
    ['Makes one 20cm cake (10 slices)', 10, 'slices'],
    ['Makes 1 loaf, about 12 slices', 12, 'slices'],
    ['Makes 24 biscuits', 24, 'biscuits'],
    ['for 2–3 people', 2.5, null],
  ])('“%s” are %d (%s)', (line, count, of) => {
    const { servings } = readRecipe(`A dish\n${line}\n\n200 g kale\n1 leek\n`, vocabulary);
    expect(servings?.count.value).toBe(count);
    expect(servings?.of ?? null).toBe(of);
  });

  it.each(['Bake for 20 minutes', '4 portions of stock, made before, are in the freezer', 'Use 3 pans'])('“%s” say nothing of them', (line) => {
    expect(readRecipe(`A dish\n\n200 g kale\n1 leek\n\n${line}.\n`, vocabulary).servings).toBeNull();
  });
});
