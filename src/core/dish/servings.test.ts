import { describe, expect, it } from 'vitest';
import { decideServings } from './servings.ts';

const parameters = { portionEnergyKcal: 500, portionWeightG: 400 };
const pot = { energyKcal: 2100, weightG: 1000 };
const stated = { count: { low: 4, value: 5, high: 6 }, text: 'serves 4 to 6', of: null };

describe('servings', () => {
  it('are hers before the recipe’s, and the recipe’s before a proposal', () => {
    expect(decideServings({ chosen: 3, stated }, pot, parameters)).toMatchObject({ count: 3, basis: 'chosen' });
    expect(decideServings({ chosen: null, stated }, pot, parameters)).toMatchObject({ count: 5, basis: 'stated', range: { low: 4, high: 6 } });
  });

  it('are proposed from energy or weight, whichever asks for more, and never below one', () => {
    expect(decideServings({ chosen: null, stated: null }, pot, parameters)).toMatchObject({ count: 4, basis: 'proposed' });
    expect(decideServings({ chosen: null, stated: null }, { energyKcal: 100, weightG: 2000 }, parameters)).toMatchObject({ count: 5, basis: 'proposed' });
    expect(decideServings({ chosen: null, stated: null }, { energyKcal: 0, weightG: 0 }, parameters)).toMatchObject({ count: 1, basis: 'proposed' });
  });
});
