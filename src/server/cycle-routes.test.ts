import { describe, expect, it } from 'vitest';
import { compileCycle } from '../../scripts/tables/cycle.ts';
import { knownSources } from '../../scripts/tables/known-sources.ts';
import type { CycleAnswer, CycleStart } from '../app/cycle-answer.ts';
import { cycleDesk } from '../app/cycle-report.ts';
import { day } from '../core/calendar/index.ts';
import { notForContraception } from '../messages/cycle.ts';
import { cycleRoutes } from './cycle-routes.ts';
import { problem } from './problem.ts';

const app = cycleRoutes({ desk: cycleDesk(compileCycle('data', knownSources('data'))), today: () => day('2026-06-14') });
app.onError((error, c) => problem(c, error));
const post = (path: string, body: unknown) => app.request(path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });
const text = 'age: 33\n2026-03-17\n2026-04-20\n2026-05-27';

describe('the cycle routes', () => {
  it('give words and pictures, with what they are not for', async () => {
    const answer = (await (await post('/cycle', { text, scheme: 'demo-four-pots' })).json()) as CycleAnswer;
    expect(answer.words.warning).toContain(notForContraception);
    expect(answer.pictures.every((p) => p.svg.startsWith('<svg') && p.table.rows.length > 0)).toBe(true);
    expect(answer.words.days[0]).toMatchObject({ day: '2026-06-14' });
  });
  it('take a scheme of her own, and tell what is wrong with it', async () => {
    const { schemes } = (await (await app.request('/cycle')).json()) as CycleStart;
    expect((await post('/cycle', { text, scheme: { ...schemes[1]!, name: 'Mine' } })).status).toBe(200);
    const refused = await post('/cycle', { text, scheme: { id: 'x' } });
    expect(refused.status).toBeGreaterThanOrEqual(400);
    expect(JSON.stringify(await refused.json())).toContain('scheme.name: is missing');
  });
  it('answer bad days and unknown schemes with words', async () => {
    expect((await post('/cycle', { text, on: '14.6.2026' })).status).toBeGreaterThanOrEqual(400);
    expect((await post('/cycle', { text, on: '2026-02-30' })).status).toBeGreaterThanOrEqual(400);
    expect((await post('/cycle', { text, scheme: 'nope' })).status).toBeGreaterThanOrEqual(400);
  });
  it('give a calendar that names nothing intimate', async () => {
    const response = await post('/cycle/calendar', { text, scheme: 'demo-four-pots' });
    expect(response.headers.get('content-type')).toContain('text/calendar');
    expect(await response.text()).not.toMatch(/period|cycle|ovulat|menstru/i);
  });
  it('write no markup of hers into a picture unescaped', async () => {
    const answer = (await (await post('/cycle', { text: 'date,<img src=x onerror=alert(1)>\n2026-05-20,3\n2026-05-21,4', scheme: 'no-phase-rules' })).json()) as CycleAnswer;
    expect(answer.pictures.length).toBeGreaterThanOrEqual(0);
    for (const p of answer.pictures) expect(p.svg).not.toContain('<img');
  });
});
