import { describe, expect, it } from 'vitest';
import { mostlyFrom, portionReading, type Given } from './reading.ts';

const given = (nutrient: Given['nutrient'], referenceShare: number | null, more: Partial<Given> = {}): Given => ({ nutrient, state: 'complete', unknownShare: 0, lineWithoutWeight: false, referenceShare, top: [{ lineId: 'a', share: 1 }], ...more });

describe('the reading of a portion', () => {
  it('tells the largest shares of a day first and leaves small ones out', () => {
    const items = portionReading([given('iron', 0.2), given('magnesium', 0.5), given('zinc', 0.05)], 5, 0.15);
    expect(items.map((i) => i.nutrient)).toEqual(['magnesium', 'iron']);
  });

  it('tells what is most asked for before richer but duller ones', () => {
    const items = portionReading([given('manganese', 2), given('iron', 0.2), given('copper', 1)], 2, 0.15);
    expect(items.map((i) => i.nutrient)).toEqual(['manganese', 'iron']);
  });

  it('does not say “at least” for a gap of less than a hundredth of the weight, and does when a line has no weight', () => {
    const gap = { state: 'partial', unknownShare: 0.004 } as const;
    expect(portionReading([given('iron', 0.4, gap)], 5, 0.15)[0]?.atLeast).toBe(false);
    expect(portionReading([given('iron', 0.4, { ...gap, lineWithoutWeight: true })], 5, 0.15)[0]?.atLeast).toBe(true);
  });

  it('says “at least” for partial sums and is silent where most of the weight is unknown', () => {
    const items = portionReading([given('iron', 0.4, { state: 'partial', unknownShare: 0.2 }), given('zinc', 0.9, { state: 'partial', unknownShare: 0.8 }), given('calcium', null)], 5, 0.15);
    expect(items).toEqual([{ nutrient: 'iron', referenceShare: 0.4, atLeast: true, mostlyFrom: ['a'] }]);
  });

  it('does not tell a part of a sum beside the sum', () => {
    expect(portionReading([given('beta-carotene', 3), given('retinol', 2), given('food-folate', 1)], 5, 0.1)).toEqual([]);
  });

  it('names the lines that together pass a half, three at most', () => {
    expect(mostlyFrom([{ lineId: 'a', share: 0.6 }, { lineId: 'b', share: 0.4 }])).toEqual(['a']);
    expect(mostlyFrom([{ lineId: 'a', share: 0.3 }, { lineId: 'b', share: 0.3 }, { lineId: 'c', share: 0.2 }])).toEqual(['a', 'b']);
    expect(mostlyFrom(['a', 'b', 'c', 'd'].map((lineId) => ({ lineId, share: 0.1 })))).toEqual(['a', 'b', 'c']);
    expect(mostlyFrom([{ lineId: 'a', share: 0 }])).toEqual([]);
  });
});
