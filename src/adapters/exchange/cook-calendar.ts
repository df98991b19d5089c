import ical, { ICalEventTransparency } from 'ical-generator';
import { day, partsOfDay, addDays, type IsoDate } from '../../core/calendar/index.ts';
import type { CookPlan } from '../../core/cooking/index.ts';
import { attentionText, placeText } from '../../messages/cooking.ts';

/** A clock minute of a day as a local (floating, RFC 5545 3.3.5 form 1) calendar time. */
function floating(date: IsoDate, minute: number): string {
  const shift = Math.floor(minute / 1440);
  const { year, month, dayOfMonth } = partsOfDay(addDays(day(date), shift));
  const rest = minute - shift * 1440;
  const pad = (value: number): string => String(value).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${pad(month)}-${pad(dayOfMonth)}T${pad(Math.floor(rest / 60))}:${pad(rest % 60)}:00`;
}

export interface CookCalendar {
  readonly plan: CookPlan;
  readonly dishNames: Readonly<Record<string, string>>;
  /** The day of serving. */
  readonly date: IsoDate;
  /** The instant of making the file, ISO 8601 in UTC. */
  readonly stamp: string;
}

/** The plan as a calendar file (RFC 5545): one entry a step, with a reminder at its start, in the local time of whoever opens it. */
export function cookCalendar({ plan, dishNames, date, stamp }: CookCalendar): string {
  const calendar = ical({ name: 'Cook plan', prodId: { company: 'Truepot', product: 'Cook plan', language: 'EN' } });
  const entry = (id: string, title: string, span: { start: number; end: number }, text: string): void => {
    const event = calendar.createEvent({ id: `${date}-${id.replace(/[^\w#-]+/g, '-')}@truepot`, stamp, start: floating(date, span.start), end: floating(date, Math.max(span.end, span.start + 1)), floating: true, summary: title, description: text, transparency: ICalEventTransparency.TRANSPARENT });
    event.createAlarm({ type: 'display' as never, trigger: 0, description: title });
  };
  for (const ahead of plan.ahead) entry(`ahead-${ahead.step.id}`, ahead.step.title, { start: ahead.earliest, end: ahead.latest }, dishNames[ahead.dish] ?? '');
  for (const change of plan.oven) entry(`oven-${change.minute}`, `Oven to ${change.celsius} °C`, { start: change.minute, end: change.hotAt }, '');
  for (const step of plan.steps) entry(step.step.id, step.step.title, { start: step.start, end: step.end }, [dishNames[step.dish] ?? '', placeText(step), attentionText(step)].filter((part) => part !== '').join(' · '));
  for (const serving of plan.servings) entry(`serve-${serving.minute}`, 'On the table', { start: serving.minute, end: serving.minute + 15 }, serving.dishes.map((dish) => dishNames[dish] ?? dish).join(', '));
  return calendar.toString();
}
