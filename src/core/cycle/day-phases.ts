import { addDays, daysBetween, type Day } from '../calendar/index.ts';
import type { Future, PlacedCycle } from './futures.ts';
import type { CycleParameters } from './parameters.ts';
import { phaseOf, phases, type Phase } from './phases.ts';

/** Chances of the phases on one day; they sum to one. */
export type PhaseChances = Readonly<Record<Phase, number>>;

export interface DayPhases {
  readonly day: Day;
  readonly chances: PhaseChances;
}

/** The cycle of a future that a day falls in; null before its first or past its last. */
export function cycleOn(future: Future, day: Day): PlacedCycle | null {
  for (const cycle of future) if (day >= cycle.start && day < cycle.start + cycle.length) return cycle;
  return null;
}

/** Share of the futures in each phase, for every day from `from` to `to`. */
export function dayPhases(futures: readonly Future[], from: Day, to: Day, words: CycleParameters['phases']): DayPhases[] {
  const length = daysBetween(from, to) + 1;
  const counts = new Float64Array(Math.max(0, length) * phases.length);
  for (const future of futures)
    for (const cycle of future)
      for (let day = Math.max(from, cycle.start); day < cycle.start + cycle.length && day <= to; day += 1) {
        const phase = phaseOf(cycle, day - cycle.start + 1, words);
        counts[(day - from) * phases.length + phases.indexOf(phase)]! += 1;
      }
  return Array.from({ length: Math.max(0, length) }, (_, i) => {
    const row = counts.subarray(i * phases.length, (i + 1) * phases.length);
    const total = row.reduce((a, b) => a + b, 0);
    const chances = Object.fromEntries(phases.map((phase, j) => [phase, total > 0 ? row[j]! / total : 1 / phases.length]));
    return { day: addDays(from, i), chances: chances as Record<Phase, number> };
  });
}
