import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { dishReportJsonSchema, dishReportSchema } from '../src/adapters/exchange/dish-report-schema.ts';
import { createDesk } from '../src/app/create-desk.ts';
import { openEmbeddedStore } from '../src/adapters/store/index.ts';
import { countingIds, steppingClock } from './contract/store-contract.ts';
import { deskParts } from '../src/cli/wire.ts';
import { deskApp } from '../src/server/desk-app.ts';
import { readDishTables, reportDish, usualChoices, workOutDish, type DishReport } from '../src/index.ts';

const root = join(import.meta.dirname, '..');
const tables = readDishTables();
const demos = (parse(readFileSync(join(root, 'data/demo/demo-dishes.meta.yaml'), 'utf8')) as { dishes: { file: string }[] }).dishes.map((dish) => dish.file);
const textOf = (name: string): string => readFileSync(join(root, 'data/demo', name), 'utf8');

describe('the published schema', () => {
  it('in docs/ is the one of the code (npx tsx scripts/write-schema.ts writes it)', () => {
    expect(JSON.parse(readFileSync(join(root, 'docs/dish-report.schema.json'), 'utf8'))).toEqual(JSON.parse(JSON.stringify(dishReportJsonSchema())));
  });

  it.each([...demos, ''])('holds for %s', (name) => {
    const report = reportDish(workOutDish(name === '' ? '' : textOf(name), usualChoices, tables), tables);
    expect(dishReportSchema.safeParse(JSON.parse(JSON.stringify(report))).error).toBeUndefined();
  });
});

describe('the same pot', () => {
  it.each(demos)('%s has the same digits in the library, over the desk and in the terminal, and on every run', async (name) => {
    const text = textOf(name);
    const library = JSON.parse(JSON.stringify(reportDish(workOutDish(text, usualChoices, tables), tables))) as DishReport;
    expect(JSON.parse(JSON.stringify(reportDish(workOutDish(text, usualChoices, tables), tables)))).toEqual(library);

    const store = await openEmbeddedStore({ file: ':memory:', migrations: join(root, 'migrations') }, steppingClock(), countingIds());
    const app = deskApp(deskParts(createDesk(tables, store, []), root));
    const response = await app.request('http://localhost/api/dish/work-out', { method: 'POST', headers: { host: 'localhost', 'content-type': 'application/json' }, body: JSON.stringify({ text, choices: {} }) });
    expect(response.status).toBe(200);
    expect(await response.json()).toEqual(library);
    await store.close();

    const printed = execFileSync(process.execPath, [join(root, 'dist/cli.js'), 'dish', join(root, 'data/demo', name), '--json'], { encoding: 'utf8', env: { ...process.env, TRUEPOT_HOME: join(root, 'dist/test-home') } });
    expect(JSON.parse(printed)).toEqual(library);
  });
});
