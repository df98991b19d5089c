import { isKnown, type Food, type NutrientId } from '../foods/index.ts';

/** What makes foods behave alike in a pot, with the span over which they count as different, g in 100 g. */
const features: readonly (readonly [NutrientId, number])[] = [['water', 60], ['fat', 40], ['protein', 25], ['carbohydrate', 60], ['sugars', 40], ['fibre', 15]];

/** A food's make-up, g in 100 g; null where the table does not know. */
export type MakeUp = readonly (number | null)[];

export function makeUp(food: Food): MakeUp {
  return features.map(([id]) => {
    const value = food.value(id);
    return isKnown(value) ? value.per100g : null;
  });
}

/** How alike two foods are when `ratio` grams of the second stand for one of the first, 0 to 1. Features that either table lacks are left out; nothing known gives 0.5. */
export function likeness(a: MakeUp, b: MakeUp, ratio: number): number {
  let apart = 0;
  let known = 0;
  features.forEach(([, span], i) => {
    const [x, y] = [a[i] ?? null, b[i] ?? null];
    if (x === null || y === null) return;
    known++;
    apart += (Math.abs(x - y * Math.min(ratio, 3)) / span) ** 2;
  });
  return known === 0 ? 0.5 : Math.exp(-2 * Math.sqrt(apart / known));
}
