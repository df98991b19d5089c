import { dishFromLines } from './steps-from-lines.ts';
import type { CookRequest, Kitchen, KitchenDish, KitchenRules, When } from './kitchen.ts';

/** A kitchen and rules of round numbers for tests; the real ones are in data/parameters/cooking/. */
export const rules: KitchenRules = {
  ovenHeatsPerMinute: 12, ovenCoolsPerMinute: 4, roomCelsius: 20, ovenShareCelsius: 20, timePerDegree: 0.008, leastPiece: 5,
  holdHot: 15, holdCold: 90, holdPoultry: 15, grainsCoolWithin: 60, onTimeTarget: 0.9,
};
export const kitchen: Kitchen = { cooks: 1, rings: 4, shelves: 2, pans: { small: 2, medium: 2, large: 1, wide: 2 }, places: { board: 2, blender: 1, sink: 1, grill: 1, microwave: 1 } };
export const half7 = 19 * 60 + 30;

export function dish(text: string, id = 'd1'): KitchenDish {
  const { dish: read, troubles } = dishFromLines(text, id, rules);
  if (troubles.length > 0) throw new Error(JSON.stringify(troubles));
  return read;
}

export function order(dishes: readonly KitchenDish[], more: { kitchen?: Partial<Kitchen>; when?: When } = {}): CookRequest {
  return { dishes, kitchen: { ...kitchen, ...more.kitchen }, when: more.when ?? { kind: 'serve-at', minute: half7, notBefore: null } };
}

export const roast = `Roast beetroot
scrub the beetroot: 5 min, hands, sink
roast the beetroot: 45-60 min, oven 200, until tender
slice the beetroot: 6 min, hands, board, wait 5 min, within 40 min`;

export const barley = `Barley
chop the onion: 10 min, hands, board, may pause
soften the onion: 7-10 min, ring, medium pan, look every 3 min, catches
simmer the barley: 25-35 min, ring, medium pan, look every 8 min, within 3 min`;

export const fish = `Fish in a sauce
hold 5 min
make the sauce: 6 min, stir, ring, small pan
poach the fish: 5-7 min, ring, wide pan, look every 6 min, any time
dress the fish: 2 min, hands, after 1 and 2, within 4 min`;
