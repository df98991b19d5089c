import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileCycleModel } from '../../../scripts/tables/cycle.ts';
import { knownSources } from '../../../scripts/tables/known-sources.ts';
import { addDays, day, isoDate } from '../calendar/index.ts';
import { buildCycleModel, dayPhases, drawFutures, forecastCycles, meanOf, medianOf, nextCycle, phases, quantileOf, readSigns, unrecordedInGap, type CycleForecast, type ToldCycle } from './index.ts';

const model = buildCycleModel(compileCycleModel('data', knownSources('data')));
const start = day('2026-03-01');
const told = (lengths: readonly number[]): ToldCycle[] => lengths.map((length) => ({ length, ovulationDay: null, slack: 0 }));
const next = (lengths: readonly number[], age: number | null = null) => nextCycle(model, { cycles: told(lengths), age });
const forecast = (lengths: readonly number[], elapsed = 0, confirmed = true, ahead = 3): CycleForecast => forecastCycles(next(lengths), start, { elapsed, confirmed, signs: null }, ahead);
const width = (f: CycleForecast, k = 0): number => f.starts[k]!.range.high - f.starts[k]!.range.low;

/** Histories of all kinds: steady, irregular, with holes, wild. */
const histories = fc.oneof(
  fc.tuple(fc.integer({ min: 21, max: 40 }), fc.array(fc.integer({ min: -2, max: 2 }), { maxLength: 14 })).map(([m, xs]) => xs.map((x) => m + x)),
  fc.array(fc.integer({ min: 21, max: 45 }), { maxLength: 10 }),
  fc.array(fc.integer({ min: 12, max: 140 }), { maxLength: 8 }),
);

describe('a forecast', () => {
  it('never lies in the past, and a later today never moves it back', () => {
    fc.assert(fc.property(histories, fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 30 }), (lengths, elapsed, later) => {
      const a = forecast(lengths, elapsed, true, 1);
      const b = forecast(lengths, elapsed + later, true, 1);
      for (const [f, gone] of [[a, elapsed], [b, elapsed + later]] as const) {
        expect(f.starts[0]!.chances.first).toBeGreaterThan(start + gone);
        expect(f.starts[0]!.from).toBeGreaterThan(start + gone);
      }
      // Waiting can only push the next start later: in the mean and at every quantile.
      // Cells with a trace of weight are left out, which can move a quantile by some millionths of a day.
      for (const q of [0.1, 0.5, 0.9]) expect(quantileOf(b.starts[0]!.chances, q)).toBeGreaterThanOrEqual(quantileOf(a.starts[0]!.chances, q) - 1e-3);
    }), { numRuns: 60 });
  });

  it('is never widened by a cycle that equals it', () => {
    fc.assert(fc.property(histories, (lengths) => {
      const before = next(lengths);
      const after = next([...lengths, medianOf(before.length)]);
      expect(after.range.high - after.range.low).toBeLessThanOrEqual(before.range.high - before.range.low + 1e-9);
      expect(width(forecast([...lengths, medianOf(before.length)], 0, true, 1))).toBeLessThanOrEqual(width(forecast(lengths, 0, true, 1)) + 1e-9);
    }), { numRuns: 80 });
  });

  it('widens with every further cycle', () => {
    for (const lengths of [[], [28, 28, 28, 28], [26, 33, 29, 38, 25]]) {
      const f = forecast(lengths);
      expect(width(f, 1)).toBeGreaterThan(width(f, 0));
      expect(width(f, 2)).toBeGreaterThan(width(f, 1));
    }
  });

  it('is narrow for the steady and wide for the irregular', () => {
    expect(width(forecast([28, 28, 29, 28, 28, 28]))).toBeLessThan(4);
    expect(width(forecast([22, 41, 27, 35, 24, 38]))).toBeGreaterThan(12);
  });

  it('reads a 58-day cycle of a steady woman as two, and does not average it in', () => {
    const lengths = [28, 29, 29, 58, 28, 29];
    expect(meanOf(next(lengths).length)).toBeLessThan(29.6);
    expect(unrecordedInGap(next(lengths).posterior, 58)).toBeGreaterThan(0.9);
    expect(unrecordedInGap(next(lengths).posterior, 29)).toBeLessThan(0.01);
    // The same gap in a woman of long cycles is one of hers.
    expect(unrecordedInGap(next([52, 61, 55, 58, 49]).posterior, 58)).toBeLessThan(0.3);
  });

  it('says that it is other women\'s until a cycle of hers is known', () => {
    expect(forecast([]).basis).toBe('population');
    expect(forecast([29]).basis).toBe('own');
  });

  it('holds a start for unrecorded when many days have gone and she has not said that none came', () => {
    expect(forecast([28, 28, 29, 28], 45, false).unrecordedChance).toBeGreaterThan(0.8);
    expect(forecast([28, 28, 29, 28], 45, true).unrecordedChance).toBe(0);
    expect(forecast([28, 28, 29, 28], 5, false).unrecordedChance).toBeLessThan(0.01);
  });

  it('puts day 18 of a woman of 36 days before ovulation, not after', () => {
    const f = forecast([36, 36, 35, 37, 36], 17);
    expect(f.ovulation.likely).toBeGreaterThan(start + 17);
  });

  it('counts whole calendar days over a leap day and a change of clocks', () => {
    // 28 days from 2028-02-14 end on 2028-03-13 (leap year), from 2026-03-15 on 2026-04-12 (clocks change on 2026-03-29 in Europe).
    for (const [from, to] of [['2028-02-14', '2028-03-13'], ['2027-02-14', '2027-03-14'], ['2026-03-15', '2026-04-12'], ['2026-10-11', '2026-11-08']] as const) {
      const f = forecastCycles(next([28, 28, 28, 28, 28, 28, 28]), day(from), { elapsed: 0, confirmed: true, signs: null });
      expect(isoDate(f.starts[0]!.likely)).toBe(to);
    }
  });

  it('does not depend on the zone of the machine', () => {
    const zone = process.env['TZ'];
    const seen = new Set<string>();
    for (const tz of ['Pacific/Kiritimati', 'America/Los_Angeles', 'UTC']) {
      process.env['TZ'] = tz;
      seen.add(isoDate(forecast([28, 30, 29], 3).starts[0]!.likely));
    }
    if (zone === undefined) delete process.env['TZ'];
    else process.env['TZ'] = zone;
    expect(seen.size).toBe(1);
  });

  it('counts a start known only roughly for less', () => {
    const rough = nextCycle(model, { cycles: [33, 33, 33].map((length) => ({ length, ovulationDay: null, slack: 6 })), age: null });
    expect(rough.range.high - rough.range.low).toBeGreaterThan(next([33, 33, 33]).range.high - next([33, 33, 33]).range.low);
    expect(meanOf(rough.length)).toBeGreaterThan(meanOf(next([]).length));
  });

  it('follows a drift: newer cycles count more', () => {
    expect(meanOf(next([...Array<number>(15).fill(26), ...Array<number>(15).fill(31)]).length)).toBeGreaterThan(meanOf(next([...Array<number>(15).fill(31), ...Array<number>(15).fill(26)]).length));
  });
});

describe('signs of ovulation', () => {
  const signs = { tests: [{ day: addDays(start, 19), positive: true }], temperatures: [], slipperyDays: [] };
  it('a positive test on day 20 moves ovulation to day 20 to 22, and the next start after it', () => {
    const { weights } = readSigns(model.parameters, start, signs, addDays(start, 20));
    const plain = forecastCycles(next([28, 28, 28]), start, { elapsed: 20, confirmed: true, signs: null });
    const signed = forecastCycles(next([28, 28, 28]), start, { elapsed: 20, confirmed: true, signs: weights });
    expect(plain.ovulation.likely - start + 1).toBeLessThan(18);
    expect(signed.ovulation.likely - start + 1).toBeGreaterThanOrEqual(20);
    expect(signed.ovulation.likely - start + 1).toBeLessThanOrEqual(22);
    expect(signed.starts[0]!.likely).toBeGreaterThan(plain.starts[0]!.likely);
  });
  it('no sign leaves the forecast as it was', () => {
    expect(readSigns(model.parameters, start, { tests: [{ day: start, positive: false }], temperatures: [], slipperyDays: [] }, addDays(start, 9)).weights).toBeNull();
  });
});

describe('phases of a day', () => {
  it('have chances that sum to one on every day', () => {
    fc.assert(fc.property(histories, fc.integer({ min: 0, max: 50 }), fc.boolean(), (lengths, elapsed, confirmed) => {
      const today = addDays(start, elapsed);
      const futures = drawFutures(next(lengths).posterior, { lastStart: start, running: { elapsed, confirmed, signs: null }, until: addDays(today, 60), count: 100, seed: 7, bleed: null });
      for (const { chances } of dayPhases(futures, today, addDays(today, 60), model.parameters.phases)) {
        expect(phases.reduce((sum, p) => sum + chances[p], 0)).toBeCloseTo(1, 9);
        for (const p of phases) expect(chances[p]).toBeGreaterThanOrEqual(0);
      }
    }), { numRuns: 15 });
  });

  it('give the same futures for the same seed', () => {
    const draw = (seed: number): string => JSON.stringify(drawFutures(next([28, 31]).posterior, { lastStart: start, running: { elapsed: 4, confirmed: false, signs: null }, until: addDays(start, 90), count: 50, seed, bleed: null }));
    expect(draw(3)).toBe(draw(3));
    expect(draw(3)).not.toBe(draw(4));
  });

  it('agree with the exact forecast of the next start', () => {
    const n = next([27, 30, 29, 33]);
    const running = { elapsed: 22, confirmed: true, signs: null };
    const exact = forecastCycles(n, start, running).starts[0]!.chances;
    const futures = drawFutures(n.posterior, { lastStart: start, running, until: addDays(start, 60), count: 4000, seed: 1, bleed: null });
    const mean = futures.reduce((a, f) => a + f[0]!.start + f[0]!.length, 0) / futures.length;
    expect(Math.abs(mean - meanOf(exact))).toBeLessThan(0.25);
  });
});
