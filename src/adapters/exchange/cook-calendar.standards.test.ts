import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { cookPlan, dishFromLines, solvePlan, type CookRequest } from '../../core/cooking/index.ts';
import { readCookingTables } from '../tables/index.ts';
import { cookCalendar } from './cook-calendar.ts';

const { rules, usualKitchen } = readCookingTables();

function calendarOf(text: string, minute: number): { id: string; summary: string; start: string; end: string; alarms: number }[] {
  const { dish } = dishFromLines(text, 'd1', rules);
  const request: CookRequest = { dishes: [dish], kitchen: usualKitchen, when: { kind: 'serve-at', minute, notBefore: null } };
  const outcome = solvePlan({ request, rules, budget: { conflicts: 5000 } });
  if (outcome.kind !== 'solved') throw new Error(outcome.kind);
  const file = cookCalendar({ plan: cookPlan(outcome.plan, rules), dishNames: { d1: dish.name }, date: '2026-03-01', stamp: '2026-02-27T10:00:00Z' });
  for (const line of file.split('\r\n')) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  const root = new ICAL.Component(ICAL.parse(file) as string);
  return root.getAllSubcomponents('vevent').map((event) => {
    const read = new ICAL.Event(event);
    return { id: read.uid, summary: read.summary, start: read.startDate.toString(), end: read.endDate.toString(), alarms: event.getAllSubcomponents('valarm').length };
  });
}

// RFC 5545: 3.1 (lines of at most 75 octets, CRLF), 3.3.5 form 1 (local time without zone), 3.6.1 (one UID an event), 3.6.6 (alarms). Read by the reference reader ical.js.
describe('the calendar of a cook plan', () => {
  it('has an entry with a reminder for every step and the table, in local time', () => {
    const events = calendarOf('Soup\nchop: 5 min, hands\nboil: 20 min, ring, within 5 min', 19 * 60 + 30);
    expect(events.map(({ summary, start, end }) => [summary, start, end])).toEqual([
      ['chop', '2026-03-01T19:05:00', '2026-03-01T19:10:00'],
      ['boil', '2026-03-01T19:10:00', '2026-03-01T19:30:00'],
      ['On the table', '2026-03-01T19:30:00', '2026-03-01T19:45:00'],
    ]);
    expect(new Set(events.map((event) => event.id)).size).toBe(events.length);
    expect(events.every((event) => event.alarms === 1)).toBe(true);
  });

  it('puts soaking on the day before, across the end of a month', () => {
    const [soak] = calendarOf('Beans\nsoak the beans: 5 min, hands, ahead 14-20 h\nboil: 60 min, ring', 13 * 60);
    expect(soak!.start.startsWith('2026-02-28T')).toBe(true);
  });
});
