import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance, isSlipOf, slipsAllowed } from './edit-distance.ts';

describe('the distance of two words', () => {
  it('counts letters put in, left out, changed and swapped', () => {
    const table: [string, string, number][] = [['kale', 'kale', 0], ['onoin', 'onion', 1], ['tomto', 'tomato', 1], ['cinamon', 'cinnamon', 1], ['broccolli', 'broccoli', 1], ['chikcen', 'chicken', 1], ['kitten', 'sitting', 3]];
    for (const [a, b, distance] of table) expect(editDistance(a, b, 5), `${a} ${b}`).toBe(distance);
  });

  it('is the same both ways, nothing only for equal words, and never under-counts the length', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c', 'd'), maxLength: 8 });
    fc.assert(
      fc.property(word, word, (a, b) => {
        const d = editDistance(a, b, 20);
        expect(d).toBe(editDistance(b, a, 20));
        expect(d === 0).toBe(a === b);
        expect(d).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
        expect(d).toBeLessThanOrEqual(Math.max(a.length, b.length));
        expect(editDistance(a, b, 1)).toBe(Math.min(d, 2));
      }),
    );
  });
});

describe('a slip of the finger', () => {
  it('is read where the word leaves no doubt', () => {
    for (const [typed, word] of [['turmreic', 'turmeric'], ['brocoli', 'broccoli'], ['onoin', 'onion'], ['hcicken', 'chicken'], ['spagheti', 'spaghetti'], ['aspargus', 'asparagus']] as const) expect(isSlipOf(typed, word), typed).not.toBeNull();
  });

  it('never turns one short word into another', () => {
    for (const [typed, word] of [['shard', 'chard'], ['shard', 'shark'], ['mint', 'mind'], ['oat', 'oats'], ['leek', 'leak'], ['bean', 'beef'], ['bass', 'base'], ['pear', 'peas'], ['corn', 'cord'], ['lime', 'lima']] as const) expect(isSlipOf(typed, word), typed).toBeNull();
  });

  it('may hold no more letters than the word can bear', () => {
    expect([2, 3, 4, 7, 8, 12].map(slipsAllowed)).toEqual([0, 0, 1, 1, 2, 2]);
  });
});
