import { daysBetween, type Day } from '../calendar/index.ts';
import { readSigns, signedOvulationDay, type CycleSigns, type ReadSigns } from './ovulation-signs.ts';
import type { CycleParameters } from './parameters.ts';
import type { ToldCycle } from './posterior.ts';
import type { CycleRecord, DayEntry } from './record.ts';

/** One gap of the record placed on the calendar. */
export interface HistoryCycle extends ToldCycle {
  readonly start: Day;
  /** Days of bleeding, where she noted them; null when not known. */
  readonly bleedDays: number | null;
}

export interface History {
  readonly cycles: readonly HistoryCycle[];
  readonly lastStart: Day | null;
  /** Signs noted since the last start. */
  readonly runningSigns: ReadSigns | null;
  /** Her own days of bleeding; null under two known periods. */
  readonly bleed: { readonly mean: number; readonly deviation: number } | null;
}

/** Signs noted from `from` up to and without `to`. */
function signsBetween(days: readonly DayEntry[], from: Day, to: Day): CycleSigns {
  const inside = days.filter((d) => d.day >= from && d.day < to);
  return {
    tests: inside.flatMap((d) => (d.ovulationTest === null ? [] : [{ day: d.day, positive: d.ovulationTest === 'positive' }])),
    temperatures: inside.flatMap((d) => (d.temperatureC === null ? [] : [{ day: d.day, celsius: d.temperatureC, disturbed: d.disturbed }])),
    slipperyDays: inside.filter((d) => d.fluid === 'slippery').map((d) => d.day),
  };
}

/** Turns a record into the gaps the model learns from, with ovulation days where signs show them. */
export function historyOf(parameters: CycleParameters, record: CycleRecord, today: Day): History {
  const starts = record.starts.filter((s) => s.day <= today);
  const cycles: HistoryCycle[] = [];
  starts.forEach((start, i) => {
    const next = starts[i + 1];
    if (!next) return;
    const length = daysBetween(start.day, next.day);
    const read = readSigns(parameters, start.day, signsBetween(record.days, start.day, next.day), next.day);
    const slack = Math.min(15, start.slack + next.slack);
    cycles.push({ start: start.day, length, slack, ovulationDay: slack === 0 && length <= 60 ? signedOvulationDay(read, length) : null, bleedDays: bleedDaysOf(start.day, start.lastBleedDay, record.days) });
  });
  const last = starts.at(-1);
  const bleeds = cycles.flatMap((c) => (c.bleedDays === null ? [] : [c.bleedDays]));
  const mean = bleeds.reduce((a, b) => a + b, 0) / bleeds.length;
  return {
    cycles,
    lastStart: last?.day ?? null,
    runningSigns: last ? readSigns(parameters, last.day, signsBetween(record.days, last.day, (today + 1) as Day), today) : null,
    bleed: bleeds.length < 2 ? null : { mean, deviation: Math.max(0.5, Math.sqrt(bleeds.reduce((a, b) => a + (b - mean) ** 2, 0) / (bleeds.length - 1))) },
  };
}

/** Days of bleeding of a period: what she gave, else the flow noted by day; null when neither. */
export function bleedDaysOf(start: Day, last: Day | null, days: readonly DayEntry[]): number | null {
  if (last !== null) return daysBetween(start, last) + 1;
  let end: Day | null = null;
  for (const d of days) {
    if (d.day < start || d.flow === null || d.flow === 'none' || d.flow === 'spotting') continue;
    if (end === null ? d.day > start + 1 : d.day > end + 3) break;
    end = d.day;
  }
  return end === null ? null : daysBetween(start, end) + 1;
}
