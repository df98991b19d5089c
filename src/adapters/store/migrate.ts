import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Migrator, sql, type Kysely, type Migration } from 'kysely';
import { AppError } from '../../errors.ts';

function migration(file: string): Migration {
  return {
    async up(db: Kysely<unknown>) {
      const statements = readFileSync(file, 'utf8').replace(/^--.*$/gm, '').split(';').map((s) => s.trim()).filter((s) => s !== '');
      for (const statement of statements) await sql.raw(statement).execute(db);
    },
  };
}

/** Brings the database up to the newest of `folder`/NNNN_<name>.sql; throws `store-unreadable` when one fails. */
export async function migrateToNewest<S>(db: Kysely<S>, folder: string): Promise<void> {
  const files = readdirSync(folder).filter((name) => /^\d{4}_[\w-]+\.sql$/.test(name)).sort();
  const provider = { getMigrations: async () => Object.fromEntries(files.map((name) => [name.replace(/\.sql$/, ''), migration(join(folder, name))])) };
  const { error } = await new Migrator({ db, provider }).migrateToLatest();
  if (error !== undefined) throw new AppError('store-unreadable', { what: 'a migration failed' }, error);
}
