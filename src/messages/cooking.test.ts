import { describe, expect, it } from 'vitest';
import { countdown } from './cooking.ts';

describe('a countdown', () => {
  it.each([[0, '0:00'], [65, '1:05'], [-65, '+1:05'], [10_799, '179:59'], [10_800, '3 h 00 min'], [30_037, '8 h 20 min'], [-30_037, '+8 h 20 min']])('of %d seconds reads %s', (seconds, text) => {
    expect(countdown(seconds)).toBe(text);
  });
});
