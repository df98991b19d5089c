import { isNutrientId, type NutrientId } from '../foods/index.ts';
import type { Interval } from '../quantity/index.ts';
import type { Basis } from './condition.ts';
import type { Plate, PlateAmount } from './plate.ts';

/** An amount on a basis. `atLeast`: part is missing, so the true amount may be any amount above `low`. */
export interface BasisAmount {
  readonly range: Interval;
  readonly atLeast: boolean;
}

const energyFactors: Readonly<Partial<Record<NutrientId, number>>> = { protein: 4, carbohydrate: 4, fat: 9, saturates: 9, monounsaturates: 9, polyunsaturates: 9, 'trans-fat': 9 };

const missing: PlateAmount = { state: 'unknown', portion: null };

/** Nutrients added up in one portion; null when any of them is wholly unknown. */
export function inPortion(plate: Plate, nutrients: readonly NutrientId[]): BasisAmount | null {
  let sum: BasisAmount = { range: { low: 0, value: 0, high: 0 }, atLeast: false };
  for (const nutrient of nutrients) {
    const amount = plate.amounts[nutrient] ?? missing;
    if (amount.portion === null || amount.state === 'unknown') return null;
    const { low, value, high } = amount.portion;
    sum = { range: { low: sum.range.low + low, value: sum.range.value + value, high: sum.range.high + high }, atLeast: sum.atLeast || amount.state === 'partial' };
  }
  return sum;
}

/**
 * The quotient of two ranges. The spreads of top and bottom are taken as independent and added in
 * squares on the ratio scale, so an 8-in-10 range stays one (the usual rule for quotients of
 * uncertain amounts: JCGM 100:2008, 5.1.6). A bottom of zero gives null.
 */
function quotient(top: Interval, bottom: Interval, factor: number): Interval | null {
  if (!(bottom.value > 0)) return null;
  const value = (top.value / bottom.value) * factor;
  const spread = (part: number, whole: number): number => (whole > 0 && part > 0 ? Math.log(part / whole) : part <= 0 && whole > 0 ? -Infinity : 0);
  const down = Math.hypot(spread(top.low, top.value), spread(bottom.high, bottom.value));
  const up = Math.hypot(spread(top.high, top.value), spread(bottom.low, bottom.value));
  if (top.value === 0) return { low: 0, value: 0, high: (top.high / bottom.value) * factor };
  return { low: value * Math.exp(-down), value, high: value * Math.exp(up) };
}

function divided(top: BasisAmount, bottom: Interval, factor: number): BasisAmount | null {
  const range = quotient(top.range, bottom, factor);
  return range === null ? null : { range, atLeast: top.atLeast };
}

function shareOfEnergy(plate: Plate, nutrients: readonly NutrientId[]): BasisAmount | null {
  const kcal = inPortion(plate, ['energy']);
  if (kcal === null || kcal.atLeast) return null;
  let sum: BasisAmount = { range: { low: 0, value: 0, high: 0 }, atLeast: false };
  for (const nutrient of nutrients) {
    const amount = inPortion(plate, [nutrient]);
    const factor = energyFactors[nutrient];
    if (amount === null || factor === undefined) return null;
    sum = { range: { low: sum.range.low + amount.range.low * factor, value: sum.range.value + amount.range.value * factor, high: sum.range.high + amount.range.high * factor }, atLeast: sum.atLeast || amount.atLeast };
  }
  return divided(sum, kcal.range, 1);
}

function shareOfFattyAcids(plate: Plate, nutrients: readonly NutrientId[]): BasisAmount | null {
  const whole = inPortion(plate, ['saturates', 'monounsaturates', 'polyunsaturates']);
  const part = inPortion(plate, nutrients);
  return whole === null || part === null || whole.atLeast ? null : divided(part, whole.range, 1);
}

/** What the dish holds of some nutrients on a basis, or null when it cannot be known. Trans fat that nobody measured makes a sum unknown, never smaller. */
export function onBasis(plate: Plate, nutrients: readonly NutrientId[], per: Basis): BasisAmount | null {
  if (per === 'energy') return shareOfEnergy(plate, nutrients);
  if (per === 'fatty-acids') return shareOfFattyAcids(plate, nutrients);
  const amount = inPortion(plate, nutrients);
  if (amount === null) return null;
  switch (per) {
    case 'portion':
      return amount;
    case '100g':
      return divided(amount, plate.portionG, 100);
    case '50g':
      return divided(amount, plate.portionG, 50);
    case 'racc':
      return divided(amount, plate.portionG, plate.raccG);
    case '100ml':
      return divided(amount, plate.portionG, 100 * plate.gramsPerMl);
    case '100kcal': {
      const kcal = inPortion(plate, ['energy']);
      return kcal === null || kcal.atLeast ? null : divided(amount, kcal.range, 100);
    }
  }
}

/** The nutrients behind a claim's subject: the groups of fats are sums. */
export function nutrientsOf(subject: string): readonly NutrientId[] {
  if (subject === 'omega-3') return ['alpha-linolenic', 'epa-dha'];
  if (subject === 'unsaturated') return ['monounsaturates', 'polyunsaturates'];
  return isNutrientId(subject) ? [subject] : [];
}
