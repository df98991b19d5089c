import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { exitCodes } from './exit-codes.ts';

const root = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'truepot-cli-'));
afterAll(() => rmSync(folder, { recursive: true }));

function truepot(args: string[], input = ''): { status: number | null; out: string; err: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, 'dist/cli.js'), ...args], { input, encoding: 'utf8', env: { ...process.env, TRUEPOT_HOME: folder, COLUMNS: '100' } });
  return { status, out: stdout, err: stderr };
}
const demo = join(root, 'data/demo/white-bean-and-chard-stew.txt');

describe('truepot dish', () => {
  it('prints what one portion gives', () => {
    const { status, out } = truepot(['dish', demo]);
    expect(status).toBe(exitCodes.ok);
    for (const part of ['White bean and chard stew', 'Serves 4', 'Magnesium', 'Not in the tables', 'Standard Reference']) expect(out).toContain(part);
  });

  it('reads standard input, and divides by the portions asked for', () => {
    const kcal = (serves: string): number => (JSON.parse(truepot(['dish', '-', '--serves', serves, '--json'], '400 g kale').out) as { energy: { declaredKcal: number } }).energy.declaredKcal;
    expect(kcal('1')).toBeCloseTo(2 * kcal('2'), 8);
  });

  it('prints the whole path of one number', () => {
    const { status, out } = truepot(['dish', demo, '--explain', 'iron']);
    expect(status).toBe(exitCodes.ok);
    expect(out).toContain('Iron in one portion');
    expect(out).toMatch(/÷ 4 portions = /);
  });

  it.each([
    [['dish', '/no/such/file'], exitCodes.unreadable, /cannot be read/],
    [['dish', demo, '--serves', '-3'], exitCodes.usage, /above 0/],
    [['dish', demo, '--explain', 'vibes'], exitCodes.usage, /not a nutrient/],
    [['dish', demo, '--for', 'martians'], exitCodes.usage, /martians/],
    [['dish', demo, '--authority', 'me'], exitCodes.usage, /nasem/],
    [['dish'], exitCodes.usage, /missing required argument/],
    [['cake'], exitCodes.usage, /unknown command|too many arguments/],
  ])('answers %j with its status and words', (args, status, words) => {
    const said = truepot(args);
    expect(said.status).toBe(status);
    expect(said.err).toMatch(words);
  });

  it('says so when there is nothing like a recipe', () => {
    const { status, out } = truepot(['dish', '-'], '');
    expect(status).toBe(exitCodes.nothingRead);
    expect(out).toContain('No ingredients were found');
  });

  it('says so when the saved dishes cannot be opened, and leaves the file', () => {
    writeFileSync(join(folder, 'truepot.db'), 'shopping list '.repeat(200));
    const { status, err } = truepot(['dish', demo]);
    expect(status).toBe(exitCodes.store);
    expect(err).toContain('cannot be opened');
    rmSync(join(folder, 'truepot.db'));
  });
});
