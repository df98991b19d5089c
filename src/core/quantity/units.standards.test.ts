import { describe, expect, it } from 'vitest';
import { testVocabulary } from '../../../tests/reader-vocabulary.ts';
import type { MeasureSystem } from './units.ts';

const { units } = testVocabulary;
const size = (id: string, measures: MeasureSystem): number => units.size(id, measures)!.value;

describe('unit sizes against published standards', () => {
  // NIST Special Publication 811 (2008), Appendix B.8, factors to litres and grams; the same figures stand in NIST Handbook 44, Appendix C.
  it.each([
    ['gallon', 3785.412], ['quart', 946.3529], ['pint', 473.1765], ['cup', 236.5882], ['gill', 118.2941], ['fl-oz', 29.57353], ['tbsp', 14.78676], ['tsp', 4.928922],
  ] as const)('US customary %s is %f ml (NIST SP 811, B.8)', (id, ml) => {
    expect(size(id, 'us') / ml).toBeCloseTo(1, 6);
  });

  it.each([['oz', 28.34952], ['lb', 453.5924]] as const)('avoirdupois %s is %f g (NIST SP 811, B.8)', (id, g) => {
    expect(size(id, 'us') / g).toBeCloseTo(1, 6);
  });

  it('an inch is 2.54 cm exactly (NIST SP 811, B.8)', () => expect(size('inch', 'us')).toBe(2.54));

  // Code of Federal Regulations, Title 21, section 101.9(b)(5)(viii).
  it.each([['tsp', 5], ['tbsp', 15], ['cup', 240], ['fl-oz', 30], ['oz', 28]] as const)('a %s on a US food label is %i (21 CFR 101.9(b)(5)(viii))', (id, value) => {
    expect(size(id, 'us-label')).toBe(value);
  });

  // Weights and Measures Act 1985 (UK), Schedule 1: pint 0.568 261 25 cubic decimetre; gallon 4.546 09 cubic decimetres; pound 0.453 592 37 kilogram; ounce 1/16 pound.
  it.each([['pint', 568.26125], ['gallon', 4546.09], ['lb', 453.59237], ['oz', 453.59237 / 16], ['quart', 2 * 568.26125], ['gill', 568.26125 / 4], ['fl-oz', 568.26125 / 20], ['stone', 14 * 453.59237]] as const)(
    'a UK %s is %f (Weights and Measures Act 1985, Schedule 1)',
    (id, value) => expect(size(id, 'uk')).toBeCloseTo(value, 8),
  );

  // New South Wales Ministry of Health, conversion chart: metric cup and spoon sets approved by the Standards Association of Australia.
  it.each([['tsp', 5], ['tbsp', 20], ['cup', 250]] as const)('an Australian %s is %i ml (NSW Health conversion chart)', (id, ml) => {
    expect(size(id, 'au')).toBe(ml);
  });

  it('the SI units are powers of ten of gram, millilitre and centimetre (SI Brochure, 9th edition, tables 7 and 8)', () => {
    expect(['g', 'kg', 'mg', 'ml', 'cl', 'dl', 'l', 'cm', 'mm'].map((id) => size(id, 'metric'))).toEqual([1, 1000, 0.001, 1, 10, 100, 1000, 1, 0.1]);
  });
});
