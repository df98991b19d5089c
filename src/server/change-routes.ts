import { Hono } from 'hono';
import { z } from 'zod';
import type { ChangeDesk } from '../app/change-desk.ts';
import type { ScaleAim } from '../core/dish/index.ts';
import { isNutrientId, type NutrientId } from '../core/foods/index.ts';
import { readBody, workOutRequest } from './requests.ts';

const nutrient = z.custom<NutrientId>((v) => typeof v === 'string' && isNutrientId(v), 'no such nutrient');
const above = z.number().positive().max(1e7);
const swapRequest = workOutRequest.extend({ lineId: z.string().min(1), limit: z.number().int().min(1).max(40).default(12) });
const wishRequest = workOutRequest.extend({
  wish: z.object({
    nutrients: z.array(z.object({ id: nutrient, least: z.number().min(0).nullable().default(null), most: z.number().min(0).nullable().default(null) })).max(8).default([]),
    costMost: above.nullable().default(null),
    without: z.array(z.string().max(80)).max(30).default([]),
    diets: z.array(z.string().max(40)).max(10).default([]),
    keep: z.array(z.string()).max(200).default([]),
    swaps: z.number().int().min(0).max(3).default(3),
    strict: z.boolean().default(false),
    answers: z.number().int().min(1).max(10).default(5),
  }),
});
const pan = z.discriminatedUnion('shape', [
  z.object({ shape: z.literal('round'), acrossCm: above, depthCm: above.nullable().default(null) }),
  z.object({ shape: z.literal('square'), sideCm: above, depthCm: above.nullable().default(null) }),
  z.object({ shape: z.literal('oblong'), lengthCm: above, widthCm: above, depthCm: above.nullable().default(null) }),
]);
const aim = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('factor'), factor: above }),
  z.object({ kind: z.literal('portions'), count: above }),
  z.object({ kind: z.literal('at-hand'), lineId: z.string(), grams: above }),
  z.object({ kind: z.literal('nutrient'), nutrient, portionAmount: above }),
  z.object({ kind: z.literal('pan'), from: pan, to: pan }),
  z.object({ kind: z.literal('volume'), fromMl: above, toMl: above }),
]) satisfies z.ZodType<ScaleAim>;
const scaleRequest = workOutRequest.extend({ aim });
const compareRequest = z.object({ dishes: z.array(workOutRequest.extend({ name: z.string().max(200) })).min(2, 'choose at least two').max(6, 'up to six at once') });
const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'write the day as year-month-day');
const text = z.string().trim().min(1).max(200);
const pricesRequest = z.object({ rows: z.array(z.object({ food: text, pack: text, price: above, shop: z.string().max(200), date: day })).max(5000) });
const csvRequest = z.object({ csv: z.string().max(2_000_000) });
const settingsRequest = z.object({ currency: z.string().trim().min(1).max(8), staleDays: z.number().int().min(1).max(3650), allergenList: z.string(), region: z.string() });
const seasonRequest = z.object({ name: text, months: z.string().max(40).nullable() });
const pantryRequest = z.object({ items: z.array(z.object({ food: text, amount: z.string().max(80), useBy: day.nullable() })).max(1000) });

/**
 * Changing a dish: POST /change/{allergens,swap,wish,scale,cost,compare} take a dish's text and choices and keep nothing;
 * prices, months, pantry and settings are hers and kept.
 */
export function changeRoutes(desk: ChangeDesk): Hono {
  const app = new Hono();
  app.get('/change/options', (c) => c.json(desk.options));
  app.get('/change/settings', async (c) => c.json(await desk.settings()));
  app.put('/change/settings', async (c) => c.json(await desk.saveSettings(await readBody(c.req.raw, settingsRequest))));
  app.post('/change/allergens', async (c) => c.json(await desk.allergens(await readBody(c.req.raw, workOutRequest))));
  app.post('/change/swap', async (c) => {
    const { lineId, limit, ...dish } = await readBody(c.req.raw, swapRequest);
    return c.json(await desk.swap(dish, lineId, limit));
  });
  app.post('/change/wish', async (c) => {
    const { wish, ...dish } = await readBody(c.req.raw, wishRequest);
    return c.json(await desk.wish(dish, wish));
  });
  app.post('/change/scale', async (c) => {
    const { aim: to, ...dish } = await readBody(c.req.raw, scaleRequest);
    return c.json(await desk.scale(dish, to));
  });
  app.post('/change/cost', async (c) => c.json(await desk.cost(await readBody(c.req.raw, workOutRequest))));
  app.post('/change/compare', async (c) => c.json(await desk.compare((await readBody(c.req.raw, compareRequest)).dishes)));
  app.get('/prices', async (c) => c.json(await desk.prices()));
  app.put('/prices', async (c) => c.json(await desk.savePrices((await readBody(c.req.raw, pricesRequest)).rows)));
  app.post('/prices/csv', async (c) => c.json(await desk.bringPrices((await readBody(c.req.raw, csvRequest)).csv)));
  app.get('/prices/csv', async (c) => c.body(await desk.pricesCsv(), 200, { 'content-type': 'text/csv; charset=utf-8', 'content-disposition': 'attachment; filename="prices.csv"' }));
  app.get('/prices/cheapest', async (c) => c.json(await desk.cheapest(c.req.query('nutrient') ?? '', Number(c.req.query('amount') ?? '100') || 100)));
  app.get('/seasons', async (c) => c.json(await desk.seasons()));
  app.put('/seasons', async (c) => {
    const { name, months } = await readBody(c.req.raw, seasonRequest);
    return c.json(await desk.saveSeason(name, months));
  });
  app.get('/pantry', async (c) => c.json(await desk.pantry()));
  app.put('/pantry', async (c) => c.json(await desk.savePantry((await readBody(c.req.raw, pantryRequest)).items)));
  return app;
}
