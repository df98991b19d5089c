import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { watch } from '../adapters/solver/index.ts';
import { readCookingTables, readReaderVocabulary } from '../adapters/tables/index.ts';
import { readRecipe } from '../core/dish/index.ts';
import { cookCommand } from './cook-command.ts';

const cases = join(import.meta.dirname, '../../tests/cases/cooking');

async function run(...words: string[]): Promise<string> {
  const out: string[] = [];
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => out.push(String(text)) > 0);
  const vocabulary = readReaderVocabulary();
  const command = cookCommand({
    tools: () => ({ tables: readCookingTables(), readRecipe: (text) => readRecipe(text, vocabulary), watch }),
    savedDish: async (name) => (name === 'My soup' ? { name, text: 'My soup\nchop: 5 min, hands\nboil: 20 min, ring' } : null),
    clock: { now: () => '2026-11-25T16:00:00.000Z', today: () => '2026-11-25' },
    screen: { width: 110, colour: false },
  }).exitOverride();
  await command.parseAsync(words, { from: 'user' });
  return out.join('');
}

afterEach(() => {
  vi.restoreAllMocks();
  process.exitCode = 0;
});

describe('truepot cook', () => {
  it('prints when to begin, the running sheet and how long things may wait', async () => {
    const page = await run(join(cases, 'family-dinner.txt'), join(cases, 'greens.txt'), '--ready', '19:30', '--rings', '3');
    expect(page).toMatch(/Begin at 1[678]:\d\d, on the table at 19:30/);
    expect(page).toContain('Set the oven to 200 °C');
    expect(page).toContain('Proven: no plan does better.');
    expect(page).toMatch(/Ready on time on \d+ % of 1000 simulated evenings/);
  });

  it('cooks a saved dish by its name, from now when no time is given', async () => {
    expect(await run('My soup')).toContain('My soup');
  });

  it('sets a script beside the steps and names what does not fit', async () => {
    const page = await run(join(cases, 'family-dinner.txt'), '--ready', '19:30', '--script', join(cases, 'script.txt'));
    expect(page).toContain('Do / Say');
    expect(page).toContain('no step answers to');
    expect(page).toContain('Silences');
  });

  it('says what clashes and ends with its own status when there is no plan', async () => {
    const page = await run('My soup', '--ready', '19:30', '--rings', '0');
    expect(page).toContain('there is no ring');
    expect(page).toContain('with 1 ring it can be done');
    expect(process.exitCode).toBe(4);
  });

  it('prints a calendar file on request', async () => {
    expect(await run('My soup', '--ready', '19:30', '--ics')).toMatch(/^BEGIN:VCALENDAR[\s\S]*DTSTART:20261125T190500[\s\S]*END:VCALENDAR/);
  });

  it('prints the whole plan as JSON on request', async () => {
    expect(JSON.parse(await run('My soup', '--ready', '19:30', '--json'))).toMatchObject({ kind: 'plan', plan: { end: 1170 } });
  });

  it.each([
    [['no such dish'], /neither a saved dish nor a file/],
    [['My soup', '--ready', '25:99'], /hours and minutes/],
    [['My soup', '--rings', 'many'], /whole number/],
  ])('refuses %j with a reason', async (words, reason) => {
    vi.spyOn(process.stderr, 'write').mockImplementation(() => true);
    await expect(run(...words)).rejects.toSatisfy((error: Error & { data?: { what?: string } }) => reason.test(`${error.message} ${error.data?.what ?? ''}`));
  });
});
