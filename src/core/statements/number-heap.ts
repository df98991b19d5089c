/** Rows of numbers within a heap: the place of the first number and how many a row has (a multiple of four). */
export interface HeapRows {
  readonly at: number;
  readonly width: number;
}

/** A stretch of memory for numbers, with the one operation in which reading spends its time. Places count numbers from the start. */
export interface NumberHeap {
  readonly numbers: Float32Array;
  /** Adds the `count` numbers from `vector` on, times as many rows, to the numbers from `sum` on. */
  addProduct(sum: number, vector: number, count: number, rows: HeapRows): void;
}

/** A heap in plain script; another may be handed in that does the same faster. */
export function plainHeap(size: number): NumberHeap {
  const numbers = new Float32Array(size);
  return {
    numbers,
    addProduct(sum, vector, count, { at, width }) {
      for (let k = 0; k < count; k++) {
        const by = numbers[vector + k]!;
        for (let j = 0, p = at + k * width; j < width; j++, p++) numbers[sum + j]! += by * numbers[p]!;
      }
    },
  };
}
