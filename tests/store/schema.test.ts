import SqliteFile from 'better-sqlite3';
import pg from 'pg';
import { describe, expect, it } from 'vitest';
import { currentSchema, schemaDiff } from '../../scripts/schema-diff.ts';
import { newestMigration } from '../../src/store/migrations.ts';
import { type DatabaseKind, emptyUrl, migratedUrl } from '../support/databases.ts';

describe.each<DatabaseKind>(['sqlite', 'postgres'])('the schema on %s', (kind) => {
  it('is what the newest migration leads to (else: npm run migration -- NAME)', async () => {
    expect(await schemaDiff(kind, newestMigration(kind)?.schema, await currentSchema(kind))).toBe('');
  });

  // The migrations are the way every site's database came to be; the schema written at one stroke is what the code
  // expects. The database's own catalogue is asked about both.
  it('is the same whether the migrations built it or the schema itself', async () => {
    const fromMigrations = await migratedUrl(kind);
    const atOneStroke = await emptyUrl(kind);
    await execute(atOneStroke, await schemaDiff(kind, undefined, await currentSchema(kind)));
    const built = await describeTables[kind](fromMigrations);
    expect(built).toEqual(await describeTables[kind](atOneStroke));
    expect(built.length).toBeGreaterThan(100);
  });
});

async function execute(url: string, script: string): Promise<void> {
  if (url.startsWith('file:')) {
    const database = new SqliteFile(url.slice('file:'.length));
    database.exec(script);
    database.close();
    return;
  }
  await onPostgres(url, (client) => client.query(script));
}

const describeTables: Record<DatabaseKind, (url: string) => Promise<readonly unknown[]>> = {
  sqlite: async (url) => {
    const database = new SqliteFile(url.slice('file:'.length), { readonly: true });
    const rows = [columnsSqlite, indexesSqlite, referencesSqlite].flatMap((sql) => database.prepare(sql).all());
    database.close();
    return rows;
  },
  postgres: (url) =>
    onPostgres(url, async (client) => {
      const rows: unknown[] = [];
      for (const sql of [columnsPostgres, indexesPostgres, constraintsPostgres]) {
        rows.push(...(await client.query(sql)).rows);
      }
      return rows;
    }),
};

async function onPostgres<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

const tablesSqlite = `(SELECT name FROM sqlite_schema WHERE type = 'table' AND name <> '_prisma_migrations' AND name NOT LIKE 'sqlite_%')`;
const columnsSqlite = `SELECT t.name AS "table", c.name, c.type, c."notnull", c.dflt_value, c.pk
  FROM ${tablesSqlite} t, pragma_table_info(t.name) c ORDER BY 1, 2`;
const indexesSqlite = `SELECT t.name AS "table", i.name, i."unique", i.origin, i.partial, k.seqno, k.name AS "column"
  FROM ${tablesSqlite} t, pragma_index_list(t.name) i, pragma_index_info(i.name) k ORDER BY 1, 2, 6`;
const referencesSqlite = `SELECT t.name AS "table", f."table" AS parent, f."from", f."to", f.on_update, f.on_delete
  FROM ${tablesSqlite} t, pragma_foreign_key_list(t.name) f ORDER BY 1, 2, 3`;

const columnsPostgres = `SELECT table_name, column_name, data_type, is_nullable, column_default, datetime_precision
  FROM information_schema.columns WHERE table_schema = 'public' AND table_name <> '_prisma_migrations' ORDER BY 1, 2`;
const indexesPostgres = `SELECT indexdef FROM pg_indexes
  WHERE schemaname = 'public' AND tablename <> '_prisma_migrations' ORDER BY 1`;
const constraintsPostgres = `SELECT conrelid::regclass::text AS "table", conname, pg_get_constraintdef(oid) AS definition
  FROM pg_constraint WHERE connamespace = 'public'::regnamespace AND conrelid::regclass::text <> '_prisma_migrations' ORDER BY 1, 2`;
