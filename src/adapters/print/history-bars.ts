import { isoDate } from '../../core/calendar/index.ts';
import type { CycleForecast, HistoryCycle } from '../../core/cycle/index.ts';
import { dayCount, shortDay } from '../../messages/days.ts';
import { at, inks, label, picture, type Picture } from './svg.ts';

const left = 96;
const row = 20;
const top = 40;
const dayWidth = 9;

export interface HistoryBarsRequest {
  readonly cycles: readonly HistoryCycle[];
  readonly unrecorded: readonly number[];
  readonly forecast: CycleForecast | null;
  /** Lengths between which a cycle is called usual, days; drawn as two thin lines. */
  readonly usual: { readonly shortest: number; readonly longest: number };
}

/** Her cycles as bars from start to start, newest below; the running one with the range in which it may end. */
export function historyBars({ cycles, unrecorded, forecast, usual }: HistoryBarsRequest): Picture {
  const shown = cycles.slice(-16);
  const chances = unrecorded.slice(-16);
  const end = forecast ? forecast.starts[0]!.to - forecast.lastStart : 0;
  const longest = Math.min(100, Math.max(usual.longest + 4, end + 3, ...shown.map((c) => c.length + 2)));
  const x = (day: number): number => left + Math.min(longest, day) * dayWidth;
  const rows = shown.length + (forecast ? 1 : 0);
  const body: string[] = [];
  for (let d = 0; d <= longest; d += 7) body.push(`<line x1="${at(x(d))}" x2="${at(x(d))}" y1="${top - 6}" y2="${top + rows * row}" stroke="${inks.pale}"/>`, label(x(d), top - 12, String(d), 'text-anchor="middle" font-size="10"'));
  for (const d of [usual.shortest, usual.longest]) body.push(`<line x1="${at(x(d))}" x2="${at(x(d))}" y1="${top - 6}" y2="${top + rows * row}" stroke="${inks.line}" stroke-dasharray="2 3"/>`);
  shown.forEach((cycle, i) => {
    const y = top + i * row;
    const doubled = (chances[i] ?? 0) > 0.5;
    body.push(label(left - 8, y + 13, `${shortDay(cycle.start)}${cycle.slack > 0 ? ' ~' : ''}`, 'text-anchor="end" font-size="11"'));
    body.push(`<rect x="${left}" y="${y + 4}" width="${at(x(cycle.length) - left)}" height="${row - 8}" fill="${doubled ? 'none' : inks.dark}" fill-opacity="0.75"${doubled ? ` stroke="${inks.dark}" stroke-dasharray="4 3"` : ''}/>`);
    if (cycle.bleedDays !== null && !doubled) body.push(`<rect x="${left}" y="${y + 4}" width="${at(cycle.bleedDays * dayWidth)}" height="${row - 8}" fill="${inks.dark}"/>`);
    if (cycle.ovulationDay !== null) body.push(`<path d="M${at(x(cycle.ovulationDay - 0.5))} ${y + 2}V${y + row - 2}" stroke="${inks.earth}" stroke-width="3"/>`);
    body.push(label(x(cycle.length) + 6, y + 14, doubled ? `${cycle.length}, probably two` : String(cycle.length), 'font-size="11"'));
  });
  if (forecast) {
    const y = top + shown.length * row;
    const gone = forecast.today - forecast.lastStart + 1;
    const next = forecast.starts[0]!;
    body.push(label(left - 8, y + 13, `${shortDay(forecast.lastStart)} now`, 'text-anchor="end" font-size="11"'));
    body.push(`<rect x="${left}" y="${y + 4}" width="${at(x(gone) - left)}" height="${row - 8}" fill="${inks.earth}" fill-opacity="0.55"/>`);
    body.push(`<path d="M${at(x(gone))} ${y + row / 2}H${at(x(next.from - forecast.lastStart))}" stroke="${inks.earth}" stroke-dasharray="2 3"/>`);
    body.push(`<rect x="${at(x(next.from - forecast.lastStart))}" y="${y + 4}" width="${at(Math.max(dayWidth, x(next.to - forecast.lastStart) - x(next.from - forecast.lastStart)))}" height="${row - 8}" fill="none" stroke="${inks.earth}" stroke-width="1.5"/>`);
  }
  const height = top + rows * row + 12;
  const lengths = shown.filter((_, i) => (chances[i] ?? 0) <= 0.5).map((c) => c.length);
  const text = lengths.length > 0 ? `${lengths.length} cycles from ${Math.min(...lengths)} to ${Math.max(...lengths)} days.` : 'No whole cycle is recorded.';
  return {
    caption: `Her cycles from start to start, in days. The dark part is bleeding; an upright mark is ovulation by signs; the open box is the next start, eight times in ten; dashed lines stand at ${usual.shortest} and ${usual.longest} days.`,
    svg: picture({ id: 'history-bars', width: left + longest * dayWidth + 110, height, title: 'Her cycles from start to start', text }, body),
    table: {
      caption: 'Her cycles from start to start',
      head: ['Start', 'Length', 'Days of bleeding', 'Ovulation by signs', 'Remark'],
      rows: cycles.map((c, i) => [isoDate(c.start), dayCount(c.length), c.bleedDays === null ? 'not noted' : dayCount(c.bleedDays), c.ovulationDay === null ? 'not known' : `day ${c.ovulationDay}`, [(unrecorded[i] ?? 0) > 0.5 ? 'probably two, a start left out' : '', c.slack > 0 ? `known within ${dayCount(c.slack)}` : ''].filter((r) => r !== '').join('; ')]),
    },
  };
}
