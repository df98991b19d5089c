import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testVocabulary } from '../../../tests/reader-vocabulary.ts';
import { readRecipe } from './read-recipe.ts';

describe('a recipe read from text', () => {
  it('never throws, whatever the text, and every span lies inside it', () => {
    const words = fc.constantFrom('2', '1/2', '½', '400g', '-', '–', 'x', 'tin', 'cups', 'of', 'onion', ',', '(', ')', 'and', 'or', 'juice', 'half', 'a', 'to taste', 'fry', 'until', '\n', '\r\n', ':', 'Serves', 'Method', 'min', '°C', 'plus', '🌶', 'мука', '.', '/');
    const texts = fc.oneof(fc.string({ unit: 'binary', maxLength: 300 }), fc.string({ unit: 'grapheme', maxLength: 300 }), fc.array(words, { maxLength: 60 }).map((parts) => parts.join(' ')));
    fc.assert(
      fc.property(texts, (text) => {
        const recipe = readRecipe(text, testVocabulary);
        const spans = [...recipe.lines, ...recipe.steps, ...recipe.steps.flatMap((step) => step.actions)].map(({ span }) => span);
        for (const { start, end } of spans) {
          expect(start).toBeGreaterThanOrEqual(0);
          expect(end).toBeGreaterThanOrEqual(start);
          expect(end).toBeLessThanOrEqual(text.length);
        }
        for (const line of recipe.lines) expect(text.slice(line.span.start, line.span.end)).toBe(line.text);
        expect(new Set(recipe.lines.map(({ id }) => id)).size).toBe(recipe.lines.length);
      }),
      { numRuns: 500 },
    );
  });
});
