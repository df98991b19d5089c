import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { searchSwaps, type SearchAsked, type SearchLine } from './swap-search.ts';

const value = fc.oneof({ weight: 6, arbitrary: fc.integer({ min: 0, max: 20 }) }, { weight: 1, arbitrary: fc.constant(NaN) });
const option = fc.record({ values: fc.tuple(value, value), loss: fc.integer({ min: 1, max: 9 }), forbidden: fc.boolean() });
const line: fc.Arbitrary<SearchLine> = fc.record({ own: fc.record({ values: fc.tuple(value, value), forbidden: fc.integer({ min: 0, max: 5 }).map((n) => n === 0) }), others: fc.array(option, { maxLength: 4 }) })
  .map(({ own, others }) => ({ options: [{ ...own, loss: 0 }, ...others] }));
const asked: fc.Arbitrary<SearchAsked> = fc.record({
  lines: fc.array(line, { minLength: 1, maxLength: 5 }),
  bounds: fc.tuple(fc.integer({ min: 5, max: 60 }), fc.integer({ min: 5, max: 60 })).map(([least, most]) => [{ measure: 0, least, most: null }, { measure: 1, least: null, most }]),
  swaps: fc.integer({ min: 0, max: 3 }),
  answers: fc.constant(1),
});

/** The least loss with the fewest swaps, by looking at everything. */
function byHand({ lines, bounds, swaps }: SearchAsked): { swaps: number; loss: number } | null {
  let best: { swaps: number; loss: number } | null = null;
  const walk = (i: number, picks: number[]): void => {
    if (i < lines.length) {
      for (let o = 0; o < lines[i]!.options.length; o++) walk(i + 1, [...picks, o]);
      return;
    }
    const changed = picks.filter((o) => o > 0).length;
    if (changed > swaps || picks.some((o, at) => lines[at]!.options[o]!.forbidden)) return;
    for (const { measure, least, most } of bounds) {
      let sum = 0;
      for (const [at, o] of picks.entries()) {
        const v = lines[at]!.options[o]!.values[measure]!;
        // A food put in must be known to prove a most; the foods already there count as known sums.
        if (Number.isNaN(v) && most !== null && o > 0) return;
        sum += Number.isNaN(v) ? 0 : v;
      }
      if ((least !== null && sum < least) || (most !== null && sum > most)) return;
    }
    const loss = picks.reduce((total, o, at) => total + lines[at]!.options[o]!.loss, 0);
    if (best === null || changed < best.swaps || (changed === best.swaps && loss < best.loss)) best = { swaps: changed, loss };
  };
  walk(0, []);
  return best;
}

describe('the search over combinations of swaps', () => {
  it('finds what looking at every combination finds', () => {
    fc.assert(fc.property(asked, (question) => {
      const hand = byHand(question);
      const answer = searchSwaps(question).answers[0];
      expect(answer === undefined ? null : { swaps: answer.choices.length, loss: answer.loss }).toEqual(hand);
    }), { numRuns: 600 });
  });

  it('changes nothing where nothing need change', () => {
    const one: SearchLine = { options: [{ values: [10], loss: 0, forbidden: false }, { values: [99], loss: 1, forbidden: false }] };
    expect(searchSwaps({ lines: [one], bounds: [{ measure: 0, least: 5, most: null }], swaps: 3, answers: 5 }).answers[0]?.choices).toEqual([]);
  });

  it('gives several answers, the least loss first', () => {
    const lines: SearchLine[] = [0, 1, 2].map((i) => ({ options: [{ values: [1], loss: 0, forbidden: false }, { values: [10], loss: i + 1, forbidden: false }] }));
    const { answers } = searchSwaps({ lines, bounds: [{ measure: 0, least: 12, most: null }], swaps: 3, answers: 3 });
    expect(answers.map((a) => a.choices.map((c) => c.line))).toEqual([[0], [1], [2]]);
    expect(answers[0]?.totals[0]).toBe(12);
  });

  it('says which bound is out of reach', () => {
    const one: SearchLine = { options: [{ values: [1], loss: 0, forbidden: false }, { values: [2], loss: 1, forbidden: false }] };
    expect(searchSwaps({ lines: [one], bounds: [{ measure: 0, least: 100, most: null }], swaps: 3, answers: 1 })).toMatchObject({ answers: [], outOfReach: [0] });
  });
});
