import { describe, expect, it } from 'vitest';
import { addDays, day } from '../calendar/index.ts';
import { temperatureShift, type TemperatureReading } from './temperature-shift.ts';

const chart = (celsius: readonly (number | null)[], disturbed: readonly number[] = []): TemperatureReading[] =>
  celsius.flatMap((c, i) => (c === null ? [] : [{ day: addDays(day('2026-03-01'), i), celsius: c, disturbed: disturbed.includes(i + 1) }]));
const shiftDay = (readings: readonly TemperatureReading[]): number | null => {
  const found = temperatureShift(readings);
  return found === null ? null : found.firstHigh - day('2026-03-01') + 1;
};

describe('the three-over-six rule', () => {
  // A published worked example (a charting forum's statement of the rule, temperaturabasale.it, topic 2247):
  // the highest of the six readings before is 36.5; readings of 36.6, 36.6 and 36.7 on days 24, 25 and 26 meet the
  // rule, ovulation being set on day 23. The readings before day 18 are filled in here.
  it('finds day 24 on the published chart with a baseline of 36.5', () => {
    const low = Array.from({ length: 17 }, (_, i) => (i % 2 ? 36.3 : 36.4));
    const found = temperatureShift(chart([...low, 36.4, 36.3, 36.5, 36.4, 36.4, 36.5, 36.6, 36.6, 36.7]));
    expect(found?.firstHigh).toBe(addDays(day('2026-03-01'), 23));
    expect(found?.confirmedOn).toBe(addDays(day('2026-03-01'), 25));
    expect(found?.baseline).toBe(36.5);
  });

  // Marquette University, Institute for Natural Family Planning, "Monitoring basal body temperature":
  // the six readings before the rise, the highest of them, then three in a row above it.
  it('asks for three in a row above the highest of the six', () => {
    expect(shiftDay(chart([36.4, 36.5, 36.3, 36.4, 36.5, 36.4, 36.6, 36.6, 36.5, 36.7]))).toBeNull();
    expect(shiftDay(chart([36.4, 36.5, 36.3, 36.4, 36.5, 36.4, 36.6, 36.6, 36.7]))).toBe(7);
  });

  // The third reading at least 0.2 °C above the highest of the six (rule as stated in both sources).
  it('stands on both sides of 0.2 degrees for the third reading', () => {
    const six = [36.4, 36.5, 36.3, 36.4, 36.5, 36.4];
    expect(shiftDay(chart([...six, 36.55, 36.6, 36.7]))).toBe(7);
    expect(shiftDay(chart([...six, 36.55, 36.6, 36.69]))).toBeNull();
  });

  it('passes over disturbed readings and days without one', () => {
    expect(shiftDay(chart([36.4, 36.5, 36.3, 37.4, 36.4, 36.5, 36.4, 36.6, 36.6, 36.7], [4]))).toBe(8);
    expect(shiftDay(chart([36.4, null, 36.5, 36.3, 36.4, 36.5, 36.4, 36.6, null, 36.6, 36.7]))).toBe(8);
  });

  it('finds nothing where there is no shift, which proves nothing', () => {
    expect(shiftDay(chart(Array.from({ length: 28 }, (_, i) => 36.4 + (i % 3) / 20)))).toBeNull();
    expect(shiftDay([])).toBeNull();
  });

  it('does not stretch one shift over weeks without readings', () => {
    expect(shiftDay(chart([36.4, 36.5, 36.3, 36.4, 36.5, 36.4, ...Array.from({ length: 12 }, () => null), 36.6, 36.6, 36.7]))).toBeNull();
  });
});
