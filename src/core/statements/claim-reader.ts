import type { Sign } from './signs.ts';
import { tagOrder, type TagOrder } from './tag-words.ts';
import { gramBuckets } from './word-grams.ts';

/** A matrix by rows. */
export interface Matrix {
  readonly rows: number;
  readonly width: number;
  readonly values: Float32Array;
}

/** One direction of one layer; the four gates (in, forget, new, out) lie side by side. */
export interface ReadingDirection {
  readonly input: Matrix;
  readonly state: Matrix;
  readonly bias: Float32Array;
}

/**
 * The fitted reader of claims: two layers that read a sentence forwards and backwards (long short-term memory, S. Hochreiter
 * and J. Schmidhuber, 1997) and a field over the row of tags (J. Lafferty et al., 2001). data/statements/claim-reader.json.
 */
export interface ReaderWeights {
  readonly words: ReadonlyMap<string, number>;
  readonly signs: ReadonlyMap<Sign, number>;
  readonly hidden: number;
  /** One row a word; the last is for words that the reader has not met. */
  readonly wordRows: Matrix;
  readonly signRows: Matrix;
  readonly gramRows: Matrix;
  readonly layers: readonly { readonly forward: ReadingDirection; readonly backward: ReadingDirection }[];
  readonly out: Matrix;
  readonly outBias: Float32Array;
  /** `follow[a * tags + b]`: tag b after tag a. */
  readonly follow: Float32Array;
  readonly first: Float32Array;
  readonly last: Float32Array;
}

/** Rows of numbers in double precision: what is multiplied again and again needs no widening. */
interface Rows {
  readonly width: number;
  readonly values: Float64Array;
}

const rowsOf = ({ width, values }: Matrix): Rows => ({ width, values: Float64Array.from(values) });

/** A stretch of a list of numbers. */
interface Stretch {
  readonly values: Float64Array;
  readonly at: number;
  readonly count: number;
}

/** Adds `by` times the rows from `firstRow` on to `sum` from `sumAt`; eight rows at a time, since this is where nearly all the time goes. */
function addProduct(sum: Float64Array, sumAt: number, by: Stretch, { values, width, firstRow }: Rows & { readonly firstRow: number }): void {
  const { values: x, at, count } = by;
  let k = 0;
  for (; k + 8 <= count; k += 8) {
    const a = x[at + k]!;
    const b = x[at + k + 1]!;
    const c = x[at + k + 2]!;
    const d = x[at + k + 3]!;
    const e = x[at + k + 4]!;
    const f = x[at + k + 5]!;
    const g = x[at + k + 6]!;
    const h = x[at + k + 7]!;
    let p = (firstRow + k) * width;
    for (let j = sumAt, end = sumAt + width; j < end; j++, p++) {
      sum[j]! += a * values[p]! + b * values[p + width]! + c * values[p + 2 * width]! + d * values[p + 3 * width]! + e * values[p + 4 * width]! + f * values[p + 5 * width]! + g * values[p + 6 * width]! + h * values[p + 7 * width]!;
    }
  }
  for (; k < count; k++) {
    const a = x[at + k]!;
    for (let j = 0, p = (firstRow + k) * width; j < width; j++, p++) sum[sumAt + j]! += a * values[p]!;
  }
}

/** One direction of one layer, ready to work. */
interface Direction {
  readonly input: Rows & { readonly firstRow: number };
  readonly state: Rows & { readonly firstRow: number };
  readonly bias: Float64Array;
}

const directionOf = ({ input, state, bias }: ReadingDirection): Direction => ({ input: { ...rowsOf(input), firstRow: 0 }, state: { ...rowsOf(state), firstRow: 0 }, bias: Float64Array.from(bias) });

// The logistic curve by straight lines between 256 points a unit: 2e-7 off at most, and several times as fast as Math.exp.
const pointsPerUnit = 256;
const furthest = 16;
const curve = Float64Array.from({ length: 2 * furthest * pointsPerUnit + 2 }, (_, i) => 1 / (1 + Math.exp(furthest - i / pointsPerUnit)));

function sigmoid(x: number): number {
  if (x >= furthest) return 1;
  if (x <= -furthest) return 0;
  const at = (x + furthest) * pointsPerUnit;
  const low = at | 0;
  const from = curve[low]!;
  return from + (at - low) * (curve[low + 1]! - from);
}

const tanh = (x: number): number => 2 * sigmoid(2 * x) - 1;

/**
 * Walks over the words and writes the state after each into `states`, a row of `2 * hidden` a word: the first half for the way
 * forwards, the second for the way back. `gates` hold a row of `4 * hidden` a word, with bias and input already in it.
 */
function walk(gates: Float64Array, direction: Direction, hidden: number, { states, backwards }: { readonly states: Float64Array; readonly backwards: boolean }): void {
  const count = gates.length / (4 * hidden);
  const memory = new Float64Array(hidden);
  const half = backwards ? hidden : 0;
  for (let step = 0; step < count; step++) {
    const i = backwards ? count - 1 - step : step;
    const g = i * 4 * hidden;
    const now = i * 2 * hidden + half;
    const before = now + (backwards ? 2 : -2) * hidden;
    if (step > 0) addProduct(gates, g, { values: states, at: before, count: hidden }, direction.state);
    for (let j = 0; j < hidden; j++) {
      const kept = sigmoid(gates[g + j]!) * tanh(gates[g + 2 * hidden + j]!) + sigmoid(gates[g + hidden + j]!) * memory[j]!;
      memory[j] = kept;
      states[now + j] = sigmoid(gates[g + 3 * hidden + j]!) * tanh(kept);
    }
  }
}

/** A reader at work: what the first layer makes of a word by itself is worked out once a word. */
export interface ClaimReader {
  /** Score of every tag at every word. */
  scores(words: readonly string[], signs: readonly (readonly Sign[])[]): Float64Array[];
  readonly weights: ReaderWeights;
  readonly order: TagOrder;
}

const mostRemembered = 20_000;

export function claimReader(weights: ReaderWeights): ClaimReader {
  const { hidden, wordRows, signRows, gramRows } = weights;
  const [first, ...later] = weights.layers.map(({ forward, backward }) => [directionOf(forward), directionOf(backward)] as const);
  if (!first) throw new Error('the claim reader has no layer');
  const out = { ...rowsOf(weights.out), firstRow: 0 };
  const wide = 4 * hidden;
  const signsFrom = wordRows.width;
  const gramsFrom = signsFrom + signRows.width;
  const rowOf = (matrix: Matrix, row: number): Float64Array => Float64Array.from(matrix.values.subarray(row * matrix.width, (row + 1) * matrix.width));
  /** Both directions side by side. */
  const gatesFor = (values: Float64Array, firstRow: number): Float64Array => {
    const gates = new Float64Array(2 * wide);
    first.forEach((side, s) => addProduct(gates, s * wide, { values, at: 0, count: values.length }, { ...side.input, firstRow }));
    return gates;
  };
  const signGates = new Map([...weights.signs].map(([sign, row]) => [sign, gatesFor(rowOf(signRows, row), signsFrom)] as const));
  const wordGates = new Map<string, Float64Array>();

  function gatesOfWord(word: string): Float64Array {
    const known = wordGates.get(word);
    if (known) return known;
    const grams = new Float64Array(gramRows.width);
    const boxes = gramBuckets(word);
    const share = 1 / Math.sqrt(boxes.length);
    for (const box of boxes) for (let j = 0; j < grams.length; j++) grams[j]! += share * gramRows.values[box * grams.length + j]!;
    const gates = gatesFor(rowOf(wordRows, weights.words.get(word) ?? wordRows.rows - 1), 0);
    const more = gatesFor(grams, gramsFrom);
    for (let j = 0; j < gates.length; j++) gates[j]! += more[j]! + (j < wide ? first![0].bias[j]! : first![1].bias[j - wide]!);
    if (wordGates.size < mostRemembered) wordGates.set(word, gates);
    return gates;
  }

  function scores(words: readonly string[], signs: readonly (readonly Sign[])[]): Float64Array[] {
    const count = words.length;
    const forth = new Float64Array(count * wide);
    const back = new Float64Array(count * wide);
    const add = (from: Float64Array, i: number): void => {
      for (let j = 0, at = i * wide; j < wide; j++, at++) {
        forth[at]! += from[j]!;
        back[at]! += from[wide + j]!;
      }
    };
    words.forEach((word, i) => {
      add(gatesOfWord(word), i);
      for (const sign of signs[i] ?? []) {
        const own = signGates.get(sign);
        if (own) add(own, i);
      }
    });
    let states = new Float64Array(count * 2 * hidden);
    walk(forth, first![0], hidden, { states, backwards: false });
    walk(back, first![1], hidden, { states, backwards: true });
    for (const sides of later) {
      const next = new Float64Array(count * 2 * hidden);
      sides.forEach((side, s) => {
        const gates = s === 0 ? forth : back;
        for (let i = 0; i < count; i++) {
          gates.set(side.bias, i * wide);
          addProduct(gates, i * wide, { values: states, at: i * 2 * hidden, count: 2 * hidden }, side.input);
        }
      });
      walk(forth, sides[0], hidden, { states: next, backwards: false });
      walk(back, sides[1], hidden, { states: next, backwards: true });
      states = next;
    }
    return words.map((_, i) => {
      const tags = Float64Array.from(weights.outBias);
      addProduct(tags, 0, { values: states, at: i * 2 * hidden, count: 2 * hidden }, out);
      for (let t = 0; t < tags.length; t++) tags[t]! += (i === 0 ? weights.first[t]! : 0) + (i === count - 1 ? weights.last[t]! : 0);
      return tags;
    });
  }
  return { scores, weights, order: tagOrder(weights.follow) };
}
