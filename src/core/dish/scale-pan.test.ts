import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { panArea, panFactor, panVolume, type Pan } from './scale-pan.ts';

const size = fc.double({ min: 1, max: 100, noNaN: true });
const pan: fc.Arbitrary<Pan> = fc.oneof(
  fc.record({ shape: fc.constant('round' as const), acrossCm: size, depthCm: fc.option(size) }),
  fc.record({ shape: fc.constant('square' as const), sideCm: size, depthCm: fc.option(size) }),
  fc.record({ shape: fc.constant('oblong' as const), lengthCm: size, widthCm: size, depthCm: fc.option(size) }),
);

describe('pans', () => {
  it('a round tin of 20 cm holds about the bottom of a square one of 18 cm', () => {
    expect(panArea({ shape: 'round', acrossCm: 20, depthCm: null })).toBeCloseTo(314.16, 1);
    expect(panFactor({ shape: 'round', acrossCm: 20, depthCm: null }, { shape: 'square', sideCm: 18, depthCm: null }).factor).toBeCloseTo(1.031, 3);
  });
  it('a loaf tin of 21 × 11 × 6 cm holds 1386 ml', () => expect(panVolume({ shape: 'oblong', lengthCm: 21, widthCm: 11, depthCm: 6 })).toBeCloseTo(1386));
  it('there and back again is no change', () => {
    fc.assert(fc.property(pan, pan, (a, b) => {
      const there = panFactor(a, b);
      expect(there.factor * panFactor(b, a).factor).toBeCloseTo(1, 9);
    }));
  });
  it('a pan without a size is refused in words', () => expect(() => panArea({ shape: 'round', acrossCm: 0, depthCm: null })).toThrow(/bad-input/));
});
