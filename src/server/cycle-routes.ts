import { Hono } from 'hono';
import { z } from 'zod';
import { calendarFile } from '../adapters/exchange/calendar-file.ts';
import { cyclePictures } from '../adapters/print/cycle-pictures.ts';
import type { CycleAnswer, CycleStart } from '../app/cycle-answer.ts';
import { calendarSpans } from '../app/cycle-calendar.ts';
import type { CycleDesk, CycleReport } from '../app/cycle-report.ts';
import { day, type Day } from '../core/calendar/index.ts';
import { readScheme, type Scheme } from '../core/scheme/index.ts';
import { AppError } from '../errors.ts';
import { cycleWords } from '../messages/cycle-words.ts';
import { schemeProblemText } from '../messages/scheme.ts';
import { readBody } from './requests.ts';

const isoDay = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'write the date as 2026-03-09');
const cycleRequest = z.object({
  text: z.string().max(500_000),
  on: isoDay.nullable().default(null),
  order: z.enum(['day-first', 'month-first']).nullable().default(null),
  /** A scheme shipped with Truepot by its id, or a whole scheme of her own. */
  scheme: z.union([z.string(), z.record(z.string(), z.unknown())]).default('no-phase-rules'),
  days: z.number().int().min(7).max(120).default(42),
  noneSince: z.boolean().default(false),
  menuChanged: isoDay.nullable().default(null),
  region: z.string().max(8).default('GB'),
});

export interface CycleRouteParts {
  readonly desk: CycleDesk;
  /** Today, as a calendar day where the machine stands. */
  readonly today: () => Day;
}

/** POST /cycle: a record in, everything a page shows out. POST /cycle/calendar: the calendar file. Nothing is kept. */
export function cycleRoutes({ desk, today }: CycleRouteParts): Hono {
  const app = new Hono();
  const schemeOf = (wanted: string | Record<string, unknown>): Scheme => {
    if (typeof wanted === 'string') {
      const shipped = desk.tables.schemes.find((s) => s.id === wanted);
      if (!shipped) throw new AppError('bad-input', { what: `There is no scheme called ${wanted}.` });
      return shipped;
    }
    const { scheme, problems } = readScheme(wanted);
    if (!scheme) throw new AppError('bad-input', { what: `The scheme cannot be used: ${problems.map(schemeProblemText).join(' ')}` });
    return scheme;
  };
  const work = (body: z.infer<typeof cycleRequest>): { report: CycleReport; scheme: Scheme } => {
    const scheme = schemeOf(body.scheme);
    const on = body.on === null ? today() : day(body.on);
    return { scheme, report: desk.workOut(body.text, { today: on, order: body.order, scheme, days: body.days, noneSince: body.noneSince, menuChanged: body.menuChanged === null ? null : day(body.menuChanged), seed: 1 }) };
  };

  app.get('/cycle', (c) => c.json<CycleStart>({ schemes: desk.tables.schemes, regions: desk.tables.referral.crisisLines.map((l) => l.region), questions: desk.tables.referral.questions.map((q) => q.ask) }));
  app.post('/cycle', async (c) => {
    const body = await readBody(c.req.raw, cycleRequest);
    const { report, scheme } = work(body);
    const lines = desk.tables.referral.crisisLines;
    const crisisLine = (lines.find((l) => l.region === body.region) ?? lines.at(-1)!).text;
    return c.json<CycleAnswer>({ schemeName: scheme.name, words: cycleWords(report, crisisLine), pictures: cyclePictures(report, desk.tables.referral.limits.adult) });
  });
  app.post('/cycle/calendar', async (c) => {
    const { report } = work(await readBody(c.req.raw, cycleRequest));
    const entries = calendarSpans(report).map((span, i) => ({ id: `plan-${span.from}-${i}`, from: span.from, to: span.to, title: 'Kitchen plan', text: '' }));
    return c.body(calendarFile('Kitchen plan', entries, report.today), 200, { 'content-type': 'text/calendar; charset=utf-8', 'content-disposition': 'attachment; filename="kitchen-plan.ics"' });
  });
  return app;
}
