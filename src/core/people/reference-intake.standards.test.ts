import { describe, expect, it } from 'vitest';
import { readReferenceTables } from '../../adapters/tables/index.ts';
import { authoritiesFor, intakesFor } from './reference-intake.ts';

const { intakes } = readReferenceTables();

describe('reference intakes', () => {
  // Regulation (EU) No 1169/2011, Annex XIII Part A point 1: daily reference intakes for vitamins and minerals (adults).
  it.each([
    ['vitamin-a', 800], ['vitamin-d', 5], ['vitamin-e', 12], ['vitamin-k', 75], ['vitamin-c', 80], ['thiamin', 1.1], ['riboflavin', 1.4], ['niacin', 16], ['vitamin-b6', 1.4],
    ['folate', 200], ['vitamin-b12', 2.5], ['biotin', 50], ['pantothenic-acid', 6], ['potassium', 2000], ['chloride', 800], ['calcium', 800], ['phosphorus', 700], ['magnesium', 375],
    ['iron', 14], ['zinc', 10], ['copper', 1], ['manganese', 2], ['fluoride', 3.5], ['selenium', 55], ['chromium', 40], ['molybdenum', 50], ['iodine', 150],
  ])('give %s as %d on European labels (Annex XIII A)', (nutrient, amount) => {
    expect(intakesFor(intakes, 'adults', 'eu-label').get(nutrient)?.amount).toBe(amount);
  });

  // National Academies, Dietary Reference Intakes: elements table, females (NCBI bookshelf NBK545442, Appendix J, table 3).
  it.each([
    ['women-19-30', 'iron', 18], ['women-31-50', 'iron', 18], ['women-51-70', 'iron', 8], ['women-19-30', 'magnesium', 310], ['women-31-50', 'magnesium', 320], ['pregnant-19-30', 'iron', 27],
    ['women-19-30', 'calcium', 1000], ['women-14-18', 'calcium', 1300], ['women-19-30', 'zinc', 8], ['lactating-19-50', 'zinc', 12], ['women-19-30', 'copper', 0.9], ['women-19-30', 'selenium', 55],
    ['women-19-30', 'iodine', 150], ['pregnant-31-50', 'iodine', 220], ['women-19-30', 'potassium', 2600], ['women-19-30', 'sodium', 1500],
  ])('give %s for %s as %d (NASEM elements table)', (stage, nutrient, amount) => {
    expect(intakesFor(intakes, stage, 'nasem').get(nutrient)?.amount).toBe(amount);
  });

  // EFSA Journal 4485 (2016), vitamin B6: population reference intakes for women, pregnancy, lactation.
  it.each([['women-19-30', 1.6], ['pregnant-19-30', 1.8], ['lactating-19-50', 1.7]])('give vitamin B6 for %s as %d mg (EFSA Journal 4485)', (stage, amount) => {
    expect(intakesFor(intakes, stage, 'efsa').get('vitamin-b6')?.amount).toBe(amount);
  });

  it('refuse a stage that nobody has set figures for', () => {
    expect(() => authoritiesFor(intakes, 'martians')).toThrow(/unknown-life-stage/);
    expect(() => intakesFor(intakes, 'adults', 'nasem')).toThrow(/unknown-life-stage/);
  });
});
