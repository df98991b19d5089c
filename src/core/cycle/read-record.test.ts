import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileCycle } from '../../../scripts/tables/cycle.ts';
import { knownSources } from '../../../scripts/tables/known-sources.ts';
import { addDays, day, isoDate, partsOfDay } from '../calendar/index.ts';
import { readRecord, type DateOrder } from './index.ts';

const tables = compileCycle('data', knownSources('data'));
const today = day('2026-11-25');
const read = (text: string, order: DateOrder | null = null) => readRecord(text, { order, today, kinds: tables.lifeStates, questions: tables.referral.questions });
const starts = (text: string, order: DateOrder | null = null): string[] => read(text, order).record.starts.map((s) => isoDate(s.day));
const codes = (text: string, order: DateOrder | null = null): string[] => read(text, order).findings.map((f) => f.code);

describe('a pasted list of dates', () => {
  it.each([
    ['2026-03-01\n2026-03-29', '2026-03-01 2026-03-29'],
    ['2026/3/1; 2026/3/29', '2026-03-01 2026-03-29'],
    ['2026.03.01, 2026.03.29', '2026-03-01 2026-03-29'],
    ['20260301 20260329', '2026-03-01 2026-03-29'],
    ['1.3.2026\n29.3.2026', '2026-03-01 2026-03-29'],
    ['1 March 2026, 29 March 2026', '2026-03-01 2026-03-29'],
    ['1st of March 2026\n29th March 2026', '2026-03-01 2026-03-29'],
    ['March 1, 2026\nMar 29 2026', '2026-03-01 2026-03-29'],
    ['Sunday 1 March 2026', '2026-03-01'],
    ['25/03/2026 22/04/2026', '2026-03-25 2026-04-22'],
    ['3/25/2026\n4/22/2026', '2026-03-25 2026-04-22'],
    ['25/03/26', '2026-03-25'],
    ['29.3.2026\n1.3.2026', '2026-03-01 2026-03-29'],
    ['- 2026-03-01\n- 2026-03-29', '2026-03-01 2026-03-29'],
    ['2026-03-01T23:30:00-08:00', '2026-03-01'],
    ['3 to 8 October 2026', '2026-10-03'],
    ['5/5/2026', '2026-05-05'],
    ['\uFEFF2026-03-01\r\n2026-03-29\r\n', '2026-03-01 2026-03-29'],
  ])('reads %j', (text, wanted) => {
    expect(starts(text).join(' ')).toBe(wanted);
    expect(read(text).findings.filter((f) => f.severity === 'question')).toEqual([]);
  });

  it('asks when 03/04 is ambiguous, and takes the answer', () => {
    expect(codes('03/04/2026\n01/05/2026')).toEqual(['ambiguous-order']);
    expect(starts('03/04/2026\n01/05/2026')).toEqual([]);
    expect(read('03/04/2026').findings[0]?.data).toEqual({ text: '03/04/2026', dayFirst: '2026-04-03', monthFirst: '2026-03-04' });
    expect(starts('03/04/2026\n01/05/2026', 'day-first')).toEqual(['2026-04-03', '2026-05-01']);
    expect(starts('03/04/2026\n01/05/2026', 'month-first')).toEqual(['2026-01-05', '2026-03-04']);
  });

  it('lets one clear date settle the order of the whole list', () => {
    expect(starts('03/04/2026\n30/04/2026')).toEqual(['2026-04-03', '2026-04-30']);
  });

  it('asks when the dates contradict each other', () => {
    expect(codes('25/03/2026\n04/25/2026')).toContain('mixed-order');
  });

  it('keeps rough dates rough', () => {
    const rough = (text: string) => read(text).record.starts.map((s) => [isoDate(s.day), s.slack]);
    expect(rough('about 4 May 2026')).toEqual([['2026-05-04', 3]]);
    expect(rough('mid-May 2026')).toEqual([['2026-05-15', 5]]);
    expect(rough('early June 2026')).toEqual([['2026-06-05', 5]]);
    expect(rough('~ 2026-05-04')).toEqual([['2026-05-04', 3]]);
  });

  it('guesses a missing year backwards from today and says so', () => {
    expect(starts('12 November\n14 October')).toEqual(['2026-10-14', '2026-11-12']);
    expect(starts('20 December')).toEqual(['2025-12-20']);
    expect(codes('12 November')).toEqual(['year-guessed']);
  });

  it('asks about impossible, future, doubled and crowded dates, and loses no other', () => {
    expect(codes('2026-02-30')).toContain('no-such-day');
    expect(codes('2027-01-01')).toContain('future-date');
    expect(codes('2026-03-01 2026-03-01')).toEqual(['same-day-twice']);
    expect(codes('2026-03-01 2026-03-05')).toEqual(['too-near']);
    expect(starts('2026-02-30 2027-01-01 2026-03-01 2026-03-01 2026-03-05 2026-03-29')).toEqual(['2026-03-01', '2026-03-29']);
  });

  it('says which line cannot be read', () => {
    expect(read('2026-03-01\nblue moon').findings).toEqual([{ code: 'unreadable-line', severity: 'note', line: 2, data: { text: 'blue moon' } }]);
  });

  it('reads facts about her between the dates', () => {
    const { person, answers } = read('age: 34\ncombined pill since 2026-01-10 until 2026-06-01\nvery heavy periods\nweight: 61 kg\n2026-07-01').record;
    expect(person.age).toBe(34);
    expect(person.bodyWeightKg).toBe(61);
    expect(person.states).toEqual([{ id: 'combined-pill', from: day('2026-01-10'), to: day('2026-06-01') }]);
    expect(answers).toEqual(['heavy']);
  });

  it('takes a no for a no', () => {
    expect(read('not pregnant\nno clots\n2026-07-01').record).toMatchObject({ answers: [], person: { states: [] } });
  });

  it('reads back any day in every order it is written in', () => {
    const names = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
    fc.assert(fc.property(fc.integer({ min: 0, max: 5000 }), (back) => {
      const d = addDays(today, -back);
      const { year, month, dayOfMonth } = partsOfDay(d);
      const two = (n: number): string => String(n).padStart(2, '0');
      for (const [text, order] of [[isoDate(d), null], [`${dayOfMonth} ${names[month - 1]} ${year}`, null], [`${names[month - 1]} ${dayOfMonth}, ${year}`, null], [`${two(dayOfMonth)}.${two(month)}.${year}`, null], [`${dayOfMonth}/${month}/${year}`, 'day-first'], [`${month}/${dayOfMonth}/${year}`, 'month-first'], [`${two(month)}-${two(dayOfMonth)}-${year}`, 'month-first']] as const)
        expect(starts(text, order)).toEqual([isoDate(d)]);
    }), { numRuns: 200 });
  });

  it('never throws, whatever is pasted', () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.string({ unit: 'grapheme' }), fc.array(fc.constantFrom('date', ',', ';', '2026-01-01', '03/04', '\n', 'flow', 'heavy', '"', 'May', '31', 'about', '–')).map((xs) => xs.join(' '))), (text) => {
      const { record } = read(text);
      for (let i = 1; i < record.starts.length; i += 1) expect(record.starts[i]!.day).toBeGreaterThan(record.starts[i - 1]!.day);
    }), { numRuns: 300 });
  });
});

describe('a table by day', () => {
  const table = (rows: string, header = 'date,flow,test,temperature,cramps,eaten,note'): string => `${header}\n${rows}`;

  it('finds the first days of periods in the flow', () => {
    expect(starts(table('2026-09-01,heavy,,,,,\n2026-09-02,medium,,,,,\n2026-09-04,light,,,,,\n2026-09-29,spotting,,,,,\n2026-09-30,light,,,,,'))).toEqual(['2026-09-01', '2026-09-30']);
  });
  it('asks about a bleed that comes too soon to be a period', () => {
    expect(codes(table('2026-09-01,heavy,,,,,\n2026-09-12,light,,,,,'))).toContain('bleed-not-start');
  });
  it('reads tests, temperatures in either scale, ratings and dishes', () => {
    const { days } = read(table('2026-09-14,,+,97.9,4,lentil soup | rice,tired')).record;
    expect(days[0]).toMatchObject({ ovulationTest: 'positive', temperatureC: 36.61, eaten: ['lentil soup', 'rice'], note: 'tired', flow: null });
    expect(days[0]!.ratings.get('cramps')).toBe(4);
  });
  it('tells a cell it cannot read, and keeps the rest of the row', () => {
    const { record, findings } = read(table('2026-09-14,heavy,,,9,,'));
    expect(findings.map((f) => f.code)).toContain('bad-cell');
    expect(record.days[0]!.flow).toBe('heavy');
    expect(record.days[0]!.ratings.size).toBe(0);
  });
  it('reads semicolons and quotes', () => {
    expect(read('date;flow;note\n01.09.2026;heavy;"a; b"').record.days[0]!.note).toBe('a; b');
  });
  it('asks for the order of its dates too', () => {
    expect(codes('date,flow\n03/04/2026,heavy')).toContain('ambiguous-order');
    expect(starts('date,flow\n03/04/2026,heavy', 'day-first')).toEqual(['2026-04-03']);
  });
  it('hears dark notes', () => {
    expect(read(table('2026-09-14,,,,,,I want to die')).record.answers).toEqual(['severe-mood']);
  });
});
