import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { Kysely, SqliteDialect } from 'kysely';
import Database from 'libsql';
import type { Clock, Ids, OwnFoodStore, Store, ValueStore } from '../../app/ports.ts';
import type { OwnFood } from '../../core/foods/index.ts';
import { AppError } from '../../errors.ts';
import { dishStore } from './dish-store.ts';
import { migrateToNewest } from './migrate.ts';
import type { Schema } from './schema.ts';

function ownFoodStore(db: Kysely<Schema>): OwnFoodStore {
  return {
    async list() {
      const rows = await db.selectFrom('own_food').selectAll().orderBy('name').orderBy('id').execute();
      return rows.map((row) => JSON.parse(row.content) as OwnFood);
    },
    async put(food) {
      const row = { name: food.name, content: JSON.stringify(food) };
      await db.insertInto('own_food').values({ id: food.id, ...row }).onConflict((c) => c.column('id').doUpdateSet(row)).execute();
    },
    async remove(id) {
      await db.deleteFrom('own_food').where('id', '=', id).execute();
    },
  };
}

function valueStore(db: Kysely<Schema>): ValueStore {
  return {
    async get(key) {
      const row = await db.selectFrom('kept_value').select('content').where('name', '=', key).executeTakeFirst();
      return row === undefined ? null : (JSON.parse(row.content) as unknown);
    },
    async put(key, value) {
      const content = JSON.stringify(value);
      await db.insertInto('kept_value').values({ name: key, content }).onConflict((c) => c.column('name').doUpdateSet({ content })).execute();
    },
    async remove(key) {
      await db.deleteFrom('kept_value').where('name', '=', key).execute();
    },
  };
}

/** Opens (and makes, when it is not there) the one database file; `:memory:` for none. Throws `store-unreadable`. */
export async function openEmbeddedStore(place: { readonly file: string; readonly migrations: string }, clock: Clock, ids: Ids): Promise<Store> {
  let database: InstanceType<typeof Database>;
  try {
    if (place.file !== ':memory:') mkdirSync(dirname(place.file), { recursive: true, mode: 0o700 });
    database = new Database(place.file);
    database.exec('PRAGMA journal_mode = WAL');
    database.exec('PRAGMA synchronous = FULL');
    database.exec('PRAGMA foreign_keys = ON');
  } catch (cause) {
    throw new AppError('store-unreadable', { file: place.file }, cause);
  }
  const db = new Kysely<Schema>({ dialect: new SqliteDialect({ database }) });
  await migrateToNewest(db, place.migrations);
  return { dishes: dishStore(db, clock, ids), ownFoods: ownFoodStore(db), values: valueStore(db), close: () => db.destroy() };
}
