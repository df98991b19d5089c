import { Hono } from 'hono';
import { z } from 'zod';
import type { DishText } from '../app/change-desk.ts';
import type { AllergenReport } from '../app/change-report.ts';
import type { Desk } from '../app/desk.ts';
import type { Clock, Ids } from '../app/ports.ts';
import { sayDish } from '../app/say-dish.ts';
import { dropOwnNote, keepOwnNote, readOwnNotes, type StatementGround } from '../app/statement-ground.ts';
import { lawIds } from '../core/statements/index.ts';
import { AppError } from '../errors.ts';
import { noteGone } from '../messages/own-note.ts';
import { readNote } from './evidence-note-request.ts';
import { readBody, workOutRequest } from './requests.ts';

const said = z.enum(['yes', 'no', 'unknown']);
const sayRequest = workOutRequest.extend({
  script: z.string(),
  laws: z.array(z.enum(lawIds)).min(1).max(lawIds.length).default(['eu']),
  client: z.array(z.string().max(60)).max(30).default([]),
  theme: z.array(z.string().max(60)).max(30).default([]),
  // The dish to compare with: a saved one by its id, or one given as text.
  other: z.union([z.object({ id: z.string().min(1) }), workOutRequest], { error: 'name the dish to compare with by the id of a saved dish, or give its recipe as text' }).nullable().default(null),
  plate: z.object({ form: z.enum(['solid', 'liquid']).optional(), singlePortionPack: z.boolean().optional(), addedSugars: said.optional(), addedSalt: said.optional(), allergens: z.array(z.string().max(100)).max(40).optional() }).default({}),
});

/** Leaves out keys without a value, so that they do not stand as undefined. */
function given<T extends object>(value: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as { [K in keyof T]: Exclude<T[K], undefined> };
}

/** Checking a script against a dish, and her own evidence notes. */
export function sayRoutes(desk: Desk, ground: StatementGround, at: { readonly clock: Clock; readonly ids: Ids; readonly allergensOf?: (dish: DishText) => Promise<AllergenReport> }): Hono {
  const app = new Hono();
  const { values, dishes } = desk.store;
  const tools = { desk, ground, ...(at.allergensOf === undefined ? {} : { allergensOf: at.allergensOf }) };
  app.post('/say', async (c) => {
    const { text, choices, other, plate, ...asked } = await readBody(c.req.raw, sayRequest);
    const against = other !== null && 'id' in other ? await dishes.get(other.id) : other;
    return c.json(await sayDish({ ...asked, dish: { text, choices }, other: against, plate: given(plate) }, { ...tools, today: at.clock.today() }));
  });
  app.get('/say/laws', (c) => c.json(ground.rules.clauses));
  app.get('/say/evidence', async (c) => c.json({ library: ground.rules.evidence, own: await readOwnNotes(values) }));
  app.get('/say/evidence/own', async (c) => c.json(await readOwnNotes(values)));
  app.post('/say/evidence', async (c) => c.json(await keepOwnNote(values, { ...(await readNote(c.req.raw)), id: `own-${at.ids.fresh()}`, checked: 'memory' }), 201));
  app.put('/say/evidence/:id', async (c) => {
    const id = c.req.param('id');
    if (!(await readOwnNotes(values)).some((note) => note.id === id)) throw new AppError('bad-input', { what: noteGone });
    return c.json(await keepOwnNote(values, { ...(await readNote(c.req.raw)), id, checked: 'memory' }));
  });
  app.delete('/say/evidence/:id', async (c) => c.json(await dropOwnNote(values, c.req.param('id'))));
  return app;
}
