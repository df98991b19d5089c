import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { readStatementGround } from '../adapters/tables/index.ts';
import { usualChoices } from '../app/dish-choices.ts';
import type { SayReport } from '../app/say-report.ts';
import { AppError } from '../errors.ts';
import { sayRoutes } from '../server/say-routes.ts';
import { sayCommand } from './say-command.ts';
import { changeDeskOf, openStoredDesk, randomIds } from './wire.ts';

// Invented dishes and words.
const stew = 'Lentil and kale pot\nServes 2\n\n150 g dried green lentils\n200 g curly kale\n1 tbsp olive oil\n1 stick celery\n\nBoil the lentils for 25 minutes. Add the rest and simmer for 5 minutes.';
const pie = 'Cheese and butter pie\nServes 2\n\n200 g cheddar\n60 g butter\n150 g plain flour\n\nBake for 30 minutes.';
const script = 'This pot is packed with fibre. It cures cramps. It has less fat than the cheese pie.';
const folder = mkdtempSync(join(tmpdir(), 'truepot-say-'));
const file = join(folder, 'truepot.db');
const path = (name: string): string => join(folder, name);
const ground = readStatementGround();
const today = '2026-11-25';

beforeAll(async () => {
  writeFileSync(path('stew.txt'), stew);
  writeFileSync(path('pie.txt'), pie);
  writeFileSync(path('script.txt'), script);
  const desk = await openStoredDesk(file);
  await desk.store.dishes.create({ name: 'Our pie', text: pie, choices: usualChoices });
  await desk.store.values.put('evidence-notes', [{ id: 'own-1', about: [['pot'], ['cramps']], statement: 'Pots and cramps', grade: 'traditional-only', finding: 'An invented note.', citation: 'Own notes, 2026', doi: null, population: '', dose: null, doseG: null, doseFood: [], checked: 'memory' }]);
  await desk.store.close();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
afterEach(() => {
  vi.restoreAllMocks();
  process.exitCode = 0;
});

async function run(...words: string[]): Promise<string> {
  const out: string[] = [];
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => out.push(String(text)) > 0);
  const open = async () => {
    const desk = await openStoredDesk(file);
    const change = changeDeskOf(desk);
    return { desk, allergensOf: (dish: Parameters<typeof change.allergens>[0]) => change.allergens(dish) };
  };
  await sayCommand({ open, ground: () => ground, screen: { width: 100, colour: false }, today: () => today }).exitOverride().parseAsync(words, { from: 'user' });
  vi.restoreAllMocks();
  return out.join('');
}

describe('truepot say', () => {
  it('says the same as the desk: allergen line, her own notes, comparison and all', async () => {
    const said = JSON.parse(await run(path('stew.txt'), path('script.txt'), '--law', 'eu,us', '--than', path('pie.txt'), '--json')) as SayReport;
    const desk = await openStoredDesk(file);
    const change = changeDeskOf(desk);
    const routes = sayRoutes(desk, ground, { clock: { now: () => `${today}T10:00:00Z`, today: () => today }, ids: randomIds(), allergensOf: (dish) => change.allergens(dish) });
    const body = { text: stew, script, laws: ['eu', 'us'], other: { text: pie } };
    const served = (await (await routes.request('/say', { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })).json()) as SayReport;
    await desk.store.close();
    expect(said).toEqual(served);
    expect(said.sheet.description).toContain('Allergens: contains celery');
    expect(said.compared?.other).toBe('Cheese and butter pie');
  });

  it('shows which dishes are compared and how each claim was read', async () => {
    const page = await run(path('stew.txt'), path('script.txt'), '--law', 'us', '--than', 'Our pie');
    expect(page).toContain('“Lentil and kale pot” is compared with “Cheese and butter pie”, in 100 g of each as eaten.');
    expect(page).toMatch(/Read as a statement on illness by: \w+/);
  });

  it('shows the words that must stand beside a claim, also in the text for publication, with what they point to', async () => {
    writeFileSync(path('calcium.txt'), 'This pie is a source of calcium.');
    expect(await run(path('pie.txt'), path('calcium.txt'), '--law', 'us')).toMatch(/Beside it must stand: “See nutrition information for fat, saturated\s+fat/);
    const sheet = await run(path('pie.txt'), path('calcium.txt'), '--law', 'us', '--sheet');
    expect(sheet).toContain('See nutrition information for fat, saturated fat, cholesterol and sodium content.');
    expect(sheet).toMatch(/Nutrition information, one portion: fat [\d.]+ g, saturated/);
    expect(await run(path('pie.txt'), path('calcium.txt'), '--law', 'eu', '--sheet')).not.toContain('See nutrition information');
  });

  it('uses her own notes', async () => {
    writeFileSync(path('own.txt'), 'This pot eases cramps.');
    expect(await run(path('stew.txt'), path('own.txt'))).toContain('An invented note.');
  });

  it('names the saved dishes when the dish to compare with is neither a file nor one of them', async () => {
    const failed = await run(path('stew.txt'), path('script.txt'), '--than', 'Our pies').catch((error: unknown) => error);
    expect(failed).toBeInstanceOf(AppError);
    expect((failed as AppError).data['what']).toBe('There is no file and no saved dish called “Our pies”. Give the path of a recipe file, or the name of a saved dish as it is written. Saved dishes: “Our pie”.');
  });

  it('refuses to read two things from standard input', async () => {
    await expect(run('-', '-')).rejects.toMatchObject({ code: 'bad-input' });
  });
});
