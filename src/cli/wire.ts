import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { openEmbeddedStore } from '../adapters/store/index.ts';
import { packageFolder, readDemoDishes, readDishTables } from '../adapters/tables/index.ts';
import { createDesk } from '../app/create-desk.ts';
import type { Desk } from '../app/desk.ts';
import type { Clock, Ids } from '../app/ports.ts';

export function systemClock(): Clock {
  const now = (): Date => new Date();
  return { now: () => now().toISOString(), today: () => now().toLocaleDateString('sv-SE') };
}

export function randomIds(): Ids {
  return { fresh: () => randomUUID() };
}

/** The desk over the database file of this user. */
export async function openStoredDesk(file: string): Promise<Desk> {
  const store = await openEmbeddedStore({ file, migrations: join(packageFolder(), 'migrations') }, systemClock(), randomIds());
  return createDesk(readDishTables(), store, readDemoDishes());
}
