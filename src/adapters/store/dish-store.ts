import type { Kysely, Transaction } from 'kysely';
import type { Clock, DishContent, DishStore, DishVersion, Ids, SavedDish } from '../../app/ports.ts';
import { usualChoices, type DishChoices } from '../../app/dish-choices.ts';
import { AppError } from '../../errors.ts';
import type { Schema } from './schema.ts';

type Db = Kysely<Schema> | Transaction<Schema>;

/** Choices saved by an older version lack the newer fields: those take the usual values. */
function readChoices(text: string): DishChoices {
  return { ...usualChoices, ...(JSON.parse(text) as Partial<DishChoices>) };
}

function newest(db: Db) {
  return db
    .selectFrom('dish')
    .innerJoin('dish_version as v', 'v.dish_id', 'dish.id')
    .where('v.version', '=', (eb) => eb.selectFrom('dish_version as w').select(({ fn }) => fn.max('w.version').as('m')).whereRef('w.dish_id', '=', 'dish.id'))
    .select(['dish.id', 'dish.name', 'dish.created_at', 'dish.deleted_at', 'v.version', 'v.text', 'v.choices', 'v.saved_at']);
}

type NewestRow = Awaited<ReturnType<ReturnType<typeof newest>['execute']>>[number];

function savedDish(row: NewestRow): SavedDish {
  return {
    id: row.id, name: row.name, text: row.text, choices: readChoices(row.choices), version: Number(row.version),
    createdAt: row.created_at, savedAt: row.saved_at, deletedAt: row.deleted_at,
  };
}

async function get(db: Db, id: string): Promise<SavedDish> {
  const row = await newest(db).where('dish.id', '=', id).executeTakeFirst();
  if (!row) throw new AppError('unknown-dish', { id });
  return savedDish(row);
}

async function refuseTakenName(db: Db, name: string, exceptId: string | null): Promise<void> {
  const taken = await db.selectFrom('dish').select('id').where('name', '=', name).where('deleted_at', 'is', null).execute();
  if (taken.some((row) => row.id !== exceptId)) throw new AppError('name-taken', { name });
}

/** Dishes in the embedded database, each with all its versions. */
export function dishStore(db: Kysely<Schema>, clock: Clock, ids: Ids): DishStore {
  async function insert(trx: Db, content: DishContent): Promise<SavedDish> {
    await refuseTakenName(trx, content.name, null);
    const id = ids.fresh();
    const now = clock.now();
    await trx.insertInto('dish').values({ id, name: content.name, created_at: now, deleted_at: null }).execute();
    await trx.insertInto('dish_version').values({ dish_id: id, version: 1, label: null, text: content.text, choices: JSON.stringify(content.choices), saved_at: now }).execute();
    return get(trx, id);
  }

  async function addVersion(trx: Db, id: string, content: Omit<DishContent, 'name'>, label: string | null): Promise<SavedDish> {
    const current = await get(trx, id);
    const choices = JSON.stringify(content.choices);
    if (label === null && current.text === content.text && JSON.stringify(current.choices) === choices) return current;
    await trx.insertInto('dish_version').values({ dish_id: id, version: current.version + 1, label, text: content.text, choices, saved_at: clock.now() }).execute();
    return get(trx, id);
  }

  return {
    create: (content) => db.transaction().execute((trx) => insert(trx, content)),
    get: (id) => get(db, id),
    async list({ words = '', deleted = false }) {
      const rows = await newest(db).where('dish.deleted_at', deleted ? 'is not' : 'is', null).orderBy('v.saved_at', 'desc').orderBy('dish.id').execute();
      // Compared here and not in SQL: the databases fold letters beyond a to z differently.
      const wanted = words.toLowerCase().split(/\s+/).filter((word) => word !== '');
      return rows.map(savedDish).filter((dish) => {
        const text = `${dish.name}\n${dish.text}`.toLowerCase();
        return wanted.every((word) => text.includes(word));
      });
    },
    save: (id, content, label) => db.transaction().execute((trx) => addVersion(trx, id, content, label)),
    rename: (id, name) =>
      db.transaction().execute(async (trx) => {
        await get(trx, id);
        await refuseTakenName(trx, name, id);
        await trx.updateTable('dish').set({ name }).where('id', '=', id).execute();
        return get(trx, id);
      }),
    duplicate: (id, name) =>
      db.transaction().execute(async (trx) => {
        const from = await get(trx, id);
        return insert(trx, { name, text: from.text, choices: from.choices });
      }),
    async remove(id) {
      await get(db, id);
      await db.updateTable('dish').set({ deleted_at: clock.now() }).where('id', '=', id).execute();
    },
    bringBack: (id) =>
      db.transaction().execute(async (trx) => {
        const dish = await get(trx, id);
        await refuseTakenName(trx, dish.name, id);
        await trx.updateTable('dish').set({ deleted_at: null }).where('id', '=', id).execute();
        return get(trx, id);
      }),
    async versions(id) {
      await get(db, id);
      const rows = await db.selectFrom('dish_version').selectAll().where('dish_id', '=', id).orderBy('version', 'desc').execute();
      return rows.map((row): DishVersion => ({ dishId: row.dish_id, version: Number(row.version), label: row.label, text: row.text, choices: readChoices(row.choices), savedAt: row.saved_at }));
    },
    restore: (id, version) =>
      db.transaction().execute(async (trx) => {
        const row = await trx.selectFrom('dish_version').selectAll().where('dish_id', '=', id).where('version', '=', version).executeTakeFirst();
        if (!row) throw new AppError('unknown-dish', { id, version });
        return addVersion(trx, id, { text: row.text, choices: readChoices(row.choices) }, row.label);
      }),
  };
}
