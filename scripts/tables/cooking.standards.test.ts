import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compileCooking } from './cooking.ts';

const { rules, habits, usualKitchen } = compileCooking(join(import.meta.dirname, '..', '..', 'data'));

describe('the parameters of the cook plan', () => {
  // UK Food Standards Agency, Home food fact checker: cool rice as quickly as possible, ideally within one hour.
  it('has cooked grains used or cooling within one hour (Food Standards Agency)', () => {
    expect(rules.grainsCoolWithin).toBeLessThanOrEqual(60);
    expect(habits.grains).toContain('rice');
  });

  it('has every habit in order: shortest, usual, longest', () => {
    for (const habit of [...Object.values(habits.kinds), ...Object.values(habits.verbs)]) {
      expect(habit.minutes[0]).toBeLessThanOrEqual(habit.minutes[1]);
      expect(habit.minutes[1]).toBeLessThanOrEqual(habit.minutes[2]);
    }
  });

  it('knows a kind for every verb that it gives a habit', () => {
    expect(Object.keys(habits.verbs).filter((verb) => habits.verbKinds[verb] === undefined)).toEqual([]);
  });

  it('gives a usual kitchen with at least one of everything', () => {
    expect(Math.min(usualKitchen.cooks, usualKitchen.rings, usualKitchen.shelves, ...Object.values(usualKitchen.pans), ...Object.values(usualKitchen.places))).toBeGreaterThanOrEqual(1);
  });
});
