import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { day } from '../../core/calendar/index.ts';
import { calendarFile } from './calendar-file.ts';

const entries = [{ id: 'a', from: day('2028-02-28'), to: day('2028-02-29'), title: 'Kitchen plan', text: '' }, { id: 'b', from: day('2026-03-29'), to: day('2026-03-29'), title: 'Kitchen plan', text: 'Ünïcode; with, commas\nand a line' }];

describe('a calendar file', () => {
  const text = calendarFile('Kitchen plan', entries, day('2026-03-01'));
  const component = new ICAL.Component(ICAL.parse(text) as unknown[]);
  const events = component.getAllSubcomponents('vevent').map((e) => new ICAL.Event(e));

  // RFC 5545: lines end in CRLF and hold 75 octets at most; VERSION and PRODID; UID and DTSTAMP in each VEVENT; DTEND of whole days excluded.
  it('keeps the form of RFC 5545', () => {
    for (const line of text.split('\r\n')) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
    expect(text).not.toMatch(/[^\r]\n/);
    expect(component.getFirstPropertyValue('version')).toBe('2.0');
    expect(component.getFirstPropertyValue('prodid')).toBeTruthy();
    expect(new Set(events.map((e) => e.uid)).size).toBe(2);
  });
  it('puts whole days on their dates in any zone, the end excluded', () => {
    const zone = process.env['TZ'];
    for (const tz of ['UTC', 'Pacific/Kiritimati', 'Pacific/Pago_Pago', 'Europe/Berlin']) {
      process.env['TZ'] = tz;
      const made = calendarFile('Kitchen plan', entries, day('2026-03-01'));
      expect(made).toContain('DTSTART;VALUE=DATE:20280228\r\nDTEND;VALUE=DATE:20280301');
      expect(made).toContain('DTSTART;VALUE=DATE:20260329\r\nDTEND;VALUE=DATE:20260330');
    }
    if (zone === undefined) delete process.env['TZ'];
    else process.env['TZ'] = zone;
    expect(events.every((e) => e.startDate.isDate)).toBe(true);
  });
  it('shows nobody as busy', () => {
    expect(text.match(/TRANSP:TRANSPARENT/g)).toHaveLength(2);
  });
});
