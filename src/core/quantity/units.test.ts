import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testVocabulary } from '../../../tests/reader-vocabulary.ts';
import { measureSystems } from './units.ts';

const { units } = testVocabulary;

describe('the unit table', () => {
  it('finds every unit by each of its spellings, in any case', () => {
    for (const unit of units.units) {
      for (const word of unit.words) expect(units.spelled(word), word).toBe(unit);
      for (const word of unit.exactWords) expect(units.spelled(word), word).toBe(unit);
    }
    expect(units.spelled('GRAMS')?.id).toBe('g');
    expect(units.spelled('Fl Oz')?.id).toBe('fl-oz');
  });

  it('tells T, a tablespoon, from t, a teaspoon', () => {
    expect(units.spelled('T')?.id).toBe('tbsp');
    expect(units.spelled('t')?.id).toBe('tsp');
  });

  it('has a size for whatever measures, in every system, and none for a count', () => {
    for (const unit of units.units) {
      for (const system of measureSystems) {
        const size = units.size(unit.id, system);
        if (unit.kind === 'count') expect(size).toBeNull();
        else expect(size!.value).toBeGreaterThan(0);
      }
    }
  });

  it('gives a spread to every hand or eye measure and none to a defined unit', () => {
    for (const unit of units.units.filter(({ kind }) => kind !== 'count')) {
      for (const size of Object.values(unit.sizes)) {
        if (unit.vague) expect(size.spread, unit.id).toBeGreaterThan(0.1);
        else expect(size.spread, unit.id).toBeLessThanOrEqual(0.1);
      }
    }
  });

  it('keeps the same ratios within the US customary system: 3 tsp a tbsp, 16 tbsp a cup, 2 cups a pint, 8 pints a gallon', () => {
    const us = (id: string): number => units.size(id, 'us')!.value;
    for (const [small, large, n] of [['tsp', 'tbsp', 3], ['tbsp', 'cup', 16], ['cup', 'pint', 2], ['pint', 'quart', 2], ['pint', 'gallon', 8], ['fl-oz', 'cup', 8], ['gill', 'pint', 4]] as const) {
      expect(us(large) / us(small)).toBeCloseTo(n, 10);
    }
  });

  it('says null to words that are no unit and throws on an unknown id', () => {
    fc.assert(fc.property(fc.string(), (word) => void units.spelled(word)));
    expect(units.spelled('onion')).toBeNull();
    expect(units.spelled('constructor')).toBeNull();
    expect(units.find('furlong')).toBeNull();
    expect(() => units.size('furlong', 'uk')).toThrow(/unknown-unit/);
  });
});
