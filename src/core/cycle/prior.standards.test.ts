import { describe, expect, it } from 'vitest';
import { compileCycleModel } from '../../../scripts/tables/cycle.ts';
import { knownSources } from '../../../scripts/tables/known-sources.ts';
import { buildCycleModel, chanceBetween, chanceOf, deviationOf, lengthGroup, meanOf, nextLength, nextOvulationDay, posterior, quantileOf, spreadFactor } from './index.ts';

const model = buildCycleModel(compileCycleModel('data', knownSources('data')));
const population = (age: number | null = null) => posterior(model, { cycles: [], age });

describe('the population of the model, before any cycle of hers', () => {
  const length = nextLength(population());
  const ovulation = nextOvulationDay(population());

  // Bull and others 2019, npj Digital Medicine 2:83, abstract: 612,613 cycles, mean length 29.3 d,
  // follicular 16.9 d (95 %: 10 to 30), luteal 12.4 d (7 to 17).
  it('has the mean length, follicular and luteal phase of Bull 2019', () => {
    expect(meanOf(length)).toBeCloseTo(29.3, 0);
    expect(Math.abs(meanOf(length) - 29.3)).toBeLessThan(0.4);
    expect(Math.abs(meanOf(ovulation) - 16.9)).toBeLessThan(0.5);
    expect(Math.abs(meanOf(length) - meanOf(ovulation) - 12.4)).toBeLessThan(0.5);
  });

  it('spreads the days up to ovulation nearly as wide as Bull 2019 (95 %: 10 to 30)', () => {
    expect(Math.abs(quantileOf(ovulation, 0.025) - 10)).toBeLessThan(1);
    // The right tail of an app's users runs a little further than ours.
    expect(quantileOf(ovulation, 0.975)).toBeGreaterThan(25);
    expect(quantileOf(ovulation, 0.975)).toBeLessThan(31);
  });

  // Bull 2019, table by cycle length (read in a secondary page): follicular 12.4 at 21 to 24 d,
  // 15.4 (luteal 12.6) at 28 d, 19.5 at 31 to 35 d, 26.8 at 36 to 50 d. Interval: 1 d, in the
  // long group 1.5 d, which holds few cycles.
  it.each([
    [21, 24, 12.4, 1],
    [28, 28, 15.4, 1],
    [31, 35, 19.5, 1],
    [36, 50, 26.8, 1.6],
  ])('gives cycles of %d to %d days a follicular phase of %d days, as Bull 2019', (low, high, published, within) => {
    expect(Math.abs(lengthGroup(population(), low, high).follicular - published)).toBeLessThan(within);
  });

  it('gives 28-day cycles a luteal phase of 12.6 days, as Bull 2019', () => {
    expect(Math.abs(lengthGroup(population(), 28, 28).luteal - 12.6)).toBeLessThan(0.4);
  });

  it('holds about 91 % of cycles in 21 to 35 days and 13 % on exactly 28, as Bull 2019', () => {
    expect(Math.abs(chanceBetween(length, 21, 35) - 0.91)).toBeLessThan(0.02);
    expect(Math.abs(chanceOf(length, 28) - 0.13)).toBeLessThan(0.02);
  });

  // Fehring, Schneider and Raviele 2006, JOGNN 35:376: mean 28.9, SD 3.4, 95 % in 22 to 36.
  it('does not stray far from Fehring 2006 (28.9 d; 95 % in 22 to 36)', () => {
    expect(Math.abs(meanOf(length) - 28.9)).toBeLessThan(0.8);
    expect(chanceBetween(length, 22, 36)).toBeGreaterThan(0.89);
    expect(chanceBetween(length, 22, 36)).toBeLessThan(0.96);
  });

  // Najmabadi and others 2020: cycle median 29, SD 6.7; ours lies between that and Fehring's 3.4.
  it('has the median of Najmabadi 2020 and a deviation between the cohorts', () => {
    expect(Math.round(quantileOf(length, 0.5))).toBe(29);
    expect(deviationOf(length)).toBeGreaterThan(3.4);
    expect(deviationOf(length)).toBeLessThan(6.7);
  });

  // Bull 2019: −0.18 d a year of age from 25 to 45, all of it before ovulation (−0.19 d).
  it('shortens by 0.18 days a year from 25 to 45, before ovulation', () => {
    const drop = meanOf(nextLength(population(25))) - meanOf(nextLength(population(45)));
    expect(Math.abs(drop / 20 - 0.18)).toBeLessThan(0.05);
    const before = meanOf(nextOvulationDay(population(25))) - meanOf(nextOvulationDay(population(45)));
    expect(before / drop).toBeGreaterThan(0.85);
  });

  // Li H and others 2023: variability least at 35 to 39; +46 % under 20, +45 % at 45 to 49, +200 % over 50.
  it('varies least at 35 to 39 and about half as much again at both ends', () => {
    const least = spreadFactor(model, 37);
    for (const age of [15, 20, 25, 30, 33, 42, 47, 52]) expect(spreadFactor(model, age)).toBeGreaterThan(least);
    expect(spreadFactor(model, 18) / least).toBeCloseTo(1.46, 1);
    expect(spreadFactor(model, 47) / least).toBeCloseTo(1.45, 1);
    expect(spreadFactor(model, 52) / least).toBeCloseTo(3, 0);
  });
});
