import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { build } from 'esbuild';
import { Hono } from 'hono';
import { openEmbeddedStore } from '../../../src/adapters/store/index.ts';
import { watch } from '../../../src/adapters/solver/index.ts';
import { packageFolder, readCookingTables, readReaderVocabulary } from '../../../src/adapters/tables/index.ts';
import { readRecipe } from '../../../src/core/dish/index.ts';
import { cookRoutes } from '../../../src/server/cook-routes.ts';
import { problem } from '../../../src/server/problem.ts';

/** A server with nothing but the cook plan, over a real database file: node serve.ts PORT DATABASE. */
const [port, file] = process.argv.slice(2);
const root = packageFolder();
const store = await openEmbeddedStore(
  { file: file!, migrations: join(root, 'migrations') },
  { now: () => new Date().toISOString(), today: () => new Date().toISOString().slice(0, 10) },
  { fresh: () => randomUUID() },
);
const built = await build({ entryPoints: [join(root, 'tests/e2e/cook/page.tsx')], bundle: true, write: false, outdir: 'out', format: 'esm', jsx: 'automatic', define: { 'process.env.NODE_ENV': '"production"' }, logLevel: 'error' });
const script = built.outputFiles.find((out) => out.path.endsWith('.js'))!.text;
const style = built.outputFiles.find((out) => out.path.endsWith('.css'))!.text;
const vocabulary = readReaderVocabulary();
const app = new Hono();
app.onError((error, c) => problem(c, error));
app.route('/api', cookRoutes({ tools: { tables: readCookingTables(), readRecipe: (text) => readRecipe(text, vocabulary), watch }, values: store.values, ids: { fresh: () => randomUUID() } }));
app.get('/', (c) => c.html('<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Cook plan</title><link rel="stylesheet" href="/page.css"><link rel="icon" href="data:,"><div id="cook"></div><script type="module" src="/page.js"></script></html>'));
app.get('/page.js', (c) => c.body(script, 200, { 'content-type': 'text/javascript; charset=utf-8' }));
app.get('/page.css', (c) => c.body(style, 200, { 'content-type': 'text/css; charset=utf-8' }));
serve({ fetch: app.fetch, port: Number(port), hostname: '127.0.0.1' }, () => console.log('ready'));
