import type { CookingMethod } from '../core/dish/index.ts';

const words: Readonly<Record<CookingMethod, string>> = {
  raw: 'not cooked',
  'boiled-drained': 'boiled, water poured away',
  'boiled-kept': 'boiled, water kept',
  simmered: 'simmered in the pot',
  steamed: 'steamed',
  stewed: 'stewed',
  poached: 'poached',
  blanched: 'blanched',
  roasted: 'roasted',
  baked: 'baked',
  grilled: 'grilled',
  'stir-fried': 'stir-fried',
  fried: 'fried in the pan',
  'deep-fried': 'deep-fried',
  toasted: 'toasted',
  microwaved: 'cooked in the microwave',
  'pressure-cooked': 'cooked under pressure',
  reheated: 'reheated',
  'kept-hot': 'kept hot',
  soaked: 'soaked',
};

/** A cooking method in words. */
export function cookingMethodText(method: CookingMethod): string {
  return words[method];
}
