import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { openEmbeddedStore } from '../adapters/store/index.ts';
import { packageFolder, readChangeTables, readCookingTables, readCycleTables, readDemoDishes, readDishTables, readReaderVocabulary, readStatementGround } from '../adapters/tables/index.ts';
import { readAnything } from '../adapters/exchange/index.ts';
import { createChangeDesk, type ChangeDesk } from '../app/change-desk.ts';
import type { CookTools } from '../app/cook-dishes.ts';
import { createDesk } from '../app/create-desk.ts';
import { cycleDesk } from '../app/cycle-report.ts';
import type { Desk } from '../app/desk.ts';
import type { DeskParts } from '../server/desk-app.ts';
import type { Clock, DishStore, Ids, Store } from '../app/ports.ts';

export function systemClock(): Clock {
  const now = (): Date => new Date();
  return { now: () => now().toISOString(), today: () => now().toLocaleDateString('sv-SE') };
}

export function randomIds(): Ids {
  return { fresh: () => randomUUID() };
}

export function openStore(file: string): Promise<Store> {
  return openEmbeddedStore({ file, migrations: join(packageFolder(), 'migrations') }, systemClock(), randomIds());
}

/** The desk over the database file of this user. */
export async function openStoredDesk(file: string): Promise<Desk> {
  return createDesk(readDishTables(), await openStore(file), readDemoDishes());
}

/** The change desk over an open desk. */
export function changeDeskOf(desk: Desk): ChangeDesk {
  return createChangeDesk({ tables: () => desk.tables(), change: readChangeTables(), values: desk.store.values, dishes: desk.store.dishes, clock: systemClock(), ids: randomIds() });
}

/** What the commands of changing a dish open, and close when they are done. */
export async function openChangeDesk(file: string): Promise<{ desk: ChangeDesk; dishes: DishStore; close(): Promise<void> }> {
  const desk = await openStoredDesk(file);
  return { desk: changeDeskOf(desk), dishes: desk.store.dishes, close: () => desk.store.close() };
}

/** What plans are made with; the recipes are read without the food tables, which steps do not need. */
export function cookTools(): CookTools {
  const vocabulary = readReaderVocabulary();
  return {
    tables: readCookingTables(),
    readRecipe: (text) => readAnything(text, vocabulary),
    watch: (milliseconds) => {
      const end = performance.now() + milliseconds;
      return () => performance.now() >= end;
    },
  };
}

/** Everything that the desk's server is made of, over an open desk. */
export function deskParts(desk: Desk, pages: string): DeskParts {
  return {
    desk, pages, ids: randomIds(), clock: systemClock(), cookTools: cookTools(), change: changeDeskOf(desk),
    statements: readStatementGround(), cycle: cycleDesk(readCycleTables()),
  };
}
