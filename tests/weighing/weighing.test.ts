import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weighFindingText, weighStepText } from '../../src/messages/weighing.ts';
import { weighText } from './lines.ts';

const value = (text: string): number | null => weighText(text)[0]?.weighing.grams?.value ?? null;

describe('everyday British lines', () => {
  it('weigh what a cook would expect, within a third', () => {
    const table: [string, number][] = [
      ['1 onion', 135], ['1 large onion, finely chopped', 200], ['2 garlic cloves, crushed', 7], ['1 x 400g tin chickpeas, drained', 240], ['1 tin chopped tomatoes', 400], ['2 medium carrots', 140], ['3 cm piece of ginger', 15], ['a thumb-sized piece of ginger', 19],
      ['2 tbsp olive oil', 27], ['1 tsp ground cumin', 2.2], ['a knob of butter', 14], ['4 eggs', 204], ['1 lemon, juiced', 45], ['juice of 1 lemon', 45], ['zest of 1 lemon', 5], ['1 bunch of coriander', 26], ['2 sprigs of thyme', 1.4], ['2 sticks celery', 80],
      ['500 g potatoes, peeled and cubed', 440], ['a good handful of chopped kale', 35], ['2 slices wholemeal bread', 80], ['1 avocado', 140], ['2 chicken breasts', 340], ['4 salmon fillets', 500], ['1 banana', 110], ['1 heaped tbsp plain flour', 13], ['250 ml milk', 258], ['1 tbsp honey', 21],
      ['100 g spinach', 100], ['1 red pepper', 131], ['1 courgette', 190], ['1 aubergine', 260], ['200 g tin of tuna in spring water, drained', 140], ['1 cm slice of ginger', 5],
    ];
    for (const [text, grams] of table) {
      const got = value(text);
      expect(got === null ? 0 : got / grams, `${text}: ${got} g, expected about ${grams} g`).toBeGreaterThan(0.67);
      expect(got === null ? 9 : got / grams, `${text}: ${got} g, expected about ${grams} g`).toBeLessThan(1.5);
    }
  });

  it('without an amount have no weight, save salt, pepper and oil', () => {
    for (const text of ['parsley, to garnish', 'some grated cheese', 'feta, to serve']) expect(value(text), text).toBeNull();
    for (const text of ['salt, to taste', 'freshly ground black pepper', 'olive oil, for frying']) expect(value(text), text).toBeGreaterThan(0);
  });

  it('that ask for far too much are asked about', () => {
    for (const text of ['100 kg nutmeg', '40 onions', '500 g salt']) expect(weighText(text, { measures: 'uk', servings: 2 })[0]?.weighing.findings.map((f) => f.code), text).toContain('absurd-amount');
    for (const text of ['1 nutmeg', '2 onions', '1 kg potatoes', '1.5 litres water']) expect(weighText(text)[0]?.weighing.findings.map((f) => f.code), text).not.toContain('absurd-amount');
  });
});

describe('any line', () => {
  it('weighs twice as much when there is twice as much', () => {
    const rest = fc.constantFrom(' g kale', ' tbsp tahini', ' onions', ' tins chickpeas', ' cups cooked rice', ' handfuls spinach', ' cm piece of ginger', ' cloves garlic', ' ml vegetable stock', ' slices sourdough bread', ' lemons, juiced', ' kg potatoes, peeled');
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 2, max: 9 }), rest, (n, k, words) => {
        expect((value(`${n * k}${words}`) ?? NaN) / (value(`${n}${words}`) ?? NaN)).toBeCloseTo(k, 6);
      }),
      { numRuns: 60 },
    );
  });

  it('never fails, and every step and finding has words', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), (text) => {
        for (const { weighing } of weighText(text)) {
          for (const step of weighing.paths.flat()) expect(weighStepText(step).length).toBeGreaterThan(3);
          for (const finding of weighing.findings) expect(weighFindingText(finding)).not.toBeNull();
        }
      }),
      { numRuns: 150 },
    );
  });

  it('tells its way to the grams', () => {
    const [line] = weighText('1 large onion, finely chopped');
    expect(line?.weighing.paths.flat().map(weighStepText).join(' ')).toMatch(/One large piece of onion weighs \d+ g\. 10 % is thrown away \(stem ends, sprouts and defects\)\./);
  });
});
