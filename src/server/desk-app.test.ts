import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import type { Hono } from 'hono';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { countingIds, steppingClock } from '../../tests/contract/store-contract.ts';
import { openEmbeddedStore } from '../adapters/store/index.ts';
import { readDishTables } from '../adapters/tables/index.ts';
import { createDesk } from '../app/create-desk.ts';
import type { DishReport } from '../app/dish-report.ts';
import type { Store } from '../app/ports.ts';
import { deskParts } from '../cli/wire.ts';
import { deskApp } from './desk-app.ts';

let app: Hono;
let store: Store;
const pages = mkdtempSync(join(tmpdir(), 'truepot-pages-'));
beforeAll(async () => {
  writeFileSync(join(pages, 'index.html'), '<p>the desk</p>');
  writeFileSync(join(pages, '..', 'outside.html'), 'not for you');
  store = await openEmbeddedStore({ file: ':memory:', migrations: join(import.meta.dirname, '../../migrations') }, steppingClock(), countingIds());
  app = deskApp(deskParts(createDesk(readDishTables(), store, []), pages));
});
afterAll(async () => {
  await store.close();
  rmSync(pages, { recursive: true });
});

const at = (path: string, init: RequestInit = {}): Promise<Response> => Promise.resolve(app.request(`http://localhost:8765${path}`, { ...init, headers: { host: 'localhost:8765', 'content-type': 'application/json', ...(init.headers as Record<string, string> | undefined) } }));
const post = (path: string, body: unknown, headers: Record<string, string> = {}): Promise<Response> => at(path, { method: 'POST', body: JSON.stringify(body), headers });
const workOut = async (text: string): Promise<DishReport> => {
  const response = await post('/api/dish/work-out', { text });
  expect(response.status).toBe(200);
  return (await response.json()) as DishReport;
};

describe('the desk’s server', () => {
  it('answers only its own pages on this machine', async () => {
    expect((await at('/api/options', { headers: { host: 'evil.example' } })).status).toBe(403);
    expect((await post('/api/dish/work-out', { text: '' }, { origin: 'https://evil.example' })).status).toBe(403);
    expect((await post('/api/dish/work-out', { text: '' }, { origin: 'http://localhost:8765' })).status).toBe(200);
    expect((await at('/api/options', { headers: { host: '127.0.0.1:8765' } })).status).toBe(200);
  });

  it('gives its page for every address of the desk and nothing outside its folder', async () => {
    for (const path of ['/', '/anything']) expect(await (await at(path)).text()).toBe('<p>the desk</p>');
    for (const path of ['/..%2foutside.html', '/%2e%2e/outside.html', '/%2e%2e%2foutside.html']) expect(await (await at(path)).text()).not.toContain('not for you');
    expect((await at('/api/nothing')).status).toBe(404);
  });

  it('says which field of a request is off', async () => {
    const response = await post('/api/dish/work-out', { text: 'kale', choices: { servings: -2, authority: 'me' } });
    expect(response.status).toBe(400);
    const body = (await response.json()) as { title: string; code: string };
    expect(body.code).toBe('bad-input');
    expect(body.title).toMatch(/choices\.servings.*choices\.authority/s);
    expect((await at('/api/dish/work-out', { method: 'POST', body: '{' })).status).toBe(400);
    expect((await post('/api/dish/explain', { text: 'kale', nutrient: 'vibes' })).status).toBe(400);
    expect((await post('/api/dish/work-out', { text: 'kale', choices: { lifeStage: 'martians' } })).status).toBe(400);
  });

  it('refuses a body beyond its limit in words', async () => {
    const response = await post('/api/dish/work-out', { text: 'x'.repeat(9 * 1024 * 1024) });
    expect(response.status).toBe(413);
    expect(((await response.json()) as { title: string }).title).toContain('too long');
  });

  it('keeps, changes, lists, removes and brings back a dish', async () => {
    const made = (await (await post('/api/dishes', { name: 'Soup', text: '1 leek' })).json()) as { id: string };
    expect((await post('/api/dishes', { name: 'Soup', text: '1 leek' })).status).toBe(409);
    expect((await at(`/api/dishes/${made.id}`, { method: 'PUT', body: JSON.stringify({ text: '2 leeks', choices: {}, label: 'more' }) })).status).toBe(200);
    const versions = (await (await at(`/api/dishes/${made.id}/versions`)).json()) as { version: number }[];
    expect(versions.map((v) => v.version)).toEqual([2, 1]);
    expect((await at(`/api/dishes/${made.id}`, { method: 'DELETE' })).status).toBe(204);
    expect(await (await at('/api/dishes?bin=yes')).json()).toHaveLength(1);
    expect((await post(`/api/dishes/${made.id}/bring-back`, {})).status).toBe(200);
    expect((await at('/api/dishes/none')).status).toBe(404);
  });

  it('refuses an impossible food of her own with every reason', async () => {
    const response = await post('/api/own-foods', { name: '', basis: { kind: 'per-100g' }, printed: { fat: 200 }, source: '', date: '2026-01-02' });
    expect(response.status).toBe(422);
    expect(((await response.json()) as { problems: { code: string }[] }).problems.map((p) => p.code)).toEqual(['no-name', 'no-source', 'too-much', 'parts-exceed-whole']);
  });
});

describe('bad input', () => {
  it.each([
    ['nothing', '', 'no-ingredients'],
    ['only spaces', ' \n\t\n', 'no-ingredients'],
    ['emoji', '🙂🙃\n🍲🍲🍲', 'no-ingredients'],
  ])('%s gives a clear finding and no crash', async (_name, text, code) => {
    const report = await workOut(text);
    expect(report.findings.map((f) => f.code)).toContain(code);
  });

  it('of one line leaves the others computed', async () => {
    const report = await workOut('Serves 2\n200 g kale\n-3 carrots\n20 g dragon scales\nПомидоры 2 шт\n100 kg nutmeg\n1 tbsp olive oil');
    const kale = report.lines.find((l) => l.text.includes('kale'));
    expect(kale?.food.code).toBe('sr28:11233');
    expect(report.lines.find((l) => l.text.includes('dragon'))).toMatchObject({ food: { code: null }, gramsG: { value: 20 } });
    expect(report.nutrients.find((n) => n.id === 'vitamin-c')?.state).toBe('partial');
    expect(report.findings.some((f) => f.code === 'negative-amount')).toBe(true);
    expect(report.findings.some((f) => (f.code === 'absurd-amount' || f.code === 'very-large-amount') && f.severity === 'question')).toBe(true);
    expect(report.lines.find((l) => l.text.includes('nutmeg'))?.gramsG?.value).toBe(100_000);
  });

  it('of a page with broken recipe data still reads the page’s words', async () => {
    const report = await workOut('<html><script type="application/ld+json">{"@type":"Recipe", broken</script><h1>Soup</h1><p>Serves 2</p><ul><li>200 g kale</li><li>1 leek</li></ul></html>');
    expect(report.lines.map((l) => l.food.code)).toContain('sr28:11233');
    expect(report.findings.some((f) => /recipe data/.test(f.text))).toBe(true);
  });

  it('of a nested page, of a megabyte of noise and of 300 lines is answered', async () => {
    await workOut(`<div>${'<div>'.repeat(50_000)}200 g kale`);
    await workOut('%§&/x9 '.repeat(150_000));
    const long = await workOut(`Serves 30\n${Array.from({ length: 300 }, (_, i) => `${i + 1} g kale`).join('\n')}`);
    expect(long.lines).toHaveLength(300);
    expect(long.pot.rawWeightG).toBeGreaterThan(0);
  }, 60_000);

  it('of any kind never breaks the working out', async () => {
    await fc.assert(fc.asyncProperty(fc.string({ unit: 'grapheme', maxLength: 300 }), async (text) => {
      await workOut(text);
    }), { numRuns: 60 });
  }, 60_000);
});
