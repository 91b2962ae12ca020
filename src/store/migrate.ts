import { parseDatabaseUrl } from './database-url.ts';
import { migratePostgres } from './migrate-postgres.ts';
import { migrateSqlite } from './migrate-sqlite.ts';
import { readMigrations } from './migrations.ts';

/**
 * Brings a database to the shape that this version needs, creating the file and its folder on SQLite. Several processes
 * may start at once: one applies, the others wait and find nothing to do. A migration is applied whole or not at all.
 * `log` is called once per migration applied. Returns their names, oldest first.
 *
 * Throws when the database's own record does not fit this version (see `pendingMigrations`).
 */
export async function migrate(url: string, log: (line: string) => void, folder?: string): Promise<readonly string[]> {
  const target = parseDatabaseUrl(url);
  const known = readMigrations(target.kind, folder);
  const applied =
    target.kind === 'sqlite' ? migrateSqlite(target.file, known) : await migratePostgres(target.url, known);
  for (const name of applied) log(`Applied migration ${name}.`);
  return applied;
}
