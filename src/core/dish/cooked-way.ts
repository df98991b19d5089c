import type { CookingMethod } from './recipe.ts';

/** What becomes of the liquid that food cooks in: eaten with it, poured away, or there is none. */
export type LiquidFate = 'none' | 'kept' | 'drained';

/** Ways of cooking that the factor tables tell apart. `drained`: the liquid or the drippings are left behind. */
export const cookedWays = ['boiled-drained', 'boiled-kept', 'braised-drained', 'braised-kept', 'steamed', 'roasted', 'grilled', 'fried', 'stir-fried', 'reheated'] as const;
export type CookedWay = (typeof cookedWays)[number];

const ways: Record<CookingMethod, readonly [kept: CookedWay, drained: CookedWay] | null> = {
  raw: null, soaked: null,
  'boiled-drained': ['boiled-drained', 'boiled-drained'], 'boiled-kept': ['boiled-kept', 'boiled-kept'],
  simmered: ['boiled-kept', 'boiled-drained'], stewed: ['braised-kept', 'braised-drained'], poached: ['boiled-kept', 'boiled-drained'],
  blanched: ['boiled-drained', 'boiled-drained'], 'pressure-cooked': ['boiled-kept', 'boiled-drained'],
  steamed: ['steamed', 'steamed'], microwaved: ['steamed', 'steamed'], roasted: ['roasted', 'roasted'], baked: ['roasted', 'roasted'],
  grilled: ['grilled', 'grilled'], toasted: ['grilled', 'grilled'], fried: ['fried', 'fried'], 'deep-fried': ['fried', 'fried'],
  'stir-fried': ['stir-fried', 'stir-fried'], reheated: ['reheated', 'reheated'], 'kept-hot': ['reheated', 'reheated'],
};

/** The way of cooking that the tables know a method by; null for what is not cooked. */
export function cookedWay(method: CookingMethod, liquid: LiquidFate): CookedWay | null {
  const pair = ways[method];
  return pair ? pair[liquid === 'drained' ? 1 : 0] : null;
}

/** Ways for which the raw and cooked pairs of SR28 give evidence, grouped as the fit groups them; null: no pairs. */
export function fittedWay(way: CookedWay, absorbs: boolean): 'wet' | 'braised' | 'steamed' | 'roasted' | 'grilled' | 'fried' | null {
  switch (way) {
    case 'boiled-drained':
      return 'wet';
    case 'boiled-kept':
      // Grains swell in measured water and fruit stews in its juice: there the pairs hold the liquid.
      return absorbs ? 'wet' : null;
    case 'braised-drained':
      return 'braised';
    case 'steamed':
      return 'steamed';
    case 'roasted':
      return 'roasted';
    case 'grilled':
      return 'grilled';
    case 'fried':
    case 'stir-fried':
      return 'fried';
    case 'braised-kept':
    case 'reheated':
      return null;
  }
}
export type FittedWay = NonNullable<ReturnType<typeof fittedWay>>;
