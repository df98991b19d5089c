import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { Desk } from '../app/desk.ts';
import type { CookTools } from '../app/cook-dishes.ts';
import type { Ids } from '../app/ports.ts';
import { AppError } from '../errors.ts';
import { cookRoutes } from './cook-routes.ts';
import { dishRoutes } from './dish-routes.ts';
import { ownFoodRoutes } from './own-food-routes.ts';
import { ownPagesOnly } from './guard.ts';
import { problem } from './problem.ts';
import { serveStatic } from './static.ts';

const largestBody = 8 * 1024 * 1024;

export interface DeskParts {
  readonly desk: Desk;
  readonly ids: Ids;
  readonly cookTools: CookTools;
  /** The folder of the built pages. */
  readonly pages: string;
}

/** The desk as a web application: the API under /api, the pages under everything else. */
export function deskApp({ desk, ids, cookTools, pages }: DeskParts): Hono {
  const app = new Hono();
  app.onError((error, c) => problem(c, error));
  app.use(ownPagesOnly());
  app.use('/api/*', bodyLimit({ maxSize: largestBody, onError: (c) => problem(c, new AppError('input-too-large', { length: 'more than 8 million', limit: '8 million' })) }));
  app.route('/api', dishRoutes(desk));
  app.route('/api', ownFoodRoutes(desk, ids));
  app.route('/api', cookRoutes({ tools: cookTools, values: desk.store.values, ids }));
  app.all('/api/*', (c) => c.json({ title: 'There is no such address.', status: 404, code: 'unknown-address' }, 404));
  serveStatic(app, pages);
  return app;
}
