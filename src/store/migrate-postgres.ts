import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { type AppliedMigration, type Migration, pendingMigrations } from './migrations.ts';

// The key that Prisma's own tool locks, so that it and this runner would wait for each other.
const ADVISORY_LOCK = 72707369;

const RECORD_TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" VARCHAR(36) PRIMARY KEY NOT NULL, "checksum" VARCHAR(64) NOT NULL, "finished_at" TIMESTAMPTZ,
  "migration_name" VARCHAR(255) NOT NULL, "logs" TEXT, "rolled_back_at" TIMESTAMPTZ,
  "started_at" TIMESTAMPTZ NOT NULL DEFAULT now(), "applied_steps_count" INTEGER NOT NULL DEFAULT 0)`;

/**
 * Each pending migration in a transaction of its own, because a value added to an enum may be used only after it is
 * committed. Returns the names of those applied.
 */
export async function migratePostgres(url: string, known: readonly Migration[]): Promise<readonly string[]> {
  const client = await connect(url);
  try {
    await client.query('SELECT pg_advisory_lock($1)', [ADVISORY_LOCK]); // the connection's end frees it
    await client.query(RECORD_TABLE);
    const recorded = await client.query<AppliedMigration>(
      'SELECT migration_name, checksum, finished_at, rolled_back_at FROM _prisma_migrations',
    );
    const pending = pendingMigrations(known, recorded.rows);
    for (const migration of pending) await apply(client, migration);
    return pending.map((migration) => migration.name);
  } finally {
    await client.end();
  }
}

async function connect(url: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: url });
  try {
    await client.connect();
    return client;
  } catch (cause) {
    // The address holds a password, so only its parts are named. A refused connection has no message, only a code.
    const reason = cause instanceof Error ? cause.message || Reflect.get(cause, 'code') : String(cause);
    const { host, port, database } = client;
    throw new Error(`PostgreSQL database "${database}" at ${host}:${port} cannot be opened: ${reason}.`, { cause });
  }
}

async function apply(client: pg.Client, migration: Migration): Promise<void> {
  await client.query('BEGIN');
  try {
    await client.query(migration.sql); // without parameters the server takes the whole script, whatever is in it
    await client.query(
      `INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at, applied_steps_count)
       VALUES ($1, $2, $3, now(), 1)`,
      [randomUUID(), migration.checksum, migration.name],
    );
    await client.query('COMMIT');
  } catch (error) {
    await client.query('ROLLBACK');
    throw error;
  }
}
