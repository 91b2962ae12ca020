import { randomUUID } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import SqliteFile from 'better-sqlite3';
import { type AppliedMigration, type Migration, pendingMigrations } from './migrations.ts';

const LOCK_PATIENCE_MS = 60_000;

const RECORD_TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" TEXT PRIMARY KEY NOT NULL, "checksum" TEXT NOT NULL, "finished_at" DATETIME, "migration_name" TEXT NOT NULL,
  "logs" TEXT, "rolled_back_at" DATETIME, "started_at" DATETIME NOT NULL DEFAULT current_timestamp,
  "applied_steps_count" INTEGER UNSIGNED NOT NULL DEFAULT 0)`;

/** All pending migrations in one transaction. Returns the names of those applied. */
export function migrateSqlite(file: string, known: readonly Migration[]): readonly string[] {
  // The job book holds money and password hashes: a folder made for it is closed to other users.
  mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
  const database = new SqliteFile(file, { timeout: LOCK_PATIENCE_MS });
  try {
    database.pragma('journal_mode = WAL');
    // To change a table SQLite builds a new one and drops the old. With foreign keys on, that drop would delete the
    // rows of every child table; and the pragma is ignored once a transaction is open, so it stands here.
    database.pragma('foreign_keys = OFF');
    database.exec('BEGIN IMMEDIATE'); // the lock: a second process waits here and then finds nothing pending
    const applied = applyPending(database, known);
    database.exec('COMMIT');
    return applied;
  } finally {
    database.close(); // rolls back what was not committed
  }
}

function applyPending(database: SqliteFile.Database, known: readonly Migration[]): readonly string[] {
  database.exec(RECORD_TABLE);
  const recorded = database
    .prepare<[], AppliedMigration>(
      'SELECT migration_name, checksum, finished_at, rolled_back_at FROM _prisma_migrations',
    )
    .all();
  const pending = pendingMigrations(known, recorded);
  for (const migration of pending) apply(database, migration);
  return pending.map((migration) => migration.name);
}

function apply(database: SqliteFile.Database, migration: Migration): void {
  const startedAt = new Date().toISOString();
  database.exec(migration.sql);
  const orphans = database.prepare('PRAGMA foreign_key_check').all();
  if (orphans.length > 0) {
    throw new Error(
      `Migration "${migration.name}" would leave ${orphans.length} rows that point at a row which is not there; nothing was changed.`,
    );
  }
  database
    .prepare(
      `INSERT INTO _prisma_migrations (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
       VALUES (?, ?, ?, ?, ?, 1)`,
    )
    .run(randomUUID(), migration.checksum, migration.name, startedAt, new Date().toISOString());
}
