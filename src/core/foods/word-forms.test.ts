import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldWord, nameKey, nameWordsOf, plainText, readWords, singular } from './word-forms.ts';

describe('kitchen words', () => {
  it('become singular, irregular ones too', () => {
    const table = {
      tomatoes: 'tomato', potatoes: 'potato', radishes: 'radish', anchovies: 'anchovy', berries: 'berry', leaves: 'leaf', loaves: 'loaf', halves: 'half', peaches: 'peach', olives: 'olive', chives: 'chive',
      onions: 'onion', dishes: 'dish', boxes: 'box', cherries: 'cherry', pies: 'pie', mangoes: 'mango', cheeses: 'cheese', chillies: 'chilli', purees: 'puree', eggs: 'egg', peas: 'pea', cookies: 'cookie', squashes: 'squash',
    };
    for (const [many, one] of Object.entries(table)) expect(singular(many), many).toBe(one);
  });

  it('that only look like plurals stay', () => {
    for (const word of ['couscous', 'asparagus', 'hummus', 'molasses', 'watercress', 'bass', 'citrus', 'lemongrass', 'brussels', 'swiss', 'rice', 'gas', 'octopus']) expect(singular(word), word).toBe(word);
  });

  it('have one spelling on both sides of the ocean', () => {
    const table: [string, string][] = [['yoghurt', 'yogurt'], ['chillies', 'chili'], ['chile', 'chilli'], ['omelet', 'omelette'], ['houmous', 'hummus'], ['tinned', 'canned'], ['filet', 'fillet'], ['phyllo', 'filo'], ['catsup', 'ketchup'], ['flavored', 'flavoured']];
    for (const [a, b] of table) expect(foldWord(a), a).toBe(foldWord(b));
  });

  it('are compared without accents, case, hyphens or apostrophes', () => {
    expect(plainText('Crème Fraîche')).toBe('creme fraiche');
    expect(nameKey(['Chick', 'peas'].map((w) => w.toLowerCase()))).toBe(nameKey(['chickpeas']));
    expect(readWords("flat-leaf parsley, brewer’s yeast (dried)").parts).toEqual([['flat', 'leaf', 'parsley'], ['brewers', 'yeast'], ['dried']]);
    expect(nameWordsOf("Brewer’s yeast, dried")).toEqual(['brewers', 'yeast', 'dried']);
  });

  it('fold to the same thing when folded again, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        for (const word of readWords(text).parts.flat()) {
          const once = foldWord(word);
          expect(foldWord(once).length).toBeLessThanOrEqual(once.length);
          expect(/[,;()]/.test(once)).toBe(false);
        }
        expect(nameWordsOf(text).length).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
