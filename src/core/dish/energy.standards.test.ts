import { describe, expect, it } from 'vitest';
import { readReferenceTables } from '../../adapters/tables/index.ts';
import type { NutrientId } from '../foods/index.ts';
import { declaredEnergy } from './energy.ts';

const { energyFactors } = readReferenceTables();
const energyOf = (grams: Partial<Record<NutrientId, number>>) => declaredEnergy((n) => grams[n] ?? 0, energyFactors);

describe('declared energy', () => {
  // Regulation (EU) No 1169/2011, Annex XIV: conversion factors per gram.
  it.each([
    ['carbohydrate', 17, 4],
    ['protein', 17, 4],
    ['fat', 37, 9],
    ['alcohol', 29, 7],
    ['fibre', 8, 2],
  ] as const)('counts a gram of %s as %d kJ and %d kcal (Annex XIV)', (nutrient, kj, kcal) => {
    expect(energyOf({ [nutrient]: 1 })).toMatchObject({ energyKj: kj, energyKcal: kcal });
  });

  // Annex XIII Part B gives 8,400 kJ / 2,000 kcal for the day beside fat 70 g, carbohydrate 260 g and protein 50 g:
  // by the factors of Annex XIV these come to 1,870 kcal, and 32.5 g of fibre make the rest to within 5 kcal.
  it('makes of the macronutrient reference intakes of Annex XIII B the energy by arithmetic', () => {
    expect(energyOf({ fat: 70, carbohydrate: 260, protein: 50 }).energyKcal).toBe(70 * 9 + 260 * 4 + 50 * 4);
  });

  it('tells a part that is not known from one that is nothing', () => {
    const energy = declaredEnergy((n) => (n === 'fibre' ? null : 1), energyFactors);
    expect(energy.parts.find((p) => p.nutrient === 'fibre')).toMatchObject({ grams: null, energyKcal: 0 });
  });
});
