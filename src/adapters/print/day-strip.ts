import { partsOfDay } from '../../core/calendar/index.ts';
import { phases, type DayForecast, type DayPhases } from '../../core/cycle/index.ts';
import { phaseNames } from '../../messages/cycle.ts';
import { longDay, shortDay } from '../../messages/days.ts';
import { at, inks, label, picture, type Picture } from './svg.ts';

const left = 150;
const lane = 34;
const top = 44;

/**
 * A strip of days: one lane for each phase, in which a band stands as high as the phase is
 * likely that day. The range of the next start is a line with its likeliest day marked.
 */
export function dayStrip(days: readonly DayPhases[], nextStart: DayForecast | null): Picture {
  const step = days.length > 45 ? 11 : 18;
  const width = left + days.length * step + 20;
  const height = top + phases.length * lane + 46;
  const x = (i: number): number => left + i * step;
  const body: string[] = [];
  days.forEach(({ day }, i) => {
    const { dayOfMonth, weekday } = partsOfDay(day);
    if (weekday >= 6) body.push(`<rect x="${at(x(i))}" y="${top}" width="${step}" height="${phases.length * lane}" fill="${inks.pale}"/>`);
    if (i === 0 || dayOfMonth === 1) body.push(label(x(i), 16, shortDay(day), 'font-weight="600"'));
    if (step >= 16 || dayOfMonth % 5 === 0) body.push(label(x(i) + step / 2, 34, String(dayOfMonth), `text-anchor="middle" font-size="${step >= 16 ? 10 : 9}" fill="${inks.text}"`));
  });
  phases.forEach((phase, row) => {
    const middle = top + row * lane + lane / 2;
    body.push(label(left - 10, middle + 4, phaseNames[phase], 'text-anchor="end"'));
    body.push(`<line x1="${left}" x2="${at(x(days.length))}" y1="${at(middle)}" y2="${at(middle)}" stroke="${inks.line}" stroke-width="0.5"/>`);
    days.forEach(({ chances }, i) => {
      const chance = chances[phase];
      if (chance < 0.01) return;
      const high = chance * (lane - 6);
      body.push(`<rect x="${at(x(i))}" y="${at(middle - high / 2)}" width="${at(step + 0.3)}" height="${at(high)}" fill="${inks.dark}" fill-opacity="${at(0.25 + 0.75 * chance)}"/>`);
    });
  });
  const first = days[0]?.day ?? 0;
  if (nextStart && days.length > 0) {
    const y = top + phases.length * lane + 14;
    const [from, to, likely] = [nextStart.from, nextStart.to, nextStart.likely].map((d) => Math.max(0, Math.min(days.length - 1, d - first))) as [number, number, number];
    body.push(`<path d="M${at(x(from))} ${y - 5}V${y + 5}M${at(x(from))} ${y}H${at(x(to + 1))}M${at(x(to + 1))} ${y - 5}V${y + 5}" stroke="${inks.earth}" stroke-width="2" fill="none"/>`);
    body.push(`<path d="M${at(x(likely) + step / 2)} ${y - 6}l6 6l-6 6l-6 -6z" fill="${inks.earth}"/>`);
    body.push(label(left - 10, y + 4, 'Next start, 8 in 10', 'text-anchor="end"'));
  }
  const next = nextStart ? ` The next period most likely starts on ${longDay(nextStart.likely)}.` : '';
  return {
    caption: 'Chances of the phases, day by day: in each lane the band is as high as the phase is likely. Weekends are shaded.',
    svg: picture({ id: 'day-strip', width, height, title: 'Chances of the phases, day by day', text: `${days.length} days from ${days[0] ? longDay(days[0].day) : ''}. In each lane the band is as high as the phase is likely.${next}` }, body),
    table: { caption: 'Chances of the phases, day by day (%)', head: ['Day', ...phases.map((p) => phaseNames[p])], rows: days.map((d) => [longDay(d.day), ...phases.map((p) => String(Math.round(100 * d.chances[p])))]) },
  };
}
