import type { CycleReport } from '../../app/cycle-report.ts';
import { dayStrip } from './day-strip.ts';
import { historyBars } from './history-bars.ts';
import { noteCurve } from './note-curve.ts';
import type { Picture } from './svg.ts';

export { dayStrip } from './day-strip.ts';
export { historyBars } from './history-bars.ts';
export { noteCurve } from './note-curve.ts';
export type { Picture } from './svg.ts';

/** The pictures that a report can fill: days, cycles, one curve for each item. */
export function cyclePictures(report: CycleReport, usual: { shortest: number; longest: number }): Picture[] {
  return [
    ...(report.phases.length > 0 ? [dayStrip(report.phases, report.forecast?.starts[0] ?? null)] : []),
    ...(report.history.cycles.length > 0 ? [historyBars({ cycles: report.history.cycles, unrecorded: report.unrecorded, forecast: report.forecast, usual })] : []),
    ...report.curves.map(({ item, points }, i) => noteCurve(item, points, i + 1)),
  ];
}
