import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { compileCycle } from '../../scripts/tables/cycle.ts';
import { knownSources } from '../../scripts/tables/known-sources.ts';
import { cycleDesk } from '../app/cycle-report.ts';
import { AppError } from '../errors.ts';
import { errorText } from '../messages/errors.ts';
import { notForContraception } from '../messages/cycle.ts';
import { cycleCommand } from './cycle-command.ts';

const desk = cycleDesk(compileCycle('data', knownSources('data')));
const folder = mkdtempSync(join(tmpdir(), 'cycle-'));

async function run(text: string, ...options: string[]): Promise<string> {
  const file = join(folder, 'record.txt');
  writeFileSync(file, text);
  let out = '';
  const spy = vi.spyOn(process.stdout, 'write').mockImplementation((chunk) => {
    out += String(chunk);
    return true;
  });
  try {
    await new Command().exitOverride().addCommand(cycleCommand(() => desk, { width: 120, colour: false }).exitOverride()).parseAsync(['node', 'truepot', 'cycle', file, ...options]);
  } finally {
    spy.mockRestore();
  }
  return out;
}
afterEach(() => {
  process.exitCode = 0;
});

const list = 'age: 33\n2026-01-05\n2026-02-09\n2026-03-17\n2026-04-20\n2026-05-27';
const on = ['--on', '2026-06-14'];
const intimate = /period|cycle|ovulat|menstru|bleed|fertil|hormon|premenstr/i;

describe('truepot cycle', () => {
  it('gives ranges, and says on screen what it is not for', async () => {
    const out = await run(list, ...on);
    expect(out).toContain('eight times in ten');
    expect(out).toContain(notForContraception.slice(0, 50));
    expect(out).toContain('4 cycles of hers');
  });
  it('labels a forecast without any cycle of hers as other women\'s', async () => {
    expect(await run('2026-06-01', ...on)).toContain('other women’s cycles');
  });
  it('shows what fixed days would say beside the anchored advice, and that no trial supports either', async () => {
    const out = await run(list, ...on, '--scheme', 'demo-four-pots');
    expect(out).toContain('In fixed days');
    expect(out).toMatch(/would say something else on \d+ days/);
    expect(out).toContain('No trial was found');
  });
  it('names nothing intimate in a calendar unless asked', async () => {
    const out = await run(list, ...on, '--ics', '--scheme', 'demo-four-pots');
    expect(out).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect(out).not.toMatch(intimate);
    expect(new Set(out.match(/SUMMARY:.*/g))).toEqual(new Set(['SUMMARY:Kitchen plan']));
    expect(await run(list, ...on, '--ics', '--named')).toMatch(intimate);
  });
  it('asks instead of guessing', async () => {
    expect(await run('03/04/2026\n01/05/2026', ...on)).toContain('Which comes first in your dates');
    expect(await run('03/04/2026\n01/05/2026', ...on, '--order', 'day-first')).toContain('Last start 2026-05-01');
  });
  it('puts a red flag and the crisis line of the region first', async () => {
    const out = await run(`${list}\nsuicidal before every period`, ...on, '--region', 'us');
    expect(out.indexOf('Please read first')).toBe(0);
    expect(out).toContain('988');
    expect(await run(`${list}\nsuicidal`, ...on, '--region', 'XX')).toContain('emergency number of your country');
  });
  it('gives plain food advice and a referral in pregnancy, whatever the scheme', async () => {
    const out = await run(`pregnant\n${list}`, ...on, '--scheme', 'demo-four-pots');
    expect(out).toContain('Plain food advice');
    expect(out).toContain('midwife or doctor');
    expect(out).not.toContain('Salad bowl');
    expect(out).not.toContain('hours without food');
  });
  it('prints JSON with dates as text', async () => {
    const json = JSON.parse(await run(list, ...on, '--json')) as { forecast: { basis: string; starts: { likely: string }[] }; days: unknown[] };
    expect(json.forecast.basis).toBe('own');
    expect(json.forecast.starts[0]!.likely).toMatch(/^2026-0[67]-\d\d$/);
    expect(json.days).toHaveLength(42);
  });
  it('writes a page that carries the same warning and a table beside every picture', async () => {
    const file = join(folder, 'page.html');
    await run(list, ...on, '--page', file);
    const page = readFileSync(file, 'utf8');
    expect(page).toContain(notForContraception);
    expect(page.match(/<svg /g)!.length).toBe(page.match(/<table>/g)!.length);
    expect(page.match(/<title id=/g)!.length).toBe(page.match(/<svg /g)!.length);
    expect(page).not.toMatch(/pink|#f[0-9a-f]c[0-9a-f]c/i);
  });
  it('prints one page for a doctor', async () => {
    const out = await run(list, ...on, '--summary');
    expect(out).toContain('4 whole cycles since 2026-01-05: 35, 36, 34, 37 days');
    expect(out.split('\n').length).toBeLessThan(60);
  });
  it('tells what is wrong with a scheme file, all at once', async () => {
    const scheme = join(folder, 'scheme.yaml');
    writeFileSync(scheme, 'id: x\nname: X\nrules: [{ id: a }]\n');
    const error = await run(list, ...on, '--scheme', scheme).catch((e: unknown) => e);
    expect(error).toBeInstanceOf(AppError);
    expect(errorText(error as AppError)).toMatch(/rule 1\.title: is missing[\s\S]*rule 1\.evidence: is missing/);
    writeFileSync(scheme, 'id: [x');
    expect(errorText((await run(list, ...on, '--scheme', scheme).catch((e: unknown) => e)) as AppError)).toContain('not written as YAML');
  });
  it('says that nothing was read in an empty file', async () => {
    const out = await run('', ...on);
    expect(out).toContain('No first day of a period was found');
    expect(process.exitCode).toBe(4);
  });
});
