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
import { copyFileSync, existsSync, rmSync } from 'node:fs';
import path from 'node:path';
import pg from 'pg';
import { afterAll, describe, inject } from 'vitest';
import { type Database, openDatabase } from '../../src/store/database.ts';
import { migrate } from '../../src/store/migrate.ts';
import { databaseUrl, TEMPLATE } from './postgres-url.ts';

export type DatabaseKind = Database['kind'];

export function forEachDatabase(declare: (open: () => Promise<Database>, kind: DatabaseKind) => void): void {
  const kinds = [
    ['on SQLite', 'sqlite'],
    ['on PostgreSQL', 'postgres'],
  ] as const;
  for (const [name, kind] of kinds)
    describe(name, () => {
      afterAll(cleanUp); // hooks run last in, first out: what the tests opened is closed before
      declare(() => openFresh(kind), kind);
    });
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

/** For whatever was asked for outside `forEachDatabase`. */
afterAll(cleanUp);

async function cleanUp(): Promise<void> {
  for (const one of cleanUps.splice(0).reverse()) await one();
}

async function openFresh(kind: DatabaseKind): Promise<Database> {
  const database = await openDatabase(await migratedUrl(kind));
  cleanUps.push(() => database.close());
  return database;
}

function newSqlite(): string {
  return `file:${path.join(inject('scratchFolder'), `${randomUUID()}.db`)}`;
}

/** Made once for a process, however many test files run in it. */
let sqliteTemplate: string | undefined;

async function migratedSqlite(): Promise<string> {
  if (sqliteTemplate === undefined) {
    const url = newSqlite();
    await migrate(url, () => {});
    sqliteTemplate = url.slice('file:'.length);
  }
  if (existsSync(`${sqliteTemplate}-wal`)) throw new Error('The template is still open: its copy would lack rows.');
  const url = newSqlite();
  const file = url.slice('file:'.length);
  copyFileSync(sqliteTemplate, file);
  cleanUps.push(() => {
    for (const end of ['', '-wal', '-shm']) rmSync(`${file}${end}`, { force: true });
  });
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
