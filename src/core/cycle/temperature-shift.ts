import type { Day } from '../calendar/index.ts';

/** A waking temperature in °C; `disturbed` when she marks it (fever, short night, late). */
export interface TemperatureReading {
  readonly day: Day;
  readonly celsius: number;
  readonly disturbed: boolean;
}

export interface TemperatureShift {
  /** The first of the three high readings. */
  readonly firstHigh: Day;
  /** The day on which the rule was met: the third high reading. */
  readonly confirmedOn: Day;
  /** The highest of the six readings before, °C. */
  readonly baseline: number;
}

/** Readings the rule looks back on, and the readings it waits for. */
const before = 6;
const high = 3;
/** How much the third reading must stand above the baseline, °C. */
const thirdAbove = 0.2;
/** The six low and three high readings may have this many days left out among them. */
const longestSpan = 14;

/**
 * The three-over-six rule: three readings each above the highest of the six before them, the
 * third at least 0.2 °C above it. Disturbed readings are passed over. Gives the first shift in
 * the readings; null when there is none, which proves nothing: about one ovulatory cycle in
 * five shows no shift.
 */
export function temperatureShift(readings: readonly TemperatureReading[]): TemperatureShift | null {
  const used = readings.filter((r) => !r.disturbed).sort((a, b) => a.day - b.day);
  for (let i = before; i + high <= used.length; i += 1) {
    const low = used.slice(i - before, i);
    const up = used.slice(i, i + high);
    const baseline = Math.max(...low.map((r) => r.celsius));
    const third = up[high - 1]!;
    if (third.day - low[0]!.day > longestSpan) continue;
    // Thermometers give two decimals: compare in hundredths, so that 36.7 − 36.5 is 0.2.
    if (up.every((r) => r.celsius > baseline) && Math.round(third.celsius * 100) - Math.round(baseline * 100) >= thirdAbove * 100) return { firstHigh: up[0]!.day, confirmedOn: third.day, baseline };
  }
  return null;
}
