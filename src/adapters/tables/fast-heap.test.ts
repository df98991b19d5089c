import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainHeap } from '../../core/statements/index.ts';
import { fastHeap } from './fast-heap.ts';

describe('the fast heap', () => {
  it('adds products as the plain heap does, and touches nothing else', () => {
    const shape = fc.record({ count: fc.integer({ min: 0, max: 70 }), fours: fc.integer({ min: 1, max: 40 }), gap: fc.integer({ min: 0, max: 9 }), seed: fc.integer({ min: 1, max: 1000 }) });
    fc.assert(fc.property(shape, ({ count, fours, gap, seed }) => {
      const width = 4 * fours;
      const sum = gap;
      const vector = sum + width + gap;
      const at = vector + count + gap;
      const size = at + count * width + gap;
      const heaps = [plainHeap(size), fastHeap(size)];
      for (const heap of heaps) {
        for (let i = 0; i < size; i++) heap.numbers[i] = Math.sin(seed * (i + 1));
        heap.addProduct(sum, vector, count, { at, width });
      }
      const [plain, fast] = heaps;
      for (let i = 0; i < size; i++) expect(fast?.numbers[i]).toBeCloseTo(plain?.numbers[i] ?? Number.NaN, 4);
    }));
  });
});
