import { Hono } from 'hono';
import type { Desk } from '../app/desk.ts';
import { createRequest, explainRequest, nameRequest, readBody, restoreRequest, saveRequest, workOutRequest } from './requests.ts';

/** Working out a dish, and the saved dishes. */
export function dishRoutes(desk: Desk): Hono {
  const app = new Hono();
  const { dishes } = desk.store;

  app.post('/dish/work-out', async (c) => {
    const { text, choices } = await readBody(c.req.raw, workOutRequest);
    return c.json(await desk.workOut(text, choices));
  });
  app.post('/dish/explain', async (c) => {
    const { text, choices, nutrient } = await readBody(c.req.raw, explainRequest);
    return c.json(await desk.explain(text, choices, nutrient));
  });
  app.get('/foods', async (c) => c.json(await desk.searchFoods(c.req.query('q') ?? '', 12)));
  app.get('/options', (c) => c.json(desk.options()));

  app.get('/dishes', async (c) => c.json(await dishes.list({ words: c.req.query('q') ?? '', deleted: c.req.query('bin') === 'yes' })));
  app.post('/dishes', async (c) => c.json(await dishes.create(await readBody(c.req.raw, createRequest)), 201));
  app.get('/dishes/:id', async (c) => c.json(await dishes.get(c.req.param('id'))));
  app.put('/dishes/:id', async (c) => {
    const { text, choices, label } = await readBody(c.req.raw, saveRequest);
    return c.json(await dishes.save(c.req.param('id'), { text, choices }, label));
  });
  app.post('/dishes/:id/name', async (c) => c.json(await dishes.rename(c.req.param('id'), (await readBody(c.req.raw, nameRequest)).name)));
  app.post('/dishes/:id/copy', async (c) => c.json(await dishes.duplicate(c.req.param('id'), (await readBody(c.req.raw, nameRequest)).name), 201));
  app.delete('/dishes/:id', async (c) => {
    await dishes.remove(c.req.param('id'));
    return c.body(null, 204);
  });
  app.post('/dishes/:id/bring-back', async (c) => c.json(await dishes.bringBack(c.req.param('id'))));
  app.get('/dishes/:id/versions', async (c) => c.json(await dishes.versions(c.req.param('id'))));
  app.post('/dishes/:id/restore', async (c) => c.json(await dishes.restore(c.req.param('id'), (await readBody(c.req.raw, restoreRequest)).version)));
  return app;
}
