import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import { PrismaClient as SqliteClient } from '../../gen/sqlite/client.ts';
import type { Database, Db, Reader, Tx } from './database.ts';
import { rememberKind } from './database-kind.ts';

/** The record as it stood at one moment, however long it is read; nobody who writes waits for it. */
export interface Snapshot {
  readonly reader: Reader;
  /** Never fails: a snapshot that ran out, or whose database is gone, is closed already. */
  close(): Promise<void>;
}

/** A download over a slow line may take this long; after it the snapshot is given up and reading fails. */
const LONGEST_MS = 30 * 60_000;
const WAIT_MS = 15_000;

/**
 * Opens a view of the whole database that later writes do not change: a read transaction on a connection of its own. Close
 * it, or it holds a connection (PostgreSQL) or keeps the log from being folded in (SQLite) until it runs out.
 */
export async function openSnapshot(database: Database): Promise<Snapshot> {
  return database.kind === 'sqlite' ? openSqlite(database.db) : openPostgres(database.db);
}

/** Not the shared client: its transactions are for writing, and one at a time. SQLite takes the view at the first read. */
async function openSqlite(db: Db): Promise<Snapshot> {
  const rows = await db.$queryRaw<{ file: string }[]>`SELECT file FROM pragma_database_list WHERE name = 'main'`;
  const file = rows[0]?.file;
  if (file === undefined) throw new Error('SQLite names no file for its main database');
  const adapter = new PrismaBetterSqlite3({ url: file, readonly: true, fileMustExist: true });
  const client = new SqliteClient({ adapter });
  const held = await hold(client, 'sqlite', (tx) => tx.$queryRaw`SELECT count(*) FROM "Project"`);
  return {
    reader: held.reader,
    close: async () => {
      await held.close();
      await client.$disconnect();
    },
  };
}

async function openPostgres(db: Db): Promise<Snapshot> {
  return hold(db, 'postgres', async (tx) => {
    await tx.$executeRaw`SET TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY`;
    await tx.$queryRaw`SELECT count(*) FROM "Project"`;
  });
}

/** A transaction that stays open until it is closed from outside. */
async function hold(client: Db, kind: Database['kind'], begin: (tx: Tx) => Promise<unknown>): Promise<Snapshot> {
  let end: () => void = () => {};
  const ended = new Promise<void>((resolve) => {
    end = resolve;
  });
  return new Promise((resolve, reject) => {
    const done = client.$transaction(
      async (tx) => {
        rememberKind(tx, kind);
        await begin(tx);
        resolve({
          reader: tx,
          close: async () => {
            end();
            await done.catch(() => {}); // given up after its time: what was read then failed already, and said so
          },
        });
        await ended;
      },
      { maxWait: WAIT_MS, timeout: LONGEST_MS },
    );
    done.catch(reject);
  });
}
