import { Hono } from 'hono';
import { z } from 'zod';
import { allergenLine } from '../app/allergen-line.ts';
import type { DishText } from '../app/change-desk.ts';
import type { AllergenReport } from '../app/change-report.ts';
import type { Desk } from '../app/desk.ts';
import { plateOfDish } from '../app/plate-of-dish.ts';
import type { Clock, Ids } from '../app/ports.ts';
import { say } from '../app/say.ts';
import { dropOwnNote, keepOwnNote, readOwnNotes, type StatementGround } from '../app/statement-ground.ts';
import { evidenceGrades, lawIds } from '../core/statements/index.ts';
import { readBody, workOutRequest } from './requests.ts';

const said = z.enum(['yes', 'no', 'unknown']);
const sayRequest = workOutRequest.extend({
  script: z.string(),
  laws: z.array(z.enum(lawIds)).min(1).max(lawIds.length).default(['eu']),
  client: z.array(z.string().max(60)).max(30).default([]),
  theme: z.array(z.string().max(60)).max(30).default([]),
  plate: z.object({ form: z.enum(['solid', 'liquid']).optional(), singlePortionPack: z.boolean().optional(), addedSugars: said.optional(), addedSalt: said.optional(), allergens: z.array(z.string().max(100)).max(40).optional() }).default({}),
});

const noteRequest = z.object({
  about: z.array(z.array(z.string().trim().toLowerCase().min(2).max(60)).min(1).max(20)).min(1).max(4),
  statement: z.string().trim().min(3).max(300), grade: z.enum(evidenceGrades), finding: z.string().trim().min(3).max(1000), citation: z.string().trim().min(3).max(300),
  doi: z.string().regex(/^10\.\S+$/, 'a DOI begins with 10.').nullable().default(null), population: z.string().max(300).default(''),
  dose: z.string().max(300).nullable().default(null), doseG: z.number().positive().max(10_000).nullable().default(null), doseFood: z.array(z.string().max(60)).max(10).default([]),
});

/** Leaves out keys without a value, so that they do not stand as undefined. */
function given<T extends object>(value: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as { [K in keyof T]: Exclude<T[K], undefined> };
}

/** Checking a script against a dish, and her own evidence notes. */
export function sayRoutes(desk: Desk, ground: StatementGround, at: { readonly clock: Clock; readonly ids: Ids; readonly allergensOf?: (dish: DishText) => Promise<AllergenReport> }): Hono {
  const app = new Hono();
  const { values } = desk.store;
  app.post('/say', async (c) => {
    const { text, choices, script, laws, client, theme, plate } = await readBody(c.req.raw, sayRequest);
    const report = await desk.workOut(text, choices);
    const built = plateOfDish(report, ground.rules.referenceAmounts, given(plate));
    const request = { script, laws, client, emphasis: { nutrients: theme, topics: theme }, ownNotes: await readOwnNotes(values), on: at.clock.today() };
    const allergens = await at.allergensOf?.({ text, choices });
    return c.json(say(request, { allergenLine: allergens ? allergenLine(allergens) : null, plate: built, other: null, ...ground, dishCautions: report.cautions.map(({ id, text: words, source }) => ({ id, text: words, source })) }));
  });
  app.get('/say/laws', (c) => c.json(ground.rules.clauses));
  app.get('/say/evidence', async (c) => c.json({ library: ground.rules.evidence, own: await readOwnNotes(values) }));
  app.post('/say/evidence', async (c) => c.json(await keepOwnNote(values, { ...(await readBody(c.req.raw, noteRequest)), id: `own-${at.ids.fresh()}`, checked: 'memory' }), 201));
  app.delete('/say/evidence/:id', async (c) => c.json(await dropOwnNote(values, c.req.param('id'))));
  return app;
}
