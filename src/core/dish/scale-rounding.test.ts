import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cookRound, quantityText, type RoundingKind } from './scale-rounding.ts';

const kinds: readonly RoundingKind[] = ['egg', 'piece', 'pack', 'spoon', 'cup', 'gram', 'kilo', 'ounce', 'pound', 'length', 'vague'];
const amount = fc.double({ min: 0.01, max: 20_000, noNaN: true });

describe('a cook’s rounding', () => {
  it.each([
    [1.37, 'egg', 1], [1.5, 'egg', 2], [0.6, 'egg', 0.5], [0.2, 'egg', 0.5], [4.4, 'egg', 4],
    [0.7, 'piece', 2 / 3], [1.3, 'piece', 1.5], [5.4, 'piece', 5],
    [0.37, 'spoon', 0.25], [0.38, 'spoon', 0.5], [2.6, 'spoon', 2.5], [0.13, 'spoon', 0.125],
    [166.7, 'gram', 165], [333, 'gram', 330], [7.4, 'gram', 7], [1.234, 'kilo', 1.25], [1.3, 'cup', 1.25],
  ] as const)('%d of kind %s is %d', (value, kind, expected) => expect(cookRound(value, kind)).toBeCloseTo(expected, 6));

  it('never makes nothing of something and stays near', () => {
    fc.assert(fc.property(amount, fc.constantFrom(...kinds), (value, kind) => {
      const rounded = cookRound(value, kind);
      expect(rounded).toBeGreaterThan(0);
      const coarse = kind === 'egg' || kind === 'vague' || kind === 'ounce' || kind === 'pound' || kind === 'length';
      if (!(kind === 'egg' && value < 0.5)) expect(Math.abs(rounded - value) / value).toBeLessThanOrEqual(coarse ? 0.7 : 0.35);
    }));
  });

  it('rounds a rounded amount to itself', () => {
    fc.assert(fc.property(amount, fc.constantFrom(...kinds), (value, kind) => {
      const once = cookRound(value, kind);
      expect(cookRound(once, kind)).toBeCloseTo(once, 6);
    }));
  });

  it('keeps the order of two amounts', () => {
    fc.assert(fc.property(amount, amount, fc.constantFrom(...kinds), (a, b, kind) => {
      const [small, large] = a < b ? [a, b] : [b, a];
      expect(cookRound(small, kind)).toBeLessThanOrEqual(cookRound(large, kind) + 1e-9);
    }));
  });

  it.each([[1.5, '1½'], [0.25, '¼'], [2 / 3, '⅔'], [3, '3'], [250, '250'], [0.8, '0.8'], [2.75, '2¾']])('prints %d as %s', (value, text) => expect(quantityText(value)).toBe(text));
});
