import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { Desk } from '../app/desk.ts';
import type { ChangeDesk } from '../app/change-desk.ts';
import type { CookTools } from '../app/cook-dishes.ts';
import type { CycleDesk } from '../app/cycle-report.ts';
import type { Clock, Ids } from '../app/ports.ts';
import type { StatementGround } from '../app/statement-ground.ts';
import { day } from '../core/calendar/index.ts';
import { AppError } from '../errors.ts';
import { changeRoutes } from './change-routes.ts';
import { cookRoutes } from './cook-routes.ts';
import { cycleRoutes } from './cycle-routes.ts';
import { dishRoutes } from './dish-routes.ts';
import { ownFoodRoutes } from './own-food-routes.ts';
import { ownPagesOnly } from './guard.ts';
import { problem } from './problem.ts';
import { sayRoutes } from './say-routes.ts';
import { serveStatic } from './static.ts';

const largestBody = 8 * 1024 * 1024;

export interface DeskParts {
  readonly desk: Desk;
  readonly ids: Ids;
  readonly clock: Clock;
  readonly cookTools: CookTools;
  readonly change: ChangeDesk;
  readonly statements: StatementGround;
  readonly cycle: CycleDesk;
  /** The folder of the built pages. */
  readonly pages: string;
}

/** The desk as a web application: the API under /api, the pages under everything else. */
export function deskApp({ desk, ids, clock, cookTools, change, statements, cycle, pages }: DeskParts): Hono {
  const app = new Hono();
  app.onError((error, c) => problem(c, error));
  app.use(ownPagesOnly());
  app.use('/api/*', bodyLimit({ maxSize: largestBody, onError: (c) => problem(c, new AppError('input-too-large', { length: 'more than 8 million', limit: '8 million' })) }));
  app.route('/api', dishRoutes(desk));
  app.route('/api', ownFoodRoutes(desk, ids));
  app.route('/api', cookRoutes({ tools: cookTools, values: desk.store.values, ids }));
  app.route('/api', changeRoutes(change));
  app.route('/api', sayRoutes(desk, statements, { clock, ids, allergensOf: (dish) => change.allergens(dish) }));
  app.route('/api', cycleRoutes({ desk: cycle, today: () => day(clock.today()) }));
  app.all('/api/*', (c) => c.json({ title: 'There is no such address.', status: 404, code: 'unknown-address' }, 404));
  serveStatic(app, pages);
  return app;
}
