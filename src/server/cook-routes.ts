import { Hono } from 'hono';
import { z } from 'zod';
import { cookDishes, type CookOrder, type CookTools } from '../app/cook-dishes.ts';
import { liveCooking } from '../app/live-cooking.ts';
import type { Ids, ValueStore } from '../app/ports.ts';
import { panSizes, places } from '../core/cooking/index.ts';
import { readBody } from './requests.ts';

export interface CookDeps {
  readonly tools: CookTools;
  readonly values: ValueStore;
  readonly ids: Ids;
}

const minute = z.number().min(-2880).max(2880);
const count = z.number().int().min(0).max(20);
const order = z.object({
  dishes: z.array(z.object({ name: z.string().max(200).nullable().default(null), text: z.string() })).min(1, 'name at least one dish').max(12),
  kitchen: z
    .object({ cooks: count.min(1), rings: count, shelves: count, pans: z.partialRecord(z.enum(panSizes), count), places: z.partialRecord(z.enum(places), count) })
    .partial()
    .default({}),
  when: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('serve-at'), minute: minute.int(), notBefore: minute.int().nullable().default(null) }),
    z.object({ kind: z.literal('start-now'), minute: minute.int() }),
    z.object({ kind: z.literal('shortest'), minute: minute.int() }),
  ]),
  script: z.string().max(200_000).nullable().default(null),
  wordsPerMinute: z.number().min(40).max(400).nullable().default(null),
  deadAirSeconds: z.number().min(1).max(3600).nullable().default(null),
});
const step = z.string().min(1).max(100);
const tap = z.object({
  minute,
  tap: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('done'), step }),
    z.object({ kind: z.literal('start'), step }),
    z.object({ kind: z.literal('not-done'), step }),
    z.object({ kind: z.literal('more'), step, minutes: z.number().int().min(1).max(240) }),
  ]),
});

const readOrder = async (request: Request): Promise<CookOrder> => (await readBody(request, order as z.ZodType<unknown>)) as CookOrder;

/**
 * The cook plan: POST /cook/plan works one out, POST /cook/live begins live mode, GET /cook/live?minute= is the evening that is on,
 * POST /cook/live/:id/tap takes a tap, DELETE /cook/live/:id ends it. Minutes are clock minutes from midnight of the day of serving, by the user's own clock.
 */
export function cookRoutes({ tools, values, ids }: CookDeps): Hono {
  const app = new Hono();
  const live = liveCooking(tools, values, ids);
  app.get('/cook/kitchen', (c) => c.json({ kitchen: tools.tables.usualKitchen, wordsPerMinute: tools.tables.wordsPerMinute, deadAirSeconds: tools.tables.deadAirSeconds }));
  app.post('/cook/plan', async (c) => c.json(cookDishes(await readOrder(c.req.raw), tools)));
  app.post('/cook/live', async (c) => c.json(await live.begin(await readOrder(c.req.raw)), 201));
  app.get('/cook/live', async (c) => c.json(await live.current(Number(c.req.query('minute') ?? 'NaN') || 0)));
  app.post('/cook/live/:id/tap', async (c) => {
    const body = await readBody(c.req.raw, tap);
    return c.json(await live.tap(c.req.param('id'), body.tap, body.minute));
  });
  app.delete('/cook/live/:id', async (c) => {
    await live.end(c.req.param('id'));
    return c.body(null, 204);
  });
  return app;
}
