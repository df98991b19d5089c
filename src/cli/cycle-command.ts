import { writeFile } from 'node:fs/promises';
import { Command, InvalidArgumentError, Option } from 'commander';
import { parse } from 'yaml';
import { calendarFile } from '../adapters/exchange/calendar-file.ts';
import { cyclePage } from '../adapters/print/cycle-page.ts';
import { calendarSpans } from '../app/cycle-calendar.ts';
import type { CycleDesk, CycleReport } from '../app/cycle-report.ts';
import { day, readIsoDate, type Day } from '../core/calendar/index.ts';
import type { DateOrder } from '../core/cycle/index.ts';
import { readScheme, type Scheme } from '../core/scheme/index.ts';
import { AppError } from '../errors.ts';
import { notForContraception } from '../messages/cycle.ts';
import { cycleWords } from '../messages/cycle-words.ts';
import { schemeProblemText } from '../messages/scheme.ts';
import { cycleJson } from './cycle-json.ts';
import { cycleView } from './cycle-view.ts';
import { doctorSummary } from './doctor-summary.ts';
import { exitCodes } from './exit-codes.ts';
import { readInput } from './read-input.ts';
import type { Screen } from './screen.ts';

interface CycleOptions {
  on?: Day;
  scheme?: string;
  ics?: boolean;
  named?: boolean;
  order?: DateOrder;
  days: number;
  noneSince?: boolean;
  menuChanged?: Day;
  region: string;
  summary?: boolean;
  json?: boolean;
  page?: string;
  seed: number;
}

function dayOption(text: string): Day {
  const read = readIsoDate(text);
  if (read === null) throw new InvalidArgumentError('Write the date as 2026-03-09.');
  return read;
}

function wholeNumber(text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1 || value > 400) throw new InvalidArgumentError('It must be a whole number from 1 to 400.');
  return value;
}

/** A scheme shipped with Truepot by its id, or a file of her own. */
async function chosenScheme(desk: CycleDesk, wanted: string | undefined): Promise<Scheme> {
  const shipped = desk.tables.schemes.find((s) => s.id === (wanted ?? 'no-phase-rules'));
  if (shipped) return shipped;
  const text = await readInput(wanted!);
  let value: unknown;
  try {
    value = parse(text);
  } catch (cause) {
    throw new AppError('bad-input', { what: `The scheme ${wanted} is not written as YAML or JSON: ${cause instanceof Error ? cause.message.split('\n')[0]! : ''}` }, cause);
  }
  const { scheme, problems } = readScheme(value);
  if (!scheme) throw new AppError('bad-input', { what: `The scheme ${wanted} cannot be used:\n${problems.map((p) => `  ${schemeProblemText(p)}`).join('\n')}` });
  return scheme;
}

/** Today on the clock of this machine, as a calendar day. */
function today(): Day {
  const now = new Date();
  return day(`${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`);
}

function icsOf(report: CycleReport, scheme: Scheme, named: boolean): string {
  const titles = new Map(scheme.rules.map((r) => [r.id, r.title]));
  const entries = calendarSpans(report).map((span, i) => {
    const kitchen = `Kitchen plan${span.ruleId === null ? '' : `: ${titles.get(span.ruleId) ?? span.ruleId}`}`;
    return {
      id: named ? span.id : `plan-${span.from}-${i}`,
      from: span.from,
      to: span.to,
      title: named ? (span.kind === 'next-start' ? 'Period may start (eight times in ten)' : kitchen) : 'Kitchen plan',
      text: named ? notForContraception : '',
    };
  });
  return calendarFile('Kitchen plan', entries, report.today);
}

async function writePage(file: string, page: string): Promise<void> {
  try {
    await writeFile(file, page);
  } catch (cause) {
    throw new AppError('bad-input', { what: `The page cannot be written to ${file}. Check that the folder exists.` }, cause);
  }
  process.stdout.write(`Written to ${file}.\n`);
}

/** `truepot cycle FILE`: reads a record and prints forecast, days, scheme and what to take to a doctor. Keeps nothing. */
export function cycleCommand(openDesk: () => CycleDesk | Promise<CycleDesk>, screen: Screen): Command {
  return new Command('cycle')
    .description(`Read a cycle record: when the next period may start, what each day may be, what to take to a doctor. ${notForContraception}`)
    .argument('<file>', 'a list of first days of periods, or a table (CSV) by day; - reads standard input')
    .option('--on <date>', 'the day to reckon from, for example 2026-03-09 (usual: today)', dayOption)
    .option('--scheme <file>', 'phase rules to lay over the days: a file, demo-four-pots, or no-phase-rules (usual)')
    .addOption(new Option('--order <order>', 'whether 03/04 is the 3rd of April or March the 4th').choices(['day-first', 'month-first']))
    .option('--days <n>', 'how many days to show', wholeNumber, 42)
    .option('--none-since', 'she says that no period has started since the last one in the record')
    .option('--menu-changed <date>', 'compare day notes before and after a change of menu', dayOption)
    .option('--region <code>', 'whose crisis line is named, for example GB, US, AU', 'GB')
    .option('--seed <n>', 'seed of the drawn futures', wholeNumber, 1)
    .option('--summary', 'print a one-page summary to take to a doctor')
    .option('--ics', 'print a calendar file (RFC 5545); every entry is called “Kitchen plan”')
    .option('--named', 'with --ics: call the entries by what they are')
    .option('--page <file>', 'write a page with pictures and tables to read or print (HTML)')
    .option('--json', 'print everything as JSON')
    .action(async (file: string, options: CycleOptions) => {
      const text = await readInput(file);
      const desk = await openDesk();
      const scheme = await chosenScheme(desk, options.scheme);
      const report = desk.workOut(text, { today: options.on ?? today(), order: options.order ?? null, scheme, days: options.days, noneSince: options.noneSince ?? false, menuChanged: options.menuChanged ?? null, seed: options.seed });
      const lines = desk.tables.referral.crisisLines;
      const crisisLine = (lines.find((l) => l.region === options.region.toUpperCase()) ?? lines.at(-1)!).text;
      if (options.page !== undefined) await writePage(options.page, cyclePage(report, { usual: desk.tables.referral.limits.adult, crisisLine }));
      else if (options.ics) process.stdout.write(icsOf(report, scheme, options.named ?? false));
      else if (options.json) process.stdout.write(`${JSON.stringify(cycleJson(report), null, 2)}\n`);
      else if (options.summary) process.stdout.write(doctorSummary(report, { crisisLine, width: Math.min(screen.width, 90) }));
      else process.stdout.write(cycleView(cycleWords(report, crisisLine), scheme.name, screen));
      if (report.record.starts.length === 0 && report.record.person.states.length === 0) process.exitCode = exitCodes.nothingRead;
    });
}
