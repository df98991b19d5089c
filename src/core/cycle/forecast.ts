import { addDays, type Day } from '../calendar/index.ts';
import { runningCycle, type RunningCell, type RunningCycle } from './current-cycle.ts';
import { distribution, medianOf, shifted, wholeDayRange, type CentralRange, type DayDistribution } from './distribution.ts';
import { shownRange } from './forecast-range.ts';
import { convolve } from './kernel.ts';
import { longestCycle, type CycleModel } from './model.ts';
import { heldRange, type NextCycle } from './next-cycle.ts';
import type { Posterior } from './posterior.ts';

/** A day that is not sure: its chances, its best single guess and a range that holds eight times in ten. */
export interface DayForecast {
  /** Chances over calendar days (`first` and the values are Day numbers). */
  readonly chances: DayDistribution;
  readonly likely: Day;
  /** Ends inside days, for scoring and drawing. */
  readonly range: CentralRange;
  /** Whole days, for saying. */
  readonly from: Day;
  readonly to: Day;
}

export interface CycleForecast {
  /** `population`: no cycle of hers is known, and these are other women's figures. */
  readonly basis: 'population' | 'own';
  readonly cyclesUsed: number;
  readonly lastStart: Day;
  readonly today: Day;
  /** Next starts, the nearest first; each further one is wider. */
  readonly starts: readonly DayForecast[];
  /** Ovulation of the running cycle, if it is still the same cycle. Never for contraception or conception. */
  readonly ovulation: DayForecast;
  /** Her typical cycle and her own spread, days: best value and an eight-in-ten range. */
  readonly typicalLength: { readonly value: number; readonly low: number; readonly high: number };
  readonly ownSpread: { readonly value: number; readonly low: number; readonly high: number };
  /** Chance that a start went unrecorded since the last one. */
  readonly unrecordedChance: number;
}

const width = longestCycle + 1;

function dayForecast(chances: DayDistribution, forRange: DayDistribution, { posterior: of, held }: NextCycle): DayForecast {
  const likely = medianOf(chances);
  const range = heldRange(shownRange(of, forRange), likely, held);
  const { saidLeast, saidMost } = of.model.parameters.range;
  const whole = wholeDayRange(chances, range, saidLeast, saidMost);
  return { chances, likely: likely as Day, range, from: Math.min(whole.first, likely) as Day, to: Math.max(whole.last, likely) as Day };
}

function mixed(cells: readonly RunningCell[], rows: readonly Float64Array[], from: Day): { plain: DayDistribution; range: DayDistribution } {
  const longest = Math.max(...rows.map((r) => r.length));
  const plain = new Float64Array(longest);
  const range = new Float64Array(longest);
  rows.forEach((row, i) => {
    const { weight, rangeWeight } = cells[i]!;
    for (let d = 0; d < row.length; d += 1) {
      plain[d]! += weight * row[d]!;
      range[d]! += rangeWeight * row[d]!;
    }
  });
  return { plain: shifted(distribution(0, plain), from), range: shifted(distribution(0, range), from) };
}

/** Weighted quantiles of a grid quantity. */
function spreadOver(points: readonly { value: number; weight: number }[]): { value: number; low: number; high: number } {
  const sorted = [...points].sort((a, b) => a.value - b.value);
  const total = sorted.reduce((a, p) => a + p.weight, 0);
  const at = (q: number): number => {
    let sum = 0;
    for (const p of sorted) if ((sum += p.weight) >= q * total) return p.value;
    return sorted[sorted.length - 1]!.value;
  };
  return { value: sorted.reduce((a, p) => a + p.value * p.weight, 0) / total, low: at(0.1), high: at(0.9) };
}

/** Forecasts the next `ahead` starts after `lastStart` for a woman whose record gave `next`. */
export function forecastCycles(next: NextCycle, lastStart: Day, running: RunningCycle, ahead = 3): CycleForecast {
  const of = next.posterior;
  const every = runningCycle(of, running);
  const cells = every.filter((c) => c.weight > 1e-4 || c.rangeWeight > 1e-4);
  const starts: DayForecast[] = [];
  let rows = cells.map((c) => c.nextStart);
  for (let k = 0; k < ahead; k += 1) {
    if (k > 0) rows = rows.map((row, i) => convolve(row, of.model.length.subarray(cells[i]!.cell * width, cells[i]!.cell * width + of.model.lengthTo[cells[i]!.cell]! + 1), row.length + 90));
    const { plain, range } = mixed(cells, rows, lastStart);
    const start = dayForecast(plain, range, next);
    // On the first day of a cycle the next start is the next whole cycle, to the last figure.
    starts.push(k === 0 && running.elapsed === 0 && running.signs === null ? { ...start, range: { low: lastStart + next.range.low, high: lastStart + next.range.high } } : start);
  }
  return {
    basis: of.cyclesUsed === 0 ? 'population' : 'own',
    cyclesUsed: of.cyclesUsed,
    lastStart,
    today: addDays(lastStart, running.elapsed),
    starts,
    ovulation: ovulationForecast(next, cells, lastStart),
    ...habits(of),
    unrecordedChance: cells.reduce((a, c) => a + c.weight * c.unrecorded, 0),
  };
}

function ovulationForecast(next: NextCycle, cells: readonly RunningCell[], lastStart: Day): DayForecast {
  const same = cells.filter((c) => c.unrecorded < 1 && c.ovulation.some((p) => p > 0)).map((c) => ({ ...c, weight: c.weight * (1 - c.unrecorded), rangeWeight: c.rangeWeight * (1 - c.unrecorded) }));
  if (same.length === 0) return dayForecast(shifted(distribution(14, [1]), lastStart), shifted(distribution(14, [1]), lastStart), next);
  // Cycle day 1 is the last start itself.
  const { plain, range } = mixed(same, same.map((c) => c.ovulation), addDays(lastStart, -1));
  const found = dayForecast(plain, range, next);
  // Even good signs leave a day either way: never one single day.
  return { ...found, from: Math.min(found.from, found.likely - 1) as Day, to: Math.max(found.to, found.likely + 1) as Day };
}

function habits(of: Posterior): Pick<CycleForecast, 'typicalLength' | 'ownSpread'> {
  const { model } = of;
  const nS = model.spreads.length;
  const at = (i: number): { typical: number; spread: number } => ({ typical: middleOf(model, of.cells[i]!), spread: model.spreads[of.cells[i]! % nS]! });
  const points = [...of.weights].map((weight, i) => ({ weight, ...at(i) }));
  return {
    typicalLength: spreadOver(points.map((p) => ({ value: p.typical, weight: p.weight }))),
    ownSpread: spreadOver(points.map((p) => ({ value: p.spread, weight: p.weight }))),
  };
}

/** The median length of a cycle under one cell, interpolated inside the day. */
function middleOf(model: CycleModel, cell: number): number {
  let sum = 0;
  for (let d = model.lengthFrom[cell]!; d <= model.lengthTo[cell]!; d += 1) {
    const p = model.length[cell * width + d]!;
    if (sum + p >= 0.5) return d - 0.5 + (0.5 - sum) / p;
    sum += p;
  }
  return model.lengthTo[cell]!;
}
