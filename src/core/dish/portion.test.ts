import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Food, FoodValue, NutrientId } from '../foods/index.ts';
import { nutrientIds } from '../foods/index.ts';
import { exactly } from '../quantity/index.ts';
import { potTotals, type PotLine } from './portion.ts';

function food(values: Partial<Record<NutrientId, FoodValue>>): Food {
  return {
    code: 'own:x', table: 'own', name: 'x', scientificName: null, localNames: null, group: '', refusePercent: null, refuseText: null, household: [], energyFactors: null,
    value: (nutrient) => values[nutrient] ?? { kind: 'not-measured' },
  };
}
const analysed = (per100g: number): FoodValue => ({ kind: 'analysed', per100g, deviation: null, source: null });
const line = (lineId: string, of: Food | null, grams: number | null, eaten = 1, kept = 1): PotLine => ({
  lineId, food: of, grams: grams === null ? null : exactly(grams), eaten: exactly(eaten), kept: () => ({ share: exactly(kept), reference: null }),
});
const magnesium = (lines: PotLine[]) => potTotals(lines).totals.get('magnesium')!;

const anyLine = fc.record({
  grams: fc.option(fc.double({ min: 0, max: 5000, noNaN: true }), { nil: null }),
  per100g: fc.option(fc.double({ min: 0, max: 500, noNaN: true }), { nil: null }),
  eaten: fc.double({ min: 0, max: 1, noNaN: true }),
  kept: fc.double({ min: 0, max: 1.1, noNaN: true }),
});
type AnyLine = typeof anyLine extends fc.Arbitrary<infer T> ? T : never;
const build = (parts: AnyLine[], scale = 1): PotLine[] =>
  parts.map((p, i) => line(`l${i}`, p.per100g === null ? null : food({ magnesium: analysed(p.per100g) }), p.grams === null ? null : p.grams * scale, p.eaten, p.kept));

describe('the sums of a pot', () => {
  it('add grams times the value in 100 g times what is eaten and kept', () => {
    expect(magnesium([line('a', food({ magnesium: analysed(50) }), 200, 0.5, 0.8)])).toMatchObject({ known: 40, state: 'complete', unknownShare: 0 });
  });

  it('keep a missing value missing: the sum is partial and says for how much of the weight', () => {
    const total = magnesium([line('a', food({ magnesium: analysed(84) }), 88), line('b', food({}), 12)]);
    expect(total).toMatchObject({ state: 'partial', unknownShare: 0.12 });
    expect(total.known).toBeCloseTo(73.92, 10);
    expect(total.contributions.find((c) => c.lineId === 'b')).toMatchObject({ kind: 'not-measured', amount: null });
  });

  it('are unknown, not nothing, when no line has a value', () => {
    expect(magnesium([line('a', food({}), 100), line('b', null, 50)])).toMatchObject({ state: 'unknown', unknownShare: 1 });
  });

  it('are partial when a line has no weight', () => {
    expect(magnesium([line('a', food({ magnesium: analysed(10) }), 100), line('b', food({ magnesium: analysed(10) }), null)])).toMatchObject({ state: 'partial', known: 10 });
  });

  it('leave out what is not eaten, also when nothing is known of it', () => {
    expect(magnesium([line('a', food({ magnesium: analysed(10) }), 100), line('bay', null, 1, 0)])).toMatchObject({ state: 'complete', known: 10 });
  });

  it('scale with the amounts', () => {
    fc.assert(
      fc.property(fc.array(anyLine, { maxLength: 12 }), fc.double({ min: 0.1, max: 20, noNaN: true }), (parts, k) => {
        const [one, many] = [potTotals(build(parts)), potTotals(build(parts, k))];
        expect(many.weightEatenG).toBeCloseTo(one.weightEatenG * k, 4);
        expect(many.totals.get('magnesium')!.known).toBeCloseTo(one.totals.get('magnesium')!.known * k, 4);
      }),
    );
  });

  it('do not depend on the order of the lines', () => {
    fc.assert(
      fc.property(fc.array(anyLine, { maxLength: 12 }), (parts) => {
        const [forth, back] = [potTotals(build(parts)), potTotals(build(parts).reverse())];
        for (const id of nutrientIds) {
          expect(back.totals.get(id)!.known).toBeCloseTo(forth.totals.get(id)!.known, 6);
          expect(back.totals.get(id)!.state).toBe(forth.totals.get(id)!.state);
        }
      }),
    );
  });

  it('equal the sum of their lines, and the unknown share lies between none and all', () => {
    fc.assert(
      fc.property(fc.array(anyLine, { maxLength: 12 }), (parts) => {
        const total = potTotals(build(parts)).totals.get('magnesium')!;
        expect(total.contributions.reduce((sum, c) => sum + (c.amount ?? 0), 0)).toBeCloseTo(total.known, 6);
        expect(total.unknownShare).toBeGreaterThanOrEqual(0);
        expect(total.unknownShare).toBeLessThanOrEqual(1 + 1e-9);
      }),
    );
  });
});
