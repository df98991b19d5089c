import { Hono } from 'hono';
import type { Desk } from '../app/desk.ts';
import type { Ids } from '../app/ports.ts';
import { ownFoodProblems } from '../core/foods/index.ts';
import { ownFoodProblemText } from '../messages/own-food.ts';
import { ownFoodRequest, readBody, settingsRequest } from './requests.ts';

/** Foods of her own, and the settings that new dishes start with. */
export function ownFoodRoutes(desk: Desk, ids: Ids): Hono {
  const app = new Hono();
  const { ownFoods, values } = desk.store;

  const save = async (request: Request, id: string): Promise<Response> => {
    const food = { id, ...(await readBody(request, ownFoodRequest)) };
    const problems = ownFoodProblems(food);
    if (problems.length > 0) return Response.json({ title: problems.map(ownFoodProblemText).join(' '), status: 422, code: 'bad-input', problems }, { status: 422 });
    await ownFoods.put(food);
    return Response.json(food);
  };
  app.get('/own-foods', async (c) => c.json(await ownFoods.list()));
  app.post('/own-foods', (c) => save(c.req.raw, ids.fresh()));
  app.put('/own-foods/:id', (c) => save(c.req.raw, c.req.param('id')));
  app.delete('/own-foods/:id', async (c) => {
    await ownFoods.remove(c.req.param('id'));
    return c.body(null, 204);
  });

  app.get('/settings', async (c) => c.json(await values.get('settings')));
  app.put('/settings', async (c) => {
    const settings = await readBody(c.req.raw, settingsRequest);
    await values.put('settings', settings);
    return c.json(settings);
  });
  return app;
}
