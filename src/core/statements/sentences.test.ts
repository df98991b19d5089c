import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadRules, plates, sayInput } from '../../../tests/cases/statements/rules.ts';
import { checkerFor, findClaims, sentencesOf } from './index.ts';

const { rules, vocabulary } = loadRules();
const words = fc.constantFrom('iron', 'packed with', 'cramps', 'ease', 'not', 'your', 'hormones', '12 g of protein', 'studies say', 'may', '#PCOSfriendly', 'bloat-busting', '🍲', '“soup”', 'e.g.', '3.5', '?', '!', '\n', '•', 'don’t', 'œstrogen', '%', 'half your folate');
const texts = fc.oneof(fc.string({ unit: 'grapheme', maxLength: 200 }), fc.array(words, { maxLength: 30 }).map((w) => w.join(' ')));

describe('sentences and their claims', () => {
  it('stand in the text where they say, in order, without overlap', () => {
    fc.assert(fc.property(texts, (text) => {
      let last = 0;
      for (const sentence of sentencesOf(text)) {
        expect(text.slice(sentence.start, sentence.end)).toBe(sentence.text);
        expect(sentence.start).toBeGreaterThanOrEqual(last);
        last = sentence.end;
        let end = sentence.start;
        for (const claim of findClaims(sentence, vocabulary)) {
          expect(text.slice(claim.start, claim.end)).toBe(claim.span);
          expect(claim.start).toBeGreaterThanOrEqual(end);
          expect(claim.end).toBeLessThanOrEqual(sentence.end);
          end = claim.end;
        }
      }
    }), { numRuns: 300 });
  });
  it('name the foods of their claims, and no word that only points at one', () => {
    const foods = (text: string): readonly string[] => sentencesOf(text).flatMap((s) => findClaims(s, vocabulary)).flatMap((c) => c.foods);
    expect(foods('This is rich in iron and these ease cramps.')).toEqual([]);
    expect(foods('These lentils ease cramps.')).toContain('lentil');
  });
  it('are judged without a crash, whatever is typed', () => {
    const checker = checkerFor(sayInput(plates.wide), rules, vocabulary);
    fc.assert(fc.property(texts, (text) => sentencesOf(text).every((s) => checker.sentence(s).sentence.text === s.text)), { numRuns: 200 });
  });
  it('keep decimals, short forms and hashtags whole', () => {
    expect(sentencesOf('It has 3.5 mg. Dr. Green agrees! #womblove').map((s) => s.text)).toEqual(['It has 3.5 mg.', 'Dr. Green agrees!', '#womblove']);
  });
});
