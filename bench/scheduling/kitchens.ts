import { dishFromLines, type CookRequest, type Kitchen, type KitchenDish, type KitchenRules } from '../../src/core/cooking/index.ts';
import { seededRandom } from '../../src/core/quantity/index.ts';

/** Three invented dishes of `steps` steps in all, as a cook would have them: cutting, pans on rings, an oven dish, sauces that must follow at once. */
export function inventedDinner(seed: number, steps: number, base: { rules: KitchenRules; kitchen: Kitchen }): CookRequest {
  const random = seededRandom(seed);
  const pick = (low: number, high: number): number => low + Math.floor(random.uniform() * (high - low + 1));
  const chance = (share: number): boolean => random.uniform() < share;
  const dishes: KitchenDish[] = [];
  const pans = ['small', 'medium', 'wide', 'large'];
  for (let d = 0; d < 3; d += 1) {
    const count = Math.floor(steps / 3) + (d < steps % 3 ? 1 : 0);
    const lines: string[] = [`Dish ${d + 1}`, `hold ${pick(10, 25)} min`];
    const ends: number[] = [];
    let s = 0;
    // Strands that come together on the plate: cut, then the pan or the oven, then perhaps a rest.
    for (let strand = 0; s < count - 1; strand += 1) {
      const left = count - 1 - s;
      const add = (line: string): void => {
        s += 1;
        lines.push(`${line}`);
      };
      add(`cut ${d}${s}: ${pick(2, 5)}-${pick(6, 10)} min, hands, board, may pause, any time`);
      if (left >= 2 && strand === 0 && chance(0.6)) add(`roast ${d}${s}: ${pick(20, 35)}-${pick(36, 50)} min, oven ${chance(0.5) ? 180 : 200}, look every 15 min`);
      else {
        const pan = pans[strand % 4]!;
        for (let move = 0; move < pick(1, 3) && s < count - 1; move += 1) {
          const follow = move === 0 ? '' : `, within ${pick(3, 8)} min`;
          add(chance(0.35) ? `stir ${d}${s}: ${pick(2, 5)} min, stir, ring, ${pan} pan${follow}` : `simmer ${d}${s}: ${pick(5, 9)}-${pick(10, 25)} min, ring, ${pan} pan, look every ${pick(5, 8)} min${follow}`);
        }
      }
      if (s < count - 1 && chance(0.3)) add(`rest ${d}${s}: ${pick(2, 8)} min, alone`);
      ends.push(s);
    }
    lines.push(`plate ${d}: ${pick(2, 4)} min, hands, after ${ends.join(', ')}, within ${pick(15, 40)} min`);
    const read = dishFromLines(lines.join('\n'), `d${d + 1}`, base.rules);
    if (read.troubles.length > 0) throw new Error(JSON.stringify(read.troubles));
    dishes.push(read.dish);
  }
  const kitchen = { ...base.kitchen, rings: pick(3, 4), cooks: 1, shelves: 3, pans: { small: 3, medium: 3, wide: 3, large: 3 } };
  return { dishes, kitchen, when: { kind: 'serve-at', minute: 19 * 60 + 30, notBefore: null } };
}
