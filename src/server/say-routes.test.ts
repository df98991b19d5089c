import { describe, expect, it } from 'vitest';
import { readStatementGround } from '../adapters/tables/index.ts';
import type { Desk } from '../app/desk.ts';
import type { DishReport, NutrientReport } from '../app/dish-report.ts';
import type { SayReport } from '../app/say-report.ts';
import { sayRoutes } from './say-routes.ts';

// An invented worked-out dish, so that the test needs no food tables.
const nutrient = (id: NutrientReport['id'], value: number | null): NutrientReport => ({
  id, name: id, unit: 'mg', group: 'mineral', state: value === null ? 'unknown' : 'complete', unknownShare: value === null ? 1 : 0,
  portion: value === null ? null : { low: value * 0.9, value, high: value * 1.1 }, per100g: value, pot: value, reference: null, top: [], words: '',
});
const report = {
  title: 'An invented stew', lines: [], nutrients: [nutrient('iron', 20), nutrient('zinc', null)], cautions: [],
  servings: { count: 4 }, pot: { portionWeightG: { low: 380, value: 400, high: 420 } },
} as unknown as DishReport;

const kept = new Map<string, unknown>();
const desk = {
  workOut: async () => report,
  store: { values: { get: async (key: string) => kept.get(key) ?? null, put: async (key: string, value: unknown) => void kept.set(key, value), remove: async (key: string) => void kept.delete(key) } },
} as unknown as Desk;
const app = sayRoutes(desk, readStatementGround(), { clock: { now: () => '2026-11-25T10:00:00Z', today: () => '2026-11-25' }, ids: { fresh: () => 'n1' } });
const post = (path: string, body: unknown): Promise<Response> => Promise.resolve(app.request(path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }));

describe('the say routes', () => {
  it('hold a script against a dish under the laws asked for', async () => {
    const response = await post('/say', { text: 'x', script: 'This stew is packed with iron. It cures PCOS.', laws: ['eu', 'us'] });
    const said = (await response.json()) as SayReport;
    expect(said.sentences.map((s) => s.claims.map((c) => c.kind))).toEqual([['say'], ['not-lawful']]);
    expect(said.sentences[0]?.claims[0]?.laws.map((l) => l.kind)).toEqual(['say', 'say']);
    expect(said.holds[0]?.claims.map((c) => c.words)).toContain('High in iron');
    expect(said.sheet.description).toContain('Allergens');
  });
  it('say plainly that another language was not checked', async () => {
    const said = (await (await post('/say', { text: 'x', script: 'Dieser Eintopf ist reich an Eisen und gut für die Nerven.', laws: ['eu'] })).json()) as SayReport;
    expect(said.notChecked).toContain('nothing was checked');
  });
  it('keep her own evidence note and use it', async () => {
    const note = { about: [['parsnip'], ['sleep']], statement: 'Parsnips and sleep', grade: 'traditional-only', finding: 'An invented note.', citation: 'Own notes, 2026' };
    expect((await post('/say/evidence', note)).status).toBe(201);
    const said = (await (await post('/say', { text: 'x', script: 'Parsnip helps you sleep.', laws: ['eu'] })).json()) as SayReport;
    expect(said.sentences[0]?.evidence[0]?.citation).toBe('Own notes, 2026');
  });
});
