import { join } from 'node:path';
import type { Hono } from 'hono';
import { Hono as App } from 'hono';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { countingIds, steppingClock } from '../../tests/contract/store-contract.ts';
import { openEmbeddedStore } from '../adapters/store/index.ts';
import { readChangeTables, readDishTables } from '../adapters/tables/index.ts';
import { createChangeDesk } from '../app/change-desk.ts';
import type { Store } from '../app/ports.ts';
import { changeRoutes } from './change-routes.ts';
import { problem } from './problem.ts';

let app: Hono;
let store: Store;
beforeAll(async () => {
  store = await openEmbeddedStore({ file: ':memory:', migrations: join(import.meta.dirname, '../../migrations') }, steppingClock(), countingIds());
  const tables = readDishTables();
  app = new App();
  app.onError((error, c) => problem(c, error));
  app.route('/', changeRoutes(createChangeDesk({ tables: () => tables, change: readChangeTables(), values: store.values, dishes: store.dishes, clock: steppingClock(), ids: countingIds() })));
});
afterAll(() => store.close());

const send = async (method: string, path: string, body: unknown): Promise<{ status: number; body: Record<string, unknown> }> => {
  const response = await app.request(path, { method, body: JSON.stringify(body), headers: { 'content-type': 'application/json' } });
  return { status: response.status, body: (await response.json()) as Record<string, unknown> };
};
const text = 'Oats\nServes 1\n\nIngredients\n50 g rolled oats\n200 ml whole milk\n';

describe('the addresses of changing a dish', () => {
  it('scale, swap, wish, cost, compare and allergens answer', async () => {
    expect((await send('POST', '/change/scale', { text, aim: { kind: 'portions', count: 3 } })).body['text']).toContain('150 g rolled oats');
    const allergens = await send('POST', '/change/allergens', { text });
    const lines = allergens.body['lines'] as { lineId: string }[];
    const swap = await send('POST', '/change/swap', { text, lineId: lines[1]?.lineId, limit: 3 });
    expect(swap.body['options']).toHaveLength(3);
    expect((await send('POST', '/change/wish', { text, wish: { without: ['milk'] } })).body['answers']).not.toEqual([]);
    expect((await send('POST', '/change/cost', { text })).body['missing']).toBe(2);
    expect((await send('POST', '/change/compare', { dishes: [{ name: 'a', text }, { name: 'b', text }] })).status).toBe(200);
  });

  it.each([
    ['POST', '/change/scale', { text, aim: { kind: 'portions', count: -1 } }, /aim/],
    ['POST', '/change/scale', { text, aim: { kind: 'nutrient', nutrient: 'vibes', portionAmount: 3 } }, /nutrient/],
    ['POST', '/change/wish', { text, wish: { swaps: 9 } }, /swaps/],
    ['POST', '/change/wish', { text, wish: { without: ['moonlight'] } }, /moonlight/],
    ['POST', '/change/compare', { dishes: [{ name: 'a', text }] }, /two/],
    ['PUT', '/prices', { rows: [{ food: 'kale', pack: '1 kg', price: 0, shop: '', date: '2026-01-01' }] }, /price/],
    ['PUT', '/seasons', { name: 'kale', months: 'spring' }, /months/],
  ])('%s %s says which field is off', async (method, path, body, words) => {
    const answer = await send(method, path, body);
    expect(answer.status).toBe(400);
    expect(answer.body['title']).toMatch(words);
  });

  it('give prices out as a CSV file', async () => {
    await send('PUT', '/prices', { rows: [{ food: 'kale', pack: '200 g', price: 1.2, shop: 'invented', date: '2026-01-01' }] });
    const response = await app.request('/prices/csv');
    expect(response.headers.get('content-type')).toContain('text/csv');
    expect(await response.text()).toContain('kale,200 g,1.2,invented,2026-01-01');
  });
});
