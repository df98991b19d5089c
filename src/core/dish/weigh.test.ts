import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FoodMatch } from '../foods/index.ts';
import { exactly } from '../quantity/index.ts';
import type { Amount, IngredientLine } from './recipe.ts';
import { amountOf, bareEntry, lineOf, matchOf, onion, sampleTables } from './weigh.fixture.ts';
import { weighLine, type Weighing } from './weigh.ts';

const settings = { measures: 'uk', servings: 2 } as const;
const weigh = (line: IngredientLine, match: FoodMatch): Weighing => weighLine(line, match, sampleTables, settings);
const grams = (amount: Amount | null, match: FoodMatch, more: Parameters<typeof lineOf>[2] & { text?: string } = {}): number | null => {
  const { text, ...rest } = more;
  return weigh(lineOf(text ?? 'onion', amount, { name: match.entry?.name ?? 'thing', ...rest }), match).grams?.value ?? null;
};

const onions = matchOf(onion);
const beans = matchOf(bareEntry('beans', 'sr28:2', 'canned'));
const oil = matchOf(bareEntry('olive oil', 'sr28:3'));
const salt = matchOf(bareEntry('salt', 'sr28:5'));
const trout = matchOf(bareEntry('trout', 'sr28:6'));
const ginger = matchOf(bareEntry('ginger', 'sr28:7'));
const juice: FoodMatch = { ...matchOf(bareEntry('lemon', 'sr28:4', 'juice')), form: 'juice' };
const water = matchOf(bareEntry('water', 'sr28:8'));

describe('a stated weight', () => {
  it('is as bought, so what is thrown away comes off', () => {
    expect(grams(amountOf(500, 'g'), onions, { text: '500 g onions, peeled and chopped', qualifiers: ['peeled', 'chopped'] })).toBeCloseTo(450);
    expect(grams(amountOf(1, 'kg'), onions, { text: '1 kg onions' })).toBeCloseTo(900);
  });

  it('of the prepared food stays as it is', () => {
    expect(grams(amountOf(500, 'g'), onions, { text: '500 g peeled onions', name: 'onions' })).toBeCloseTo(500);
    expect(grams(amountOf(500, 'g'), trout, { text: '500 g trout, boneless', name: 'trout' })).toBeCloseTo(500);
    expect(grams(amountOf(30, 'g'), onions, { text: '30 g onion leaves', name: 'onion leaves' })).toBeCloseTo(30);
    expect(grams(amountOf(30, 'g'), onions, { text: '30 g onions, leaves and stalks', name: 'onions' })).toBeCloseTo(30);
    expect(grams(amountOf(500, 'g'), onions, { text: '500 g onions, unpeeled', name: 'onions' })).toBeCloseTo(500);
  });

  it('for one is multiplied, for all is not', () => {
    expect(grams(amountOf(2, 'piece', { each: { quantity: exactly(200), unit: 'g' } }), onions, { text: '2 x 200 g onions' })).toBeCloseTo(360);
    expect(grams(amountOf(2, 'piece', { total: { quantity: exactly(300), unit: 'g' } }), onions, { text: '2 onions (300 g in all)' })).toBeCloseTo(270);
  });

  it('of a tin loses its liquid when the table’s food is drained', () => {
    expect(grams(amountOf(2, 'tin', { each: { quantity: exactly(400), unit: 'g' } }), beans, { text: '2 x 400 g tins beans' })).toBeCloseTo(480);
    expect(grams(amountOf(1, 'tin', { each: { quantity: exactly(240), unit: 'g' } }), beans, { text: '1 tin beans (240 g drained weight)' })).toBeCloseTo(240);
    expect(grams(amountOf(1, 'tin', { each: { quantity: exactly(240), unit: 'g' } }), beans, { text: '1 tin beans (240 g drained)' })).toBeCloseTo(240);
    expect(grams(amountOf(1, 'tin'), beans, { text: '1 tin beans' })).toBeCloseTo(240);
  });

  it('of a tin is whole when what it lies in is eaten, drained when the cook drains it', () => {
    const tin = amountOf(1, 'tin', { each: { quantity: exactly(100), unit: 'g' } });
    expect(grams(tin, beans, { text: '100 g tin beans in tomato sauce' })).toBeCloseTo(100);
    const whole = matchOf(bareEntry('white beans', 'sr28:10', 'canned'));
    expect(grams(tin, whole, { text: '100 g tin white beans' })).toBeCloseTo(100);
    expect(grams(tin, whole, { text: '100 g tin white beans, drained', qualifiers: ['drained'] })).toBeCloseTo(60);
  });

  it('of something cooked, tinned or dried has nothing left to throw away', () => {
    const cooked = { ...onions, form: 'cooked' } as const;
    expect(grams(amountOf(200, 'g'), cooked, { text: '200 g cooked onions' })).toBeCloseTo(200);
  });

  it('is sure to 2 %', () => {
    const w = weigh(lineOf('100 g olive oil', amountOf(100, 'g')), oil).grams;
    expect(w?.low).toBeCloseTo(98);
    expect(w?.high).toBeCloseTo(102);
  });
});

describe('a spoon or cup', () => {
  it('weighs by the state of the food', () => {
    expect(grams(amountOf(1, 'cup'), onions, { qualifiers: ['chopped'] })).toBeCloseTo(150);
    expect(grams(amountOf(1, 'cup'), onions, { qualifiers: ['grated'] })).toBeCloseTo(250);
    expect(grams(amountOf(1, 'cup'), onions, { qualifiers: ['diced'] })).toBeCloseTo(150);
  });

  it('weighs by the table’s household weight where the kitchen names are silent', () => {
    expect(grams(amountOf(1, 'tbsp'), oil)).toBeCloseTo((15 * 13.5) / 14.787);
    expect(grams(amountOf(250, 'ml'), water)).toBeCloseTo((250 * 29.6) / 29.574);
  });

  it('weighs by what is usual where nobody gives a weight, and is less sure', () => {
    const leaf = matchOf(bareEntry('bay leaf', 'sr28:9'));
    expect(grams(amountOf(1, 'tsp'), leaf)).toBeCloseTo(2.5);
    expect(weigh(lineOf('x', amountOf(1, 'tsp')), leaf).confidence).toBeLessThan(weigh(lineOf('x', amountOf(1, 'tsp')), salt).confidence);
  });

  it('weighs by the density of the form that is meant, not by that of the usual one', () => {
    const dried = { ...onions, form: 'dried' } as const;
    const w = weigh(lineOf('1 cup dried onion', amountOf(1, 'cup'), { name: 'onion' }), dried);
    expect(w.paths[0]?.at(-1)?.kind).toBe('table-density');
  });

  it('can be heaped, unless it is poured', () => {
    expect(grams(amountOf(1, 'cup', { fill: 'heaped' }), onions, { qualifiers: ['chopped'] })).toBeCloseTo(225);
    expect(grams(amountOf(1, 'tbsp', { fill: 'heaped' }), oil)).toBeCloseTo((1.2 * 15 * 13.5) / 14.787);
  });
});

describe('a number of things', () => {
  it('weighs by the kitchen’s piece of that size, without what is thrown away', () => {
    expect(grams(amountOf(2, null), onions)).toBeCloseTo(270);
    expect(grams(amountOf(1, null, { size: 'large' }), onions)).toBeCloseTo(180);
    expect(grams(amountOf(1, null, { size: 'small' }), onions)).toBeCloseTo(67.5);
    expect(grams(amountOf(1, 'half'), onions)).toBeCloseTo(67.5);
  });

  it('that is small by its name is not made smaller', () => {
    expect(grams(amountOf(2, null, { size: 'small' }), matchOf({ ...onion, name: 'baby onion' }))).toBeCloseTo(270);
  });

  it('weighs by the table’s piece, which has nothing left to throw away', () => {
    const plainOnion = matchOf(bareEntry('onion', 'sr28:1'));
    expect(grams(amountOf(2, null, { size: 'medium' }), plainOnion)).toBeCloseTo(220);
  });

  it('weighs a whole fish as the table gives it', () => {
    expect(grams(amountOf(1, null), matchOf({ ...bareEntry('trout', 'sr28:6'), also: ['fish'] }), { text: '1 trout, filleted', qualifiers: ['filleted'] })).toBeCloseTo(332);
  });

  it('weighs hand measures by the food’s own handful first', () => {
    expect(grams(amountOf(1, 'handful'), onions)).toBeCloseTo(60);
    expect(grams(amountOf(1, 'handful', { fill: 'heaped' }), onions)).toBeCloseTo(72);
    expect(grams(amountOf(1, 'thumb'), ginger)).toBeCloseTo(20);
    expect(grams(amountOf(3, 'cm'), ginger)).toBeCloseTo(15);
    expect(grams(amountOf(1, 'piece', { each: { quantity: exactly(3), unit: 'cm' } }), ginger)).toBeCloseTo(15);
  });

  it('gives juice and zest of fruit', () => {
    expect(grams(amountOf(2, null), juice, { remarks: ['juice-only'] })).toBeCloseTo(90);
    expect(grams(amountOf(1, null), juice, { remarks: ['juice-and-zest'] })).toBeCloseTo(50);
    expect(grams(amountOf(1, null, { size: 'large' }), juice, { remarks: ['juice-only'] })).toBeCloseTo(58.5);
    expect(grams(amountOf(2, 'tbsp'), juice)).toBeCloseTo(30);
    const zest: FoodMatch = { ...matchOf(bareEntry('lemon zest', 'sr28:4', 'peel')), form: 'peel' };
    expect(grams(amountOf(2, null), zest)).toBeCloseTo(10);
  });
});

describe('a line without an amount', () => {
  it('has no weight, which is not nothing', () => {
    const w = weigh(lineOf('onion', null), onions);
    expect(w.grams).toBeNull();
    expect(w.findings.map((f) => f.code)).toEqual(['no-amount']);
    expect(weigh(lineOf('some onion', amountOf(1, 'some', { vague: true })), onions).grams).toBeNull();
  });

  it('gets what is usual for salt, and says so', () => {
    const w = weigh(lineOf('salt, to taste', null, { remarks: ['to-taste'] }), salt);
    expect(w.grams?.value).toBeCloseTo(2);
    expect(w.findings.map((f) => [f.code, f.severity])).toEqual([['usual-amount', 'note']]);
    expect(weighLine(lineOf('salt', null), salt, sampleTables, { measures: 'uk', servings: null }).grams?.value).toBeCloseTo(4);
  });

  it('or with a measure nobody can weigh says which', () => {
    const w = weigh(lineOf('2 bunches of quince', amountOf(2, 'bunch')), matchOf(bareEntry('quince', 'sr28:10')));
    expect(w.grams).toBeNull();
    expect(w.findings.map((f) => f.code)).toEqual(['no-weight']);
  });
});

describe('a weight', () => {
  it('far beyond a plateful is kept and asked about', () => {
    const w = weigh(lineOf('40 onions', amountOf(40, null)), onions);
    expect(w.grams?.value).toBeCloseTo(5400);
    expect(w.findings.map((f) => [f.code, f.severity])).toEqual([['absurd-amount', 'question']]);
    expect(weigh(lineOf('4 onions', amountOf(4, null)), onions).findings).toEqual([]);
    expect(weigh(lineOf('100 g salt', amountOf(100, 'g')), salt).findings.map((f) => f.code)).toEqual(['absurd-amount']);
  });

  it('of several amounts is their sum', () => {
    expect(weigh(lineOf('100 g oil plus 1 tbsp', amountOf(100, 'g'), { more: [amountOf(50, 'g')] }), oil).grams?.value).toBeCloseTo(150);
  });

  it('is the product of its path', () => {
    for (const amount of [amountOf(2, null, { size: 'small' }), amountOf(3, 'cup', { fill: 'scant' }), amountOf(500, 'g'), amountOf(1, 'handful')]) {
      const w = weigh(lineOf('onions', amount), onions);
      expect(w.paths[0]?.reduce((product, step) => product * step.factor, 1)).toBeCloseTo(w.grams?.value ?? NaN);
    }
  });

  it('keeps a range of the amount and widens it by what is unsure', () => {
    const w = weigh(lineOf('2 to 3 onions', amountOf({ low: 2, value: 2.5, high: 3 }, null)), onions).grams;
    expect((w?.high ?? 0) / (w?.value ?? 1)).toBeGreaterThan(1.2);
    expect(w?.low).toBeGreaterThan(0);
  });

  it('grows with the amount, whatever the unit', () => {
    const units = fc.constantFrom(null, 'g', 'kg', 'cup', 'tbsp', 'tsp', 'ml', 'handful', 'piece', 'half', 'pinch', 'sprig');
    fc.assert(
      fc.property(units, fc.double({ min: 0.1, max: 50, noNaN: true }), fc.double({ min: 0.1, max: 20, noNaN: true }), (unit, n, k) => {
        const one = weigh(lineOf('onion', amountOf(n, unit)), onions).grams;
        const many = weigh(lineOf('onion', amountOf(n * k, unit)), onions).grams;
        expect((many?.value ?? NaN) / (one?.value ?? NaN)).toBeCloseTo(k, 6);
        expect(one && one.low > 0 && one.low <= one.value && one.value <= one.high).toBe(true);
      }),
    );
  });

  it('is never made of nonsense', () => {
    const quantity = fc.oneof(fc.constant(0), fc.constant(-3), fc.constant(NaN), fc.constant(Infinity), fc.double());
    fc.assert(
      fc.property(quantity, fc.option(fc.string({ maxLength: 5 })), fc.string({ maxLength: 30 }), (n, unit, text) => {
        const w = weigh(lineOf(text, amountOf(n, unit)), onions);
        expect(w.grams === null || (Number.isFinite(w.grams.value) && w.grams.value > 0)).toBe(true);
      }),
    );
  });
});
