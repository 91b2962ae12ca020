// Real databases for tests, SQLite and PostgreSQL alike. A test file says once what must hold, and it is checked on both:
//
//   forEachDatabase((open) => {
//     it('keeps a project', async () => {
//       const database = await open();               // fresh, migrated, empty; closed and removed by itself
//       await database.write((tx) => tx.project.create({ data }));
//     });
//   });
//
// `open()` may also be called in a `beforeAll`, to share one database among the tests of a file. Every call gives a new
// one. The second argument of the callback is 'sqlite' or 'postgres', for the few tests that must know.
// `migratedUrl(kind)` and `emptyUrl(kind)` give addresses for tests that open the database themselves, or in another
// process.
import { randomUUID } from 'node:crypto';
import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import pg from 'pg';
import { afterAll, describe, inject } from 'vitest';
import { type Database, openDatabase } from '../../src/store/database.ts';
import { migrate } from '../../src/store/migrate.ts';
import { databaseUrl, TEMPLATE } from './postgres-url.ts';

export type DatabaseKind = Database['kind'];

export function forEachDatabase(declare: (open: () => Promise<Database>, kind: DatabaseKind) => void): void {
  describe('on SQLite', () => declare(() => openFresh('sqlite'), 'sqlite'));
  describe('on PostgreSQL', () => declare(() => openFresh('postgres'), 'postgres'));
}

/** The address of a database that has been migrated and holds nothing yet. */
export async function migratedUrl(kind: DatabaseKind): Promise<string> {
  return kind === 'sqlite' ? migratedSqlite() : newPostgres(TEMPLATE);
}

/** The address of a database without any table. On SQLite the file does not exist yet. */
export async function emptyUrl(kind: DatabaseKind): Promise<string> {
  return kind === 'sqlite' ? newSqlite() : newPostgres('template0');
}

const cleanUps: (() => Promise<void> | void)[] = [];

afterAll(async () => {
  for (const cleanUp of cleanUps.splice(0).reverse()) await cleanUp();
});

async function openFresh(kind: DatabaseKind): Promise<Database> {
  const database = await openDatabase(await migratedUrl(kind));
  cleanUps.push(() => database.close());
  return database;
}

let folder: string | undefined;

function newSqlite(): string {
  if (folder === undefined) {
    const made = mkdtempSync(path.join(os.tmpdir(), 'jobbook-test-'));
    cleanUps.unshift(() => rmSync(made, { recursive: true, force: true })); // last of all: clean-ups run backwards
    folder = made;
  }
  return `file:${path.join(folder, `${randomUUID()}.db`)}`;
}

let sqliteTemplate: string | undefined;

async function migratedSqlite(): Promise<string> {
  if (sqliteTemplate === undefined) {
    const url = newSqlite();
    await migrate(url, () => {});
    sqliteTemplate = url.slice('file:'.length);
  }
  if (existsSync(`${sqliteTemplate}-wal`)) throw new Error('The template is still open: its copy would lack rows.');
  const url = newSqlite();
  copyFileSync(sqliteTemplate, url.slice('file:'.length));
  return url;
}

async function newPostgres(template: string): Promise<string> {
  const answer = await fetch(inject('postgresBroker'));
  const serverUrl = await answer.text();
  if (!answer.ok) throw new Error(serverUrl);
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  await onServer(serverUrl, `CREATE DATABASE ${name} TEMPLATE ${template}`);
  cleanUps.push(() => onServer(serverUrl, `DROP DATABASE ${name} WITH (FORCE)`));
  return databaseUrl(serverUrl, name);
}

async function onServer(serverUrl: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: serverUrl });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
