import { describe, expect, it } from 'vitest';
import { vectorOf } from './word-vectors.ts';

const vectors = new Map([['mum', [1]], ['dont', [2]], ['000', [3]], ['ten', [4]]]);

describe('the vector of a word', () => {
  it('is its own, or that of the word without possessive or apostrophe', () => {
    expect(vectorOf('mum', vectors)).toEqual([1]);
    expect(vectorOf("mum's", vectors)).toEqual([1]);
    expect(vectorOf("don't", vectors)).toEqual([2]);
  });
  it('is that of another number for a number without one', () => {
    expect(vectorOf('375', vectors)).toEqual([3]);
    expect(vectorOf('3.75', vectors)).toEqual([4]);
  });
  it('is missing, not zero, for a word that has none', () => {
    expect(vectorOf('asafoetida', vectors)).toBeUndefined();
  });
});
