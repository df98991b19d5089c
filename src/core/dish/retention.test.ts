import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nutrientIds } from '../foods/index.ts';
import { cookingMethods } from './recipe.ts';
import { beef, cookedTablesOfTest as tables, foodOf, pepper, rice, spinach, stock, wine } from './cooked.fixture.ts';
import { concentrationAt, keptShare, modelCaseOf } from './retention.ts';
import { logRise } from './retention-model.ts';

const boiled = { food: spinach, method: 'boiled-drained', liquid: 'drained', minutes: null, concentration: null } as const;

describe('the share kept', () => {
  it('is the fitted one where that came nearer on held-out families, with the published one beside it', () => {
    const kept = keptShare('potassium', boiled, tables);
    expect(kept.share.value).toBeCloseTo(0.8 * Math.exp(-0.1) * 0.95, 12);
    expect(kept).toMatchObject({ why: 'better-on-held-out-families', used: { kind: 'fitted', source: 'sr28-pairs' }, other: { kind: 'published', share: 0.8, locator: 'row g1' } });
  });
  it('is the published one where that came nearer', () => {
    expect(keptShare('iron', boiled, tables)).toMatchObject({ share: { value: 0.9 }, used: { kind: 'published', locator: 'row g1' }, other: { kind: 'fitted' } });
  });
  it('is the fitted one where the published table has no figure', () => {
    expect(keptShare('manganese', boiled, tables)).toMatchObject({ why: 'only-source', used: { kind: 'fitted' }, other: null });
  });
  it('is the published one with the liquid where the liquid is eaten', () => {
    const kept = keptShare('potassium', { ...boiled, method: 'simmered', liquid: 'kept' }, tables);
    expect(kept).toMatchObject({ why: 'liquid-is-eaten', share: { value: 1 }, used: { locator: 'row g2' } });
  });
  it('is whole for a mineral without a figure in a liquid that is eaten', () => {
    expect(keptShare('manganese', { ...boiled, method: 'simmered', liquid: 'kept' }, tables)).toMatchObject({ why: 'stays-in-the-pot', share: { value: 1 } });
  });
  it('has a wide range and no reference where nothing is known, wider when water is poured away', () => {
    const drained = keptShare('iodine', boiled, tables);
    const fried = keptShare('iodine', { ...boiled, method: 'stir-fried', liquid: 'none' }, tables);
    expect(drained).toMatchObject({ why: 'no-factor-known', used: { kind: 'none' } });
    expect(drained.share.low).toBeCloseTo(0.7, 6);
    expect(fried.share.low).toBeGreaterThan(drained.share.low);
  });
  it('falls with the minutes for vitamin C: peppers stewed for 40 minutes keep less than for 5', () => {
    const stewed = (minutes: number) => keptShare('vitamin-c', { food: pepper, method: 'stewed', liquid: 'kept', minutes, concentration: null }, tables).share.value;
    expect(stewed(40)).toBeCloseTo(0.6, 12);
    expect(stewed(5)).toBeCloseTo(0.6 ** 0.3, 12);
    expect(stewed(80)).toBeCloseTo(0.36, 12);
  });
  it('loses no salt and no oil: what stays in the water or the pan is the share eaten', () => {
    const salt = foodOf('Salt, table', 'Spices and herbs', { water: 0.2, sodium: 38_758 });
    const oil = foodOf('Oil, olive, salad or cooking', 'Fats and oils', { fat: 100, monounsaturates: 73 });
    expect(keptShare('sodium', { ...boiled, food: salt }, tables)).toMatchObject({ used: { kind: 'none' }, share: { value: 1 } });
    expect(keptShare('monounsaturates', { ...boiled, food: oil, method: 'fried', liquid: 'none' }, tables).share.value).toBe(1);
  });
  it('is everything for what is not cooked', () => {
    expect(keptShare('vitamin-c', { ...boiled, method: 'raw', liquid: 'none' }, tables)).toMatchObject({ why: 'not-cooked', share: { low: 1, value: 1, high: 1 } });
  });
  it('takes alcohol by the minutes over heat', () => {
    const at = (minutes: number) => keptShare('alcohol', { food: wine, method: 'simmered', liquid: 'kept', minutes, concentration: null }, tables).share.value;
    expect(at(15)).toBeCloseTo(0.4, 12);
    expect(at(22.5)).toBeCloseTo(0.375, 12);
    expect([0, 10, 20, 45, 70, 100, 140].map(at)).toEqual([0, 10, 20, 45, 70, 100, 140].map(at).sort((a, b) => b - a));
  });
  it('lies from 0 to 1 in order for every nutrient, food and way', () => {
    const cooking = fc.record({
      nutrient: fc.constantFrom(...nutrientIds), food: fc.constantFrom(spinach, pepper, rice, stock, wine, beef), method: fc.constantFrom(...cookingMethods),
      liquid: fc.constantFrom('none' as const, 'kept' as const, 'drained' as const), minutes: fc.option(fc.double({ min: 0, max: 400, noNaN: true }), { nil: null }),
      concentration: fc.option(fc.double({ min: -4, max: 4, noNaN: true }), { nil: null }),
    });
    const property = fc.property(cooking, ({ nutrient, ...given }) => {
      const { share } = keptShare(nutrient, given, tables);
      expect(share.low).toBeGreaterThanOrEqual(0);
      expect(share.low).toBeLessThanOrEqual(share.value);
      expect(share.value).toBeLessThanOrEqual(share.high);
      expect(share.high).toBeLessThanOrEqual(1);
    });
    fc.assert(property, { numRuns: 500 });
  });
});

describe('the concentration of a weighed line', () => {
  it('of a drained plant allows for the dry matter that went with the water', () => {
    expect(concentrationAt(0.95, spinach, 'boiled-drained', tables)).toBeCloseTo(0, 12);
    expect(concentrationAt(1, spinach, 'steamed', tables)).toBeCloseTo(0, 12);
    expect(concentrationAt(1, spinach, 'reheated', tables)).toBeNull();
  });
  it('is the one at which what is kept whole rises by one over the yield', () => {
    for (const weightYield of [0.6, 0.75, 0.9]) {
      const concentration = concentrationAt(weightYield, beef, 'fried', tables)!;
      expect(logRise(tables.fitted.solids, modelCaseOf(beef, 'fried', concentration), null)).toBeCloseTo(-Math.log(weightYield), 9);
    }
  });
});
