import { plainHeap, type HeapRows, type NumberHeap } from './number-heap.ts';
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

/** One direction of one layer within the heap. */
interface Direction {
  readonly input: HeapRows;
  readonly state: HeapRows;
  readonly bias: Float32Array;
}

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
const fourfold = (n: number): number => Math.ceil(n / 4) * 4;

/** Words that are read at one go; a longer sentence is read in pieces. */
const mostWords = 256;

/** The places of everything in one heap: the tables, then room for the words of a sentence. */
interface Plan {
  readonly heap: NumberHeap;
  readonly layers: readonly (readonly [Direction, Direction])[];
  readonly out: HeapRows;
  /** Gates of all words forwards and backwards, states of a layer and of the next, the input of one word, the tags of one word. */
  readonly room: { readonly gates: readonly [number, number]; readonly states: readonly [number, number]; readonly input: number; readonly tags: number };
}

function planOf(weights: ReaderWeights, heapOf: (size: number) => NumberHeap): Plan {
  const { hidden, layers, out } = weights;
  let size = 0;
  const reserve = (count: number): number => {
    const at = size;
    size += fourfold(count);
    return at;
  };
  const fills: { at: number; matrix: Matrix; width: number }[] = [];
  const place = (matrix: Matrix): HeapRows => {
    const width = fourfold(matrix.width);
    const at = reserve(matrix.rows * width);
    fills.push({ at, matrix, width });
    return { at, width };
  };
  const direction = ({ input, state, bias }: ReadingDirection): Direction => ({ input: place(input), state: place(state), bias });
  const placed = layers.map(({ forward, backward }) => [direction(forward), direction(backward)] as const);
  const tags = place(out);
  const widest = Math.max(...layers.map(({ forward }) => forward.input.rows));
  const room = {
    gates: [reserve(mostWords * 4 * hidden), reserve(mostWords * 4 * hidden)] as const,
    states: [reserve(mostWords * 2 * hidden), reserve(mostWords * 2 * hidden)] as const,
    input: reserve(widest), tags: reserve(tags.width),
  };
  const heap = heapOf(size);
  for (const { at, matrix, width } of fills) for (let r = 0; r < matrix.rows; r++) heap.numbers.set(matrix.values.subarray(r * matrix.width, (r + 1) * matrix.width), at + r * width);
  return { heap, layers: placed, out: tags, room };
}

/**
 * Walks over the words and writes the state after each from `states` on, a row of `2 * hidden` a word: the first half for the way
 * forwards, the second for the way back. The gates, a row of `4 * hidden` a word, already hold bias and input.
 */
function walk(heap: NumberHeap, direction: Direction, hidden: number, way: { readonly gates: number; readonly states: number; readonly count: number; readonly backwards: boolean }): void {
  const { numbers } = heap;
  const memory = new Float64Array(hidden);
  for (let step = 0; step < way.count; step++) {
    const i = way.backwards ? way.count - 1 - step : step;
    const g = way.gates + i * 4 * hidden;
    const now = way.states + i * 2 * hidden + (way.backwards ? hidden : 0);
    if (step > 0) heap.addProduct(g, now + (way.backwards ? 2 : -2) * hidden, hidden, direction.state);
    for (let j = 0; j < hidden; j++) {
      const kept = sigmoid(numbers[g + j]!) * tanh(numbers[g + 2 * hidden + j]!) + sigmoid(numbers[g + hidden + j]!) * memory[j]!;
      memory[j] = kept;
      numbers[now + j] = sigmoid(numbers[g + 3 * hidden + j]!) * tanh(kept);
    }
  }
}

/** A reader at work: what the first layer makes of a word by itself is worked out once a word. */
export interface ClaimReader {
  /** Score of every tag at every word. */
  scores(words: readonly string[], signs: readonly (readonly Sign[])[]): Float64Array[];
  readonly order: TagOrder;
}

const mostRemembered = 20_000;

/** Makes the weights ready to read. `heapOf` makes the memory that the numbers are worked on in. */
export function claimReader(weights: ReaderWeights, heapOf: (size: number) => NumberHeap = plainHeap): ClaimReader {
  const { hidden, wordRows, signRows, gramRows } = weights;
  const { heap, layers: [first, ...later], out, room } = planOf(weights, heapOf);
  if (!first) throw new Error('the claim reader has no layer');
  const { numbers } = heap;
  const wide = 4 * hidden;
  const signsFrom = wordRows.width;
  const gramsFrom = signsFrom + signRows.width;
  const rowOf = (matrix: Matrix, row: number): Float32Array => matrix.values.subarray(row * matrix.width, (row + 1) * matrix.width);
  /** What both directions of the first layer make of a part of their input, side by side. */
  const gatesFor = (part: Float32Array, firstRow: number): Float32Array => {
    const gates = new Float32Array(2 * wide);
    numbers.set(part, room.input);
    first.forEach(({ input }, side) => {
      numbers.fill(0, room.gates[0], room.gates[0] + wide);
      heap.addProduct(room.gates[0], room.input, part.length, { at: input.at + firstRow * input.width, width: input.width });
      gates.set(numbers.subarray(room.gates[0], room.gates[0] + wide), side * wide);
    });
    return gates;
  };
  const signGates = new Map([...weights.signs].map(([sign, row]) => [sign, gatesFor(rowOf(signRows, row), signsFrom)] as const));
  const wordGates = new Map<string, Float32Array>();

  function gatesOfWord(word: string): Float32Array {
    const known = wordGates.get(word);
    if (known) return known;
    const grams = new Float32Array(gramRows.width);
    const buckets = gramBuckets(word);
    const share = 1 / Math.sqrt(buckets.length);
    for (const bucket of buckets) for (let j = 0; j < grams.length; j++) grams[j]! += share * gramRows.values[bucket * grams.length + j]!;
    const gates = gatesFor(rowOf(wordRows, weights.words.get(word) ?? wordRows.rows - 1), 0);
    const more = gatesFor(grams, gramsFrom);
    for (let j = 0; j < gates.length; j++) gates[j]! += more[j]! + first![j < wide ? 0 : 1].bias[j % wide]!;
    if (wordGates.size < mostRemembered) wordGates.set(word, gates);
    return gates;
  }

  function addGates(from: Float32Array, i: number): void {
    for (let j = 0, a = room.gates[0] + i * wide, b = room.gates[1] + i * wide; j < wide; j++, a++, b++) {
      numbers[a]! += from[j]!;
      numbers[b]! += from[wide + j]!;
    }
  }

  function piece(words: readonly string[], signs: readonly (readonly Sign[])[]): Float64Array[] {
    const count = words.length;
    const known = words.map(gatesOfWord);
    for (const gates of room.gates) numbers.fill(0, gates, gates + count * wide);
    known.forEach((gates, i) => {
      addGates(gates, i);
      for (const sign of signs[i] ?? []) {
        const own = signGates.get(sign);
        if (own) addGates(own, i);
      }
    });
    let [states, spare] = room.states;
    const bothWays = (sides: readonly [Direction, Direction], into: number): void => sides.forEach((side, s) => walk(heap, side, hidden, { gates: room.gates[s]!, states: into, count, backwards: s === 1 }));
    bothWays(first!, states);
    for (const sides of later) {
      sides.forEach(({ input, bias }, s) => {
        for (let i = 0; i < count; i++) {
          const gates = room.gates[s]! + i * wide;
          numbers.set(bias, gates);
          heap.addProduct(gates, states + i * 2 * hidden, 2 * hidden, input);
        }
      });
      bothWays(sides, spare);
      [states, spare] = [spare, states];
    }
    return words.map((_, i) => {
      numbers.set(weights.outBias, room.tags);
      heap.addProduct(room.tags, states + i * 2 * hidden, 2 * hidden, out);
      const tags = Float64Array.from(numbers.subarray(room.tags, room.tags + weights.outBias.length));
      for (let t = 0; t < tags.length; t++) tags[t]! += (i === 0 ? weights.first[t]! : 0) + (i === count - 1 ? weights.last[t]! : 0);
      return tags;
    });
  }

  function scores(words: readonly string[], signs: readonly (readonly Sign[])[]): Float64Array[] {
    const all: Float64Array[] = [];
    for (let from = 0; from < words.length; from += mostWords) all.push(...piece(words.slice(from, from + mostWords), signs.slice(from, from + mostWords)));
    return all;
  }
  return { scores, order: tagOrder(weights.follow) };
}

const mean = <T extends Float64Array>(lists: readonly T[]): Float64Array => Float64Array.from(lists[0] ?? [], (_, i) => lists.reduce((sum, list) => sum + list[i]!, 0) / lists.length);

/** Several readers as one: the mean of what they say. */
export function readTogether(readers: readonly ClaimReader[]): ClaimReader {
  return {
    order: tagOrder(Float32Array.from(mean(readers.map((reader) => reader.order.follow)))),
    scores(words, signs) {
      const said = readers.map((reader) => reader.scores(words, signs));
      return words.map((_, i) => mean(said.map((rows) => rows[i]!)));
    },
  };
}
