import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { claimReader, readTogether, type Matrix, type ReaderWeights, type ReadingDirection } from './claim-reader.ts';
import { tagCount } from './claim-tags.ts';
import { gramBucketCount, gramBuckets } from './word-grams.ts';

const hidden = 3;
const widths = { word: 5, sign: 2, gram: 4 };
const signs = ['list complaint', 'turn disease'];

/** Small weights that a seed gives: not fitted, only there to be counted through by hand. */
function weightsOf(seed: number, layers: number): ReaderWeights {
  let k = seed;
  const next = (): number => Math.sin((k += 1) * 12.9898) * 0.8;
  const list = (n: number): Float32Array => Float32Array.from({ length: n }, next);
  const matrix = (rows: number, width: number): Matrix => ({ rows, width, values: list(rows * width) });
  const direction = (input: number): ReadingDirection => ({ input: matrix(input, 4 * hidden), state: matrix(hidden, 4 * hidden), bias: list(4 * hidden) });
  const first = widths.word + widths.sign + widths.gram;
  return {
    words: new Map([['stew', 0], ['eases', 1]]), signs: new Map(signs.map((s, i) => [s, i])), hidden,
    wordRows: matrix(3, widths.word), signRows: matrix(signs.length, widths.sign), gramRows: matrix(gramBucketCount, widths.gram),
    layers: Array.from({ length: layers }, (_, l) => ({ forward: direction(l === 0 ? first : 2 * hidden), backward: direction(l === 0 ? first : 2 * hidden) })),
    out: matrix(2 * hidden, tagCount), outBias: list(tagCount), follow: list(tagCount * tagCount), first: list(tagCount), last: list(tagCount),
  };
}

const rowOf = (m: Matrix, row: number): number[] => [...m.values.slice(row * m.width, (row + 1) * m.width)];
const product = (x: readonly number[], m: Matrix): number[] => Array.from({ length: m.width }, (_, j) => x.reduce((sum, v, i) => sum + v * (m.values[i * m.width + j] ?? 0), 0));
const plus = (...lists: readonly (readonly number[])[]): number[] => (lists[0] ?? []).map((_, j) => lists.reduce((sum, list) => sum + (list[j] ?? 0), 0));
const sigmoid = (x: number): number => 1 / (1 + Math.exp(-x));

/** The same reading written as the textbook has it, one formula after another. */
function byTheBook(w: ReaderWeights, words: readonly string[], marks: readonly (readonly string[])[]): number[][] {
  let input = words.map((word, i) => {
    const buckets = gramBuckets(word);
    const grams = plus(new Array<number>(widths.gram).fill(0), ...buckets.map((b) => rowOf(w.gramRows, b))).map((v) => v / Math.sqrt(buckets.length));
    const marked = plus(new Array<number>(widths.sign).fill(0), ...(marks[i] ?? []).filter((s) => w.signs.has(s)).map((s) => rowOf(w.signRows, w.signs.get(s) ?? 0)));
    return [...rowOf(w.wordRows, w.words.get(word) ?? w.wordRows.rows - 1), ...marked, ...grams];
  });
  for (const { forward, backward } of w.layers) {
    const run = (d: ReadingDirection, xs: readonly number[][]): number[][] => {
      let h = new Array<number>(hidden).fill(0);
      let c = new Array<number>(hidden).fill(0);
      return xs.map((x) => {
        const g = plus([...d.bias], product(x, d.input), product(h, d.state));
        c = c.map((kept, j) => sigmoid(g[hidden + j] ?? 0) * kept + sigmoid(g[j] ?? 0) * Math.tanh(g[2 * hidden + j] ?? 0));
        h = c.map((v, j) => sigmoid(g[3 * hidden + j] ?? 0) * Math.tanh(v));
        return h;
      });
    };
    const there = run(forward, input);
    const back = run(backward, [...input].reverse()).reverse();
    input = there.map((h, i) => [...h, ...(back[i] ?? [])]);
  }
  return input.map((h, i) => plus([...w.outBias], product(h, w.out), i === 0 ? [...w.first] : [], i === input.length - 1 ? [...w.last] : []));
}

describe('the claim reader', () => {
  it('scores as the formulas of its layers say, word for word', () => {
    const word = fc.constantFrom('stew', 'eases', 'cramps', 'a', 'dysmenorrhoea');
    fc.assert(fc.property(fc.array(fc.tuple(word, fc.subarray([...signs, 'list unheard of'])), { minLength: 1, maxLength: 6 }), fc.integer({ min: 1, max: 500 }), fc.constantFrom(1, 2), (tokens, seed, layers) => {
      const weights = weightsOf(seed, layers);
      const words = tokens.map(([w]) => w);
      const marks = tokens.map(([, s]) => s);
      const scores = claimReader(weights).scores(words, marks);
      byTheBook(weights, words, marks).forEach((row, i) => row.forEach((v, t) => expect(scores[i]?.[t]).toBeCloseTo(v, 3)));
    }), { numRuns: 40 });
  });
  it('gives the same scores again when it has met the words before', () => {
    const reader = claimReader(weightsOf(3, 2));
    const read = (): number[][] => reader.scores(['this', 'stew', 'eases'], [[], ['turn disease'], []]).map((row) => [...row]);
    expect(read()).toEqual(read());
  });
  it('reads a sentence of a thousand words in pieces', () => {
    const reader = claimReader(weightsOf(7, 1));
    const words = Array.from({ length: 1000 }, (_, i) => (i % 3 === 0 ? 'stew' : 'eases'));
    const scores = reader.scores(words, words.map(() => []));
    expect(scores.length).toBe(1000);
    expect(scores.every((row) => row.length === tagCount && row.every(Number.isFinite))).toBe(true);
  });
  it('says the mean of several readers', () => {
    const readers = [claimReader(weightsOf(3, 1)), claimReader(weightsOf(9, 1))];
    const [words, marks] = [['this', 'stew'], [[], ['turn disease']]];
    const both = readTogether(readers);
    const said = readers.map((reader) => reader.scores(words, marks));
    both.scores(words, marks).forEach((row, i) => row.forEach((v, t) => expect(v).toBeCloseTo(((said[0]?.[i]?.[t] ?? 0) + (said[1]?.[i]?.[t] ?? 0)) / 2, 6)));
    expect(both.order.follow[5]).toBeCloseTo(((readers[0]?.order.follow[5] ?? 0) + (readers[1]?.order.follow[5] ?? 0)) / 2, 5);
  });
  it('tells unknown words apart by their pieces', () => {
    const reader = claimReader(weightsOf(5, 1));
    expect([...(reader.scores(['cystitis'], [[]])[0] ?? [])]).not.toEqual([...(reader.scores(['kohlrabi'], [[]])[0] ?? [])]);
  });
});

describe('the pieces of a word', () => {
  it('fall into the buckets, the word itself first, and are the same each time', () => {
    fc.assert(fc.property(fc.string(), (word) => {
      const buckets = gramBuckets(word);
      expect(buckets.every((b) => Number.isInteger(b) && b >= 0 && b < gramBucketCount)).toBe(true);
      expect(buckets.length).toBeLessThanOrEqual(60);
      expect(gramBuckets(word)).toEqual(buckets);
    }));
  });
});
