import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day, dayFromParts, daysBetween, isoDate, partsOfDay, readIsoDate } from './day.ts';

describe('a calendar day', () => {
  it('reads and writes the same text', () => {
    for (const text of ['1970-01-01', '2000-02-29', '2024-12-31', '1899-03-01']) expect(isoDate(day(text))).toBe(text);
  });

  it('agrees with the platform calendar on every day tried', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200_000, max: 200_000 }), (n) => {
        const text = new Date(n * 86_400_000).toISOString().slice(0, 10);
        fc.pre(/^\d{4}-/.test(text));
        expect(isoDate(addDays(day('1970-01-01'), n))).toBe(text);
        expect(partsOfDay(addDays(day('1970-01-01'), n)).weekday).toBe(new Date(n * 86_400_000).getUTCDay() || 7);
      }),
    );
  });

  it('refuses days that do not exist', () => {
    for (const text of ['2023-02-29', '2024-13-01', '2024-00-10', '24-01-01', '2024-1-1', '', '2024-06-31']) expect(readIsoDate(text)).toBeNull();
    expect(dayFromParts(2024, 2, 29.5)).toBeNull();
  });

  it('counts over a leap day', () => {
    expect(daysBetween(day('2024-02-28'), day('2024-03-01'))).toBe(2);
    expect(daysBetween(day('2023-02-28'), day('2023-03-01'))).toBe(1);
  });
});
