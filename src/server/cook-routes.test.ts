import { describe, expect, it } from 'vitest';
import { watch } from '../adapters/solver/index.ts';
import { readCookingTables, readReaderVocabulary } from '../adapters/tables/index.ts';
import { readRecipe } from '../core/dish/index.ts';
import type { ValueStore } from '../app/ports.ts';
import { cookRoutes } from './cook-routes.ts';
import { problem } from './problem.ts';

function memory(): ValueStore {
  const map = new Map<string, string>();
  return {
    get: async (key) => (map.has(key) ? (JSON.parse(map.get(key)!) as unknown) : null),
    put: async (key, value) => void map.set(key, JSON.stringify(value)),
    remove: async (key) => void map.delete(key),
  };
}

function cook(values: ValueStore = memory()) {
  const vocabulary = readReaderVocabulary();
  let count = 0;
  const app = cookRoutes({ tools: { tables: readCookingTables(), readRecipe: (text) => readRecipe(text, vocabulary), watch }, values, ids: { fresh: () => `live-${(count += 1)}` } });
  app.onError((error, c) => problem(c, error));
  const send = async (path: string, body: unknown, method = 'POST') => {
    const response = await app.request(path, { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });
    return { status: response.status, body: (response.status === 204 ? null : await response.json()) as Record<string, never> & { title: string; kind: string; id: string; finished: boolean; live: { steps: Record<string, { doneAt: number | null }>; plan: { begin: number; steps: { step: { id: string } }[] } } } };
  };
  const get = async (path: string) => (await (await app.request(path)).json()) as { id: string; live: { steps: Record<string, { doneAt: number | null }> } } | null;
  return { send, get };
}

const dishes = [{ text: 'Soup\nchop: 5 min, hands\nboil: 20 min, ring, within 5 min' }];
const order = { dishes, when: { kind: 'serve-at', minute: 1170 } };

describe('the routes of the cook plan', () => {
  it('answers an order with a plan', async () => {
    const { status, body } = await cook().send('/cook/plan', order);
    expect(status).toBe(200);
    expect(body).toMatchObject({ kind: 'plan', plan: { begin: 1145, end: 1170, proven: true } });
  });

  it('answers an impossible order with the clash', async () => {
    expect((await cook().send('/cook/plan', { ...order, kitchen: { rings: 0 } })).body).toMatchObject({ kind: 'clash', clash: { limits: [{ kind: 'capacity', of: 'rings' }] } });
  });

  it.each([
    [{ dishes: [], when: order.when }, /at least one dish/],
    [{ dishes: [{ text: 'nothing to cook here' }], when: order.when }, /No cooking steps/],
    [{ dishes, when: { kind: 'serve-at', minute: 'soon' } }, /when\.minute/],
    [{ dishes, when: order.when, kitchen: { cooks: 0 } }, /kitchen\.cooks/],
  ])('refuses %j with a reason', async (body, reason) => {
    const answer = await cook().send('/cook/plan', body);
    expect(answer.status).toBe(400);
    expect(answer.body.title).toMatch(reason);
  });

  it('keeps the evening in the store: a server that starts anew goes on with it', async () => {
    const values = memory();
    const first = cook(values);
    const { body } = await first.send('/cook/live', order);
    const chop = body.live.plan.steps[0]!.step.id;
    await first.send(`/cook/live/${body.id}/tap`, { minute: 1149.5, tap: { kind: 'done', step: chop } });
    const again = await cook(values).get('/cook/live?minute=1150');
    expect(again!.id).toBe(body.id);
    expect(again!.live.steps[chop]!.doneAt).toBe(1149);
  });

  it('takes two taps in the same moment one after the other', async () => {
    const { send, get } = cook();
    const { body } = await send('/cook/live', { ...order, dishes: [...dishes, { text: 'Salad\ncold\ntoss: 4 min, hands' }] });
    const ids = body.live.plan.steps.map((entry) => entry.step.id);
    await Promise.all(ids.map((step) => send(`/cook/live/${body.id}/tap`, { minute: 1169, tap: { kind: 'done', step } })));
    const now = await get('/cook/live?minute=1170');
    expect(Object.values(now!.live.steps).every((step) => step.doneAt !== null)).toBe(true);
    expect(Object.keys(now!.live.steps)).toHaveLength(ids.length);
  });

  it('refuses a tap for an evening that is over and forgets it when told', async () => {
    const { send, get } = cook();
    const { body } = await send('/cook/live', order);
    expect((await send(`/cook/live/${body.id}`, undefined, 'DELETE')).status).toBe(204);
    expect(await get('/cook/live?minute=1150')).toBeNull();
    expect((await send(`/cook/live/${body.id}/tap`, { minute: 1150, tap: { kind: 'done', step: 'd1/1' } })).status).toBe(400);
  });
});
