import type { Day } from '../calendar/index.ts';
import type { ChanceByDay, CycleParameters } from './parameters.ts';
import { longestCycle } from './model.ts';
import { temperatureShift, type TemperatureReading, type TemperatureShift } from './temperature-shift.ts';

/** Signs that she noted in one cycle, from its start to the day before the next (or to today). */
export interface CycleSigns {
  readonly tests: readonly { readonly day: Day; readonly positive: boolean }[];
  readonly temperatures: readonly TemperatureReading[];
  /** Days with slippery, stretchy fluid, if she notes it. */
  readonly slipperyDays: readonly Day[];
}

export interface ReadSigns {
  readonly firstPositive: Day | null;
  readonly shift: TemperatureShift | null;
  readonly lastSlippery: Day | null;
  /** Relative chance of these signs for ovulation on each cycle day (index 1 the first of the period); null for no usable sign. */
  readonly weights: Float64Array | null;
}

/**
 * Signs shift the chances of the day of ovulation; none of them fixes it. `until` is the last
 * day that she could have noted anything: the last slippery day counts only once it is past.
 */
export function readSigns(parameters: CycleParameters, start: Day, signs: CycleSigns, until: Day): ReadSigns {
  const { signs: figures } = parameters;
  const positives = signs.tests.filter((t) => t.positive).map((t) => t.day).sort((a, b) => a - b);
  const firstPositive = positives[0] ?? null;
  const shift = temperatureShift(signs.temperatures);
  const slippery = [...signs.slipperyDays].sort((a, b) => a - b);
  const last = slippery[slippery.length - 1] ?? null;
  const lastSlippery = last !== null && last < until - 2 ? last : null;
  let weights: Float64Array | null = null;
  const add = (anchor: number, chances: ChanceByDay, misleads: number, direction: 1 | -1): void => {
    weights ??= new Float64Array(longestCycle + 1).fill(1);
    const total = chances.reduce((a, c) => a + c.chance, 0);
    for (let o = 1; o <= longestCycle; o += 1) {
      const found = chances.find((c) => c.day === direction * (o - anchor));
      // A sign that misleads could have come on any of about thirty days.
      weights[o]! *= ((1 - misleads) * (found?.chance ?? 0)) / total + misleads / 30;
    }
  };
  const cycleDay = (day: Day): number => day - start + 1;
  if (firstPositive !== null) add(cycleDay(firstPositive), figures.positiveTest, figures.falseTest, 1);
  if (shift !== null) add(cycleDay(shift.firstHigh), figures.temperatureShift, figures.falseShift, -1);
  if (lastSlippery !== null) add(cycleDay(lastSlippery), figures.slipperyPeak, figures.falsePeak, 1);
  return { firstPositive, shift, lastSlippery, weights };
}

/**
 * The most likely ovulation day of a finished cycle by its signs alone (cycle day, 1-based);
 * null without a positive test or a temperature shift, the two signs strong enough to learn from.
 */
export function signedOvulationDay(read: ReadSigns, length: number): number | null {
  if (read.weights === null || (read.firstPositive === null && read.shift === null)) return null;
  let best = 0;
  for (let o = 1; o < length; o += 1) if (best === 0 || read.weights[o]! > read.weights[best]!) best = o;
  return best === 0 ? null : best;
}
