import type { CurvePoint } from '../../core/cycle/index.ts';
import { at, inks, label, picture, type Picture } from './svg.ts';

const left = 60;
const top = 30;
const dayWidth = 18;
const ratingHeight = 22;

/** One item of hers by day from the period: the mean over cycles as a line, its 95 % interval as a band; no band where cycles are too few. */
export function noteCurve(item: string, points: readonly CurvePoint[], index: number): Picture {
  const days = points.map((p) => p.day);
  const [first, last] = [Math.min(-14, ...days), Math.max(14, ...days)];
  // There is no day 0: days after the start move one place left.
  const place = (day: number): number => (day > 0 ? day - 1 : day) - first;
  const x = (day: number): number => left + place(day) * dayWidth + dayWidth / 2;
  const y = (rating: number): number => top + (6 - rating) * ratingHeight;
  const width = left + (place(last) + 1) * dayWidth + 20;
  const height = top + 5 * ratingHeight + 36;
  const body: string[] = [];
  for (let r = 1; r <= 6; r += 1) body.push(`<line x1="${left}" x2="${width - 20}" y1="${at(y(r))}" y2="${at(y(r))}" stroke="${inks.pale}"/>`, label(left - 10, y(r) + 4, String(r), 'text-anchor="end"'));
  const startX = left + place(1) * dayWidth;
  body.push(`<line x1="${at(startX)}" x2="${at(startX)}" y1="${top - 8}" y2="${at(y(1) + 8)}" stroke="${inks.earth}" stroke-width="1.5"/>`, label(startX + 4, top - 12, 'period starts', `font-size="10" fill="${inks.earth}"`));
  for (const window of [[-7, -1], [4, 10]] as const) body.push(`<rect x="${at(x(window[0]) - dayWidth / 2)}" y="${at(y(1) + 10)}" width="${at((place(window[1]) - place(window[0]) + 1) * dayWidth)}" height="5" fill="${inks.line}"/>`);
  for (let d = first; d <= last; d += 1) if (d !== 0 && (d === 1 || d % 7 === 0)) body.push(label(x(d), y(1) + 30, d > 0 ? `day ${d}` : String(d), 'text-anchor="middle" font-size="10"'));
  for (const p of points) if (p.low !== null && p.high !== null) body.push(`<rect x="${at(x(p.day) - dayWidth / 2)}" y="${at(y(p.high))}" width="${dayWidth}" height="${at(Math.max(1, y(p.low) - y(p.high)))}" fill="${inks.dark}" fill-opacity="0.22"/>`);
  let path = '';
  points.forEach((p, i) => {
    const before = points[i - 1];
    const joined = before !== undefined && place(p.day) - place(before.day) === 1;
    path += `${joined ? 'L' : 'M'}${at(x(p.day))} ${at(y(p.mean))}`;
  });
  body.push(`<path d="${path}" fill="none" stroke="${inks.dark}" stroke-width="2"/>`, ...points.map((p) => `<circle cx="${at(x(p.day))}" cy="${at(y(p.mean))}" r="${p.low === null ? 2 : 3}" fill="${p.low === null ? 'white' : inks.dark}" stroke="${inks.dark}"/>`));
  return {
    caption: `${item}, by day from the period: mean rating over her cycles. Shaded: 95 % interval; open dot: too few cycles for one; grey bars: the two weeks that the published rule compares.`,
    svg: picture({ id: `note-curve-${index}`, width, height, title: `${item}, by day from the period`, text: `Mean rating from 1 to 6 over up to ${Math.max(0, ...points.map((p) => p.cycles))} cycles.` }, body),
    table: { caption: `${item}, by day from the period`, head: ['Day', 'Cycles', 'Mean', '95 % interval'], rows: points.map((p) => [String(p.day), String(p.cycles), p.mean.toFixed(1), p.low === null || p.high === null ? 'too few cycles' : `${p.low.toFixed(1)} to ${p.high.toFixed(1)}`]) },
  };
}
