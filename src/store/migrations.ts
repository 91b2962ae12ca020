import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Database } from './database.ts';

export type Migration = {
  readonly name: string;
  readonly sql: string;
  /** SHA-256 of the SQL in hexadecimal, as Prisma's own tool records it. */
  readonly checksum: string;
};

/** One row of "_prisma_migrations", the table that Prisma's own tool would use too. */
export type AppliedMigration = {
  readonly migration_name: string;
  readonly checksum: string;
  readonly finished_at: unknown;
  readonly rolled_back_at: unknown;
};

const migrationsFolder = fileURLToPath(new URL('../../prisma/migrations/', import.meta.url));

/** All migrations of this build, oldest first: their names start with the time they were written. */
export function readMigrations(kind: Database['kind'], folder = migrationsFolder): readonly Migration[] {
  const own = path.join(folder, kind);
  return migrationNames(own).map((name) => {
    const sql = readFileSync(path.join(own, name, 'migration.sql'), 'utf8');
    return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
  });
}

/** The newest migration's name and the Prisma schema that it leads to. */
export function newestMigration(
  kind: Database['kind'],
): { readonly name: string; readonly schema: string } | undefined {
  const own = path.join(migrationsFolder, kind);
  const name = migrationNames(own).at(-1);
  return name === undefined ? undefined : { name, schema: readFileSync(path.join(own, name, 'schema.prisma'), 'utf8') };
}

/**
 * Which migrations this database still needs. Throws when its record does not fit this build: then a person has to look,
 * because going on would guess at the shape of the tables.
 */
export function pendingMigrations(
  known: readonly Migration[],
  recorded: readonly AppliedMigration[],
): readonly Migration[] {
  const standing = recorded.filter((row) => row.rolled_back_at === null);
  for (const row of standing) refuseMisfit(row, known);
  const applied = new Set(standing.map((row) => row.migration_name));
  return known.filter((migration) => !applied.has(migration.name));
}

function refuseMisfit(row: AppliedMigration, known: readonly Migration[]): void {
  const name = row.migration_name;
  const migration = known.find((candidate) => candidate.name === name);
  if (migration === undefined) {
    throw new Error(
      `The database has migration "${name}", which this version does not know: a newer version ran on it. Start that newer version.`,
    );
  }
  if (row.finished_at === null) {
    throw new Error(
      `Migration "${name}" was begun on this database and never finished. Restore the last backup and start again.`,
    );
  }
  if (row.checksum !== migration.checksum) {
    throw new Error(
      `Migration "${name}" was edited after it was applied to this database (checksum ${migration.checksum.slice(0, 8)}…, recorded ${row.checksum.slice(0, 8)}…). Put back the original file and write the change as a new migration.`,
    );
  }
}

function migrationNames(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  const entries = readdirSync(folder, { withFileTypes: true });
  return entries
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}
