import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactly, type Interval } from '../quantity/index.ts';
import type { Food } from '../foods/index.ts';
import { around, beef, cookedTablesOfTest as tables, foodOf, lineOf, recipeOf, rice, spinach, stock } from './cooked.fixture.ts';
import { cookDish, type DishToCook } from './cooked-dish.ts';
import { deviationOfRange } from './cooked-line.ts';
import { portionInterval, portionIntervalByDraws, type UncertainPart } from './portion-interval.ts';

const entry = (lineId: string, food: Food | null, grams: Interval | null, eaten = 1) => ({ lineId, food, grams, eaten: exactly(eaten) });
const soup = (minutes: number, lid: boolean): DishToCook => ({
  recipe: recipeOf([lineOf('l1', 'spinach'), lineOf('l2', 'stock')], [{ verb: 'simmer', method: 'simmered', minutes, lid, lines: ['l1', 'l2'], inPot: ['l1', 'l2'] }]),
  lines: [entry('l1', spinach, exactly(300)), entry('l2', stock, exactly(700))],
  panWidthCm: 20,
});

describe('the weight of the cooked dish', () => {
  it('of a pot with its liquid is what went in less the steam: width, minutes and rate', () => {
    const { pot } = cookDish(soup(20, false), tables);
    const steam = 0.02 * Math.PI * 100 * 20;
    expect(pot.evaporatedGrams.value).toBeCloseTo(steam, 9);
    expect(pot.cookedGrams.value).toBeCloseTo(1000 - steam, 9);
    expect(pot.from).toBe('estimated');
  });
  it('loses a tenth of the steam under the lid', () => {
    expect(cookDish(soup(20, true), tables).pot.evaporatedGrams.value).toBeCloseTo(0.1 * 0.02 * Math.PI * 100 * 20, 9);
  });
  it('never loses more water than its bound, and says that it met it', () => {
    const { pot } = cookDish(soup(5000, false), tables);
    expect(pot.boiledNearlyDry).toBe(true);
    expect(pot.evaporatedGrams.value).toBeCloseTo(0.85 * (300 * 0.9 + 700 * 0.98), 9);
  });
  it('is by its own yield for what is drained, fried or takes its water up', () => {
    const dish = cookDish({
      recipe: recipeOf([lineOf('l1', 'spinach'), lineOf('l2', 'rice'), lineOf('l3', 'beef')], [
        { method: 'boiled-drained', minutes: 5, lines: ['l1'] },
        { method: 'boiled-kept', minutes: 12, lines: ['l2'] },
        { method: 'fried', minutes: 8, lines: ['l3'] },
      ]),
      lines: [entry('l1', spinach, exactly(100)), entry('l2', rice, exactly(100)), entry('l3', beef, exactly(100))],
    }, tables);
    expect(dish.pot.lines.map((line) => line.gramsOut?.value)).toEqual([90, 280, 75]);
    expect(dish.pot.cookedGrams.value).toBeCloseTo(445, 9);
  });
  it('lets dried lentils take up water that no line lists, and none beyond the pot where one does', () => {
    const lentils = foodOf('Lentils, pink or red, raw', 'Legumes', { water: 8, protein: 24 });
    const dal = (lines: DishToCook['lines']): number => cookDish({ recipe: recipeOf([lineOf('l1', 'lentils'), lineOf('l2', 'stock')], [{ method: 'simmered', minutes: 20, lid: true, lines: lines.map((l) => l.lineId), inPot: lines.map((l) => l.lineId) }]), lines, panWidthCm: 20 }, tables).pot.cookedGrams.value;
    expect(dal([entry('l1', lentils, exactly(200))])).toBeCloseTo(480, 9);
    expect(dal([entry('l1', lentils, exactly(200)), entry('l2', stock, exactly(800))])).toBeCloseTo(1000 - 0.1 * 0.02 * Math.PI * 100 * 20, 9);
  });
  it('is the measured one where she weighed it, whatever the estimate', () => {
    const { pot } = cookDish({ ...soup(20, false), measuredGrams: 800 }, tables);
    expect(pot).toMatchObject({ from: 'measured', cookedGrams: { low: 800, value: 800, high: 800 } });
    expect(pot.estimatedGrams.value).toBeGreaterThan(800);
  });
  it('takes a measured weight of nothing for not weighed', () => {
    expect(cookDish({ ...soup(20, false), measuredGrams: 0 }, tables).pot.from).toBe('estimated');
  });
  it('moves the yields of lines that cook on their own when the whole is weighed', () => {
    const recipe = recipeOf([lineOf('l1', 'beef')], [{ method: 'fried', minutes: 8, lines: ['l1'] }]);
    const dish = cookDish({ recipe, lines: [entry('l1', beef, exactly(200))], measuredGrams: 130 }, tables);
    expect(dish.lines.get('l1')?.weightYield).toMatchObject({ value: 0.65, source: 'measured' });
    expect(dish.pot.cookedGrams.value).toBe(130);
  });
  it('counts what has a weight and no food, leaves out what is not eaten, and does not need a single known line', () => {
    const recipe = recipeOf([lineOf('l1', 'mystery'), lineOf('l2', 'stock')], []);
    const dish = cookDish({ recipe, lines: [entry('l1', null, exactly(50)), entry('l2', stock, exactly(1000), 0)] }, tables);
    expect(dish.pot.cookedGrams.value).toBe(50);
    expect(cookDish({ recipe: recipeOf([], []), lines: [] }, tables).pot.cookedGrams.value).toBe(0);
  });
});

describe('a cooked line', () => {
  it('has no value for a nutrient that the table does not know: missing is not zero', () => {
    const dish = cookDish(soup(20, false), tables);
    expect(dish.lines.get('l1')?.values.has('selenium')).toBe(false);
    expect(dish.kept('l1', 'selenium')).toEqual({ share: { low: 1, value: 1, high: 1 }, reference: null });
  });
  it('takes from a line that was boiled first and fried after what each of the two takes', () => {
    const recipe = recipeOf([lineOf('l1', 'spinach')], [
      { verb: 'blanch', method: 'blanched', minutes: 2, lines: ['l1'] },
      { verb: 'simmer', method: 'simmered', minutes: 10, inPot: ['l1'] },
    ]);
    const kept = cookDish({ recipe, lines: [entry('l1', spinach, exactly(100))] }, tables).lines.get('l1')!.values.get('iron')!.kept.share.value;
    expect(kept).toBeCloseTo(0.9 * 1, 12);
  });
  it('gives the same digits every time', () => {
    expect(JSON.stringify(cookDish(soup(20, false), tables).pot)).toBe(JSON.stringify(cookDish(soup(20, false), tables).pot));
  });
});

const part = (lineId: string, amount: number, weight: number, others = { composition: 0.1, factor: 0.1 }): UncertainPart => ({ lineId, amount, deviation: { weight, ...others } });

describe('the 80 % range of a portion', () => {
  it('of one doubt is the lognormal range of that doubt', () => {
    const { interval } = portionInterval([part('a', 40, 0.3, { composition: 0, factor: 0 })], { share: 0.25, deviation: 0 });
    expect(interval.value).toBe(10);
    expect(interval.high).toBeCloseTo(10 * Math.exp(1.2816 * 0.3), 9);
    expect(interval.low).toBeCloseTo(10 / Math.exp(1.2816 * 0.3), 9);
  });
  it('ranks what it comes from: weigh the handful and most of it goes', () => {
    const { doubts } = portionInterval([part('barley', 60, 0.4), part('carrot', 20, 0.05)], { share: 0.25, deviation: 0 });
    expect(doubts[0]).toMatchObject({ kind: 'weight', lineId: 'barley' });
    expect(doubts[0]!.widthIfKnown).toBeLessThan(0.5);
    expect(doubts.reduce((sum, doubt) => sum + doubt.share, 0)).toBeCloseTo(1, 12);
  });
  it('is nothing wide for a sum of nothing', () => {
    expect(portionInterval([], { share: 0.25, deviation: 0.2 })).toEqual({ interval: { low: 0, value: 0, high: 0 }, doubts: [] });
  });
  it('agrees with drawing, whose same seed repeats exactly', () => {
    const parts = [part('a', 60, 0.25), part('b', 30, 0.1, { composition: 0.2, factor: 0.15 }), part('c', 10, 0.4)];
    const portion = { share: 0.25, deviation: 0.08 };
    const closed = portionInterval(parts, portion).interval;
    const drawn = portionIntervalByDraws(parts, portion, { seed: 7, draws: 20_000 });
    expect(Math.abs(drawn.low / closed.low - 1)).toBeLessThan(0.03);
    expect(Math.abs(drawn.high / closed.high - 1)).toBeLessThan(0.03);
    expect(portionIntervalByDraws(parts, portion, { seed: 7, draws: 500 })).toEqual(portionIntervalByDraws(parts, portion, { seed: 7, draws: 500 }));
    expect(portionIntervalByDraws(parts, portion, { seed: 8, draws: 500 })).not.toEqual(portionIntervalByDraws(parts, portion, { seed: 7, draws: 500 }));
  });
  it('holds its value, and grows with every doubt', () => {
    const deviation = fc.double({ min: 0, max: 0.6, noNaN: true });
    const property = fc.property(fc.array(fc.record({ amount: fc.double({ min: 0.01, max: 1000, noNaN: true }), w: deviation, c: deviation, f: deviation }), { minLength: 1, maxLength: 6 }), deviation, (rows, more) => {
      const parts = rows.map(({ amount, w, c, f }, i) => part(`l${i}`, amount, w, { composition: c, factor: f }));
      const { interval } = portionInterval(parts, { share: 0.5, deviation: 0 });
      const wider = portionInterval(parts, { share: 0.5, deviation: more }).interval;
      expect(interval.low).toBeLessThanOrEqual(interval.value);
      expect(interval.value).toBeLessThanOrEqual(interval.high);
      expect(wider.high).toBeGreaterThanOrEqual(interval.high);
    });
    fc.assert(property);
  });
  it('reads the deviation of a range that 8 in 10 fall into', () => {
    expect(deviationOfRange({ low: Math.exp(-1.2816 * 0.2), value: 1, high: Math.exp(1.2816 * 0.2) })).toBeCloseTo(0.2, 9);
    expect(deviationOfRange(exactly(5))).toBe(0);
    expect(deviationOfRange(around(0, 0.1))).toBe(0);
  });
});
