import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dishCost, priceOfNutrient, type LineToPrice, type PriceContext } from './price-dish.ts';
import type { PricedFood } from './price-list.ts';

const priced = (entryName: string, more: Partial<Omit<PricedFood, 'row'>> & { price?: number; date?: string; id?: string } = {}): PricedFood => ({
  row: { id: more.id ?? entryName, food: entryName, pack: '500 g', price: more.price ?? 2, shop: 'invented', date: more.date ?? '2026-11-01' },
  entryName, form: more.form ?? 'raw', code: more.code ?? null, grossG: more.grossG ?? 500, edibleG: more.edibleG ?? 500,
});
const line = (lineId: string, entryName: string | null, grams: number | null, form = 'raw'): LineToPrice => ({ lineId, entryName, form, code: null, grams, free: entryName === 'water' });
const context = (list: readonly PricedFood[]): PriceContext => ({ list, today: '2026-11-25', staleDays: 90 });

describe('what a dish costs', () => {
  it('counts the edible part: peel and bone are paid for too', () => {
    const cost = dishCost([line('l1', 'carrot', 400)], 4, context([priced('carrot', { grossG: 500, edibleG: 400, price: 1 })]));
    expect(cost).toMatchObject({ pot: 1, portion: 0.25, missing: 0 });
  });
  it('tells packs, what is paid and what is left in them', () => {
    const { packs } = dishCost([line('l1', 'rice', 300), line('l2', 'rice', 300)], 2, context([priced('rice')]));
    expect(packs[0]).toMatchObject({ packs: 2, paid: 4, usedG: 600, leftG: 400, leftCost: 1.6, lineIds: ['l1', 'l2'] });
  });
  it('leaves a line without a price out of the sum and says so; water costs nothing', () => {
    const cost = dishCost([line('l1', 'kale', 100), line('l2', 'saffron', 1), line('l3', 'water', 900)], 1, context([priced('kale', { price: 5 })]));
    expect(cost).toMatchObject({ pot: 1, missing: 1 });
    expect(cost.lines.map((l) => l.state)).toEqual(['priced', 'no-price', 'free']);
  });
  it('takes a fresh price before a stale one, and tells a stale one that it has to use', () => {
    const [old, fresh] = [priced('kale', { id: 'old', price: 1, date: '2025-01-01' }), priced('kale', { id: 'new', price: 3 })];
    expect(dishCost([line('l1', 'kale', 500)], 1, context([old, fresh])).pot).toBe(3);
    expect(dishCost([line('l1', 'kale', 500)], 1, context([old]))).toMatchObject({ pot: 1, stale: 1 });
  });
  it('takes the cheapest gram of fresh ones, and another form only where its own has no price', () => {
    const list = [priced('peas', { id: 'a', price: 4 }), priced('peas', { id: 'b', price: 2 }), priced('peas', { id: 'c', form: 'frozen', price: 0.5 })];
    expect(dishCost([line('l1', 'peas', 500)], 1, context(list)).pot).toBe(2);
    expect(dishCost([line('l1', 'peas', 500, 'dried')], 1, context(list)).lines[0]).toMatchObject({ state: 'other-form', cost: 0.5 });
  });
  it('never grows when a line is taken away, and grows in step with the grams', () => {
    const grams = fc.integer({ min: 1, max: 5000 });
    fc.assert(fc.property(grams, grams, (a, b) => {
      const list = context([priced('kale', { price: 3 }), priced('rice', { price: 2 })]);
      const both = dishCost([line('l1', 'kale', a), line('l2', 'rice', b)], 1, list).pot;
      expect(both).toBeGreaterThanOrEqual(dishCost([line('l1', 'kale', a)], 1, list).pot);
      expect(dishCost([line('l1', 'kale', a * 2), line('l2', 'rice', b * 2)], 1, list).pot).toBeCloseTo(both * 2, 9);
    }));
  });
  it('gives the price of 100 mg of a nutrient: 2.00 for 500 g at 80 mg in 100 g is 0.50', () => {
    expect(priceOfNutrient(priced('kale'), 80, 100)).toBeCloseTo(0.5);
    expect(priceOfNutrient(priced('kale'), 0, 100)).toBeNull();
    expect(priceOfNutrient(priced('kale'), null, 100)).toBeNull();
  });
});
