import { describe, expect, it } from 'vitest';
import { foods, weighText } from './lines.ts';

/**
 * Published household weights: USDA National Nutrient Database for Standard Reference, Release 28
 * (2015), ABBREV file, GmWt_1 or GmWt_2 of the food number named. US customary cups and spoons.
 */
const published: [line: string, number: string, text: string, grams: number][] = [
  ['1 cup chopped kale', '11233', '1 cup, 1" pieces, loosely packed', 16],
  ['1 cup chopped onion', '11282', '1 cup, chopped', 160],
  ['1 cup sliced onion', '11282', '1 cup, sliced', 115],
  ['1 cup chopped carrots', '11124', '1 cup, chopped', 128],
  ['1 cup grated carrot', '11124', '1 cup, grated', 110],
  ['1 cup cooked brown rice', '20037', '1 cup', 202],
  ['1 cup plain flour', '20481', '1 cup', 125],
  ['1 cup wholemeal flour', '20080', '1 cup', 120],
  ['1 cup rolled oats', '08120', '1 cup', 81],
  ['1 cup whole milk', '01077', '1 cup', 244],
  ['1 tbsp olive oil', '04053', '1 tablespoon', 13.5],
  ['2 tablespoons honey', '19296', '1 tbsp', 42],
  ['1 tsp granulated sugar', '19335', '1 tsp', 4.2],
  ['1 tsp salt', '02047', '1 tsp', 6],
  ['1 cup raspberries', '09302', '1 cup', 123],
  ['1 cup blueberries', '09050', '1 cup', 148],
  ['1 cup halved strawberries', '09316', '1 cup,  halves', 152],
  ['1 cup mashed banana', '09040', '1 cup, mashed', 225],
  ['1 cup sliced banana', '09040', '1 cup, sliced', 150],
  ['1 cup whole almonds', '12061', '1 cup, whole', 143],
  ['1 cup chopped walnuts', '12155', '1 cup, chopped', 117],
  ['1 cup cooked lentils', '16070', '1 cup', 198],
  ['1 cup cooked chickpeas', '16057', '1 cup', 164],
  ['1 cup spinach', '11457', '1 cup', 30],
  ['1 cup quinoa', '20035', '1 cup', 170],
  ['1 cup chopped broccoli', '11090', '1 cup, chopped', 91],
  ['1 cup sliced mushrooms', '11260', '1 cup, pieces or slices', 70],
  ['1 cup chopped celery', '11143', '1 cup, chopped', 101],
  ['1 cup shredded cabbage', '11109', '1 cup, shredded', 70],
  ['1 cup lemon juice', '09152', '1 cup', 244],
  ['1 cup chopped tomatoes', '11529', '1 cup, chopped or sliced', 180],
  ['1 tbsp tahini', '12166', '1 tbsp', 15],
];

describe('a cup or spoon by US measure', () => {
  it('weighs what SR28 prints for it, within 2 %', () => {
    for (const [text, number, household, grams] of published) {
      const [line] = weighText(text, { measures: 'us', servings: null });
      const value = line?.weighing.grams?.value ?? NaN;
      expect(Math.abs(value / grams - 1), `${text}: ${value} g, SR28 ${number} ${household} ${grams} g`).toBeLessThan(0.02);
    }
  });

  it('is checked against figures that stand in the table', () => {
    for (const [text, number, household, grams] of published) {
      const measure = foods.get(`sr28:${number}`).household.find((h) => h.text === household);
      expect(measure, text).toBeDefined();
      // The honey line asks for two spoons.
      expect(grams / (measure?.grams ?? NaN), text).toBeCloseTo(text.startsWith('2') ? 2 : 1, 5);
    }
  });
});

describe('what is thrown away', () => {
  it('is the share that SR28 prints (field Refuse_Pct)', () => {
    const table: [string, string, number][] = [['100 g onions', '11282', 10], ['100 g carrots', '11124', 11], ['100 g bananas', '09040', 36], ['100 g celery', '11143', 11], ['100 g eggs', '01123', 12]];
    for (const [text, number, percent] of table) {
      expect(foods.get(`sr28:${number}`).refusePercent, number).toBe(percent);
      const [line] = weighText(text, { measures: 'us', servings: null });
      expect(line?.match.code, text).toBe(`sr28:${number}`);
      expect(Math.abs((line?.weighing.grams?.value ?? NaN) - (100 - percent)), text).toBeLessThan(0.01);
    }
  });
});

describe('measures by law', () => {
  it('are the sizes that the law or NIST gives', () => {
    const water = (text: string, measures: 'uk' | 'us' | 'au' | 'us-label'): number => weighText(text, { measures, servings: null })[0]?.weighing.grams?.value ?? NaN;
    const gramsAMl = water('1000 ml water', 'uk') / 1000;
    // NIST SP 811 (2008) B.8: US cup 236.588 ml; 21 CFR 101.9(b)(5)(viii): label cup 240 ml; UK Weights and Measures Act 1985 Sch. 1: pint 568.261 ml.
    expect(water('1 cup water', 'us') / gramsAMl).toBeCloseTo(236.588, 2);
    expect(water('1 cup water', 'us-label') / gramsAMl).toBeCloseTo(240, 2);
    expect(water('1 pint water', 'uk') / gramsAMl).toBeCloseTo(568.261, 2);
    // One pound is 453.59237 g (NIST SP 811 B.8).
    expect(weighText('1 lb butter')[0]?.weighing.grams?.value).toBeCloseTo(453.59237, 4);
  });
});
