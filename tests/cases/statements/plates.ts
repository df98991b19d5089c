import { exactly, type Interval } from '../../../src/core/quantity/index.ts';
import type { NutrientId } from '../../../src/core/foods/index.ts';
import type { Plate, PlateAmount } from '../../../src/core/statements/index.ts';

/** A plate of 100 g with the amounts given; everything not given is unknown. Invented, for tests. */
export function plateWith(amounts: Partial<Record<NutrientId, number | Interval | PlateAmount>>, change: Partial<Plate> = {}): Plate {
  const held = Object.entries(amounts).map(([id, amount]): [string, PlateAmount] => {
    if (typeof amount === 'number') return [id, { state: 'complete', portion: exactly(amount) }];
    return [id, 'state' in amount ? amount : { state: 'complete', portion: amount }];
  });
  return {
    title: 'An invented test plate', form: 'solid', portionG: exactly(100), gramsPerMl: 1, amounts: Object.fromEntries(held), foods: [],
    singlePortionPack: false, addedSugars: 'unknown', addedSalt: 'unknown', usKind: 'individual-food', raccG: 100, meatOrFish: false, allergens: null,
    ...change,
  };
}
