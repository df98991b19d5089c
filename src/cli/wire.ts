import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { openEmbeddedStore } from '../adapters/store/index.ts';
import { packageFolder, readCookingTables, readDemoDishes, readDishTables, readReaderVocabulary } from '../adapters/tables/index.ts';
import { readAnything } from '../adapters/exchange/index.ts';
import type { CookTools } from '../app/cook-dishes.ts';
import { createDesk } from '../app/create-desk.ts';
import type { Desk } from '../app/desk.ts';
import type { Clock, Ids, Store } from '../app/ports.ts';

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
