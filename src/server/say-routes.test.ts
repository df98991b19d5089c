import { describe, expect, it } from 'vitest';
import { readStatementGround } from '../adapters/tables/index.ts';
import type { Desk } from '../app/desk.ts';
import type { DishReport, NutrientReport } from '../app/dish-report.ts';
import type { SayReport } from '../app/say-report.ts';
import { AppError } from '../errors.ts';
import { sayRoutes } from './say-routes.ts';

// An invented worked-out dish, so that the test needs no food tables.
const nutrient = (id: NutrientReport['id'], value: number | null): NutrientReport => ({
  id, name: id, unit: 'mg', group: 'mineral', state: value === null ? 'unknown' : 'complete', unknownShare: value === null ? 1 : 0,
  portion: value === null ? null : { low: value * 0.9, value, high: value * 1.1 }, per100g: value, pot: value, reference: null, top: [], words: '',
});
const dishOf = (title: string, sodium: number): DishReport => ({
  title, lines: [], nutrients: [nutrient('iron', 20), nutrient('zinc', null), nutrient('sodium', sodium)], cautions: [],
  servings: { count: 4 }, pot: { portionWeightG: { low: 380, value: 400, high: 420 } },
}) as unknown as DishReport;

const kept = new Map<string, unknown>();
const desk = {
  workOut: async (text: string) => (text === 'the other' ? dishOf('An invented roast', 2000) : dishOf('An invented stew', 1000)),
  store: { dishes: { get: async (id: string) => {
    if (id !== 'kept') throw new AppError('unknown-dish');
    return { text: 'the other', choices: {} };
  } }, values: { get: async (key: string) => kept.get(key) ?? null, put: async (key: string, value: unknown) => void kept.set(key, value), remove: async (key: string) => void kept.delete(key) } },
} as unknown as Desk;
const app = sayRoutes(desk, readStatementGround(), { clock: { now: () => '2026-11-25T10:00:00Z', today: () => '2026-11-25' }, ids: { fresh: () => 'n1' } });
app.onError((error) => {
  throw error instanceof AppError && error.data['what'] !== undefined ? new Error(String(error.data['what'])) : error;
});
const post = (path: string, body: unknown): Promise<Response> => send('POST', path, body);
const send = (method: string, path: string, body: unknown): Promise<Response> => Promise.resolve(app.request(path, { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }));

describe('the say routes', () => {
  it('hold a script against a dish under the laws asked for', async () => {
    const response = await post('/say', { text: 'x', script: 'This stew is packed with iron. It cures PCOS.', laws: ['eu', 'us'] });
    const said = (await response.json()) as SayReport;
    expect(said.sentences.map((s) => s.claims.map((c) => c.kind))).toEqual([['say-with'], ['not-lawful']]);
    expect(said.sentences[0]?.claims[0]?.laws.map((l) => l.kind)).toEqual(['say', 'say-with']);
    expect(said.sentences[0]?.claims[0]?.laws[1]?.beside).toEqual(['See nutrition information for fat, saturated fat, cholesterol and sodium content.']);
    expect(said.sentences[0]?.claims[0]?.readAs).toMatch(/^Read as a statement on what it contains by/);
    expect(said.sheet.description).toContain('This stew is packed with iron. See nutrition information for fat');
    expect(said.holds.map((h) => h.beside.length)).toEqual([0, 1]);
    expect(said.sheet.description).toContain('Nutrition information, one portion: fat not known');
    expect(said.holds[0]?.claims.map((c) => c.words)).toContain('High in iron');
    expect(said.sheet.description).toContain('Allergens');
  });
  it.each(['This is such a healthy stew.', 'It is a nutritious bowl.', 'This stew is so healthy and nutritious!'])('do not let “healthy” through in the United States and name the clause: %s', async (script) => {
    const said = (await (await post('/say', { text: 'x', script, laws: ['us'] })).json()) as SayReport;
    const laws = said.sentences.flatMap((s) => s.claims.flatMap((c) => c.laws));
    expect(laws.map((l) => l.kind)).toContain('unknown');
    expect(laws.flatMap((l) => l.clauses)).toContain('21 CFR 101.65(d)');
    expect(laws.flatMap((l) => l.reasons).join(' ')).toContain('Truepot does not work them out');
    expect(said.sentences[0]?.sayable).toBe(false);
  });
  it('say plainly that another language was not checked', async () => {
    const said = (await (await post('/say', { text: 'x', script: 'Dieser Eintopf ist reich an Eisen und gut für die Nerven.', laws: ['eu'] })).json()) as SayReport;
    expect(said.notChecked).toContain('nothing was checked');
  });
  it('keep her own evidence note and use it', async () => {
    const note = { about: [['parsnip'], ['sleep']], statement: 'Parsnips and sleep', grade: 'traditional-only', finding: 'An invented note.', citation: 'Own notes, 2026' };
    expect((await post('/say/evidence', note)).status).toBe(201);
    const said = (await (await post('/say', { text: 'x', script: 'Parsnip helps you sleep.', laws: ['eu'] })).json()) as SayReport;
    expect(said.sentences[0]?.evidence[0]).toMatchObject({ citation: 'Own notes, 2026', checked: 'your own note' });
    const [before] = (await (await app.request('/say/evidence/own')).json()) as { id: string }[];
    const changed = await send('PUT', `/say/evidence/${before?.id}`, { ...note, finding: 'An invented note, changed.' });
    expect(await changed.json()).toMatchObject([{ id: before?.id, finding: 'An invented note, changed.' }]);
    expect(await (await app.request(`/say/evidence/${before?.id}`, { method: 'DELETE' })).json()).toEqual([]);
    await expect(send('PUT', `/say/evidence/${before?.id}`, note)).rejects.toThrow(/not among yours/);
  });
  it.each([
    [{ finding: '' }, 'What was found: write it in 3 to 1,000 letters'],
    [{ about: [[], ['sleep']] }, 'Words by which a sentence finds it: give at least one word'],
    [{ grade: 'proven' }, 'How well it is known: choose one of the list'],
    [{ doi: 'https://example.org' }, 'DOI: a DOI begins with 10.'],
    [{ doseG: -2 }, 'The same in grams a day: a number above 0'],
    [{ citation: 'x', statement: '' }, 'The work: name author'],
  ])('tell what is wrong with a note and how to mend it: %j', async (change, expected) => {
    const note = { about: [['parsnip'], ['sleep']], statement: 'Parsnips and sleep', grade: 'early', finding: 'An invented note.', citation: 'Own notes, 2026', ...change };
    await expect(send('POST', '/say/evidence', note)).rejects.toThrow(expected);
  });
  it('tell of a note that is no JSON at all', async () => {
    await expect(Promise.resolve(app.request('/say/evidence', { method: 'POST', body: 'parsnip' }))).rejects.toThrow(/not kept/);
  });
  it('compare with a second dish, given as text or saved, and tell which two and in what amount', async () => {
    for (const other of [{ text: 'the other' }, { id: 'kept' }]) {
      const said = (await (await post('/say', { text: 'x', script: 'It has less sodium than the invented roast.', laws: ['eu'], other })).json()) as SayReport;
      expect(said.compared?.words).toBe('“An invented stew” is compared with “An invented roast”, in 100 g of each as eaten.');
      expect(said.sentences[0]?.claims[0]).toMatchObject({ class: 'comparison', kind: 'say-with' });
      expect(said.holds[0]?.claims.map((c) => c.words)).toContain('Reduced salt, compared with “An invented roast”');
    }
    const alone = (await (await post('/say', { text: 'x', script: 'It has less sodium than the invented roast.', laws: ['eu'] })).json()) as SayReport;
    expect(alone.compared).toBeNull();
    expect(alone.sentences[0]?.claims[0]?.kind).toBe('not-lawful');
  });
  it('say what to give when the dish to compare with is given wrongly', async () => {
    await expect(post('/say', { text: 'x', script: 'Less salt.', laws: ['eu'], other: { name: 'An invented roast' } })).rejects.toThrow('by the id of a saved dish');
  });
  it('say plainly that a dish to compare with is not among the saved ones', async () => {
    await expect(post('/say', { text: 'x', script: 'Less salt.', laws: ['eu'], other: { id: 'gone' } })).rejects.toThrow('unknown-dish');
  });
});
