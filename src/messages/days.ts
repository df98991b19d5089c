import { partsOfDay, type Day } from '../core/calendar/index.ts';

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** "Thu 3 December 2026". */
export function longDay(day: Day): string {
  const { year, month, dayOfMonth, weekday } = partsOfDay(day);
  return `${weekdays[weekday - 1]} ${dayOfMonth} ${months[month - 1]} ${year}`;
}

/** "3 Dec". */
export function shortDay(day: Day): string {
  const { month, dayOfMonth } = partsOfDay(day);
  return `${dayOfMonth} ${months[month - 1]!.slice(0, 3)}`;
}

/** "3 to 7 December" or "29 November to 3 December". */
export function daySpan(from: Day, to: Day): string {
  const a = partsOfDay(from);
  const b = partsOfDay(to);
  if (from === to) return `${a.dayOfMonth} ${months[a.month - 1]}`;
  if (a.month === b.month && a.year === b.year) return `${a.dayOfMonth} to ${b.dayOfMonth} ${months[b.month - 1]}`;
  return `${a.dayOfMonth} ${months[a.month - 1]} to ${b.dayOfMonth} ${months[b.month - 1]}`;
}

/** "1 day", "3 days", "3.5 days". */
export function dayCount(days: number): string {
  const text = Number.isInteger(days) ? String(days) : days.toFixed(1);
  return `${text} ${text === '1' ? 'day' : 'days'}`;
}
