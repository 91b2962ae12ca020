import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import type { SqlDriverAdapter, SqlDriverAdapterFactory, SqlQuery } from '@prisma/driver-adapter-utils';
import { startTransaction } from './sqlite-transaction.ts';
import { createTurns, type TakeTurn } from './turns.ts';
import { whenFree } from './when-free.ts';

// A committed record must survive a power cut: synchronous=FULL syncs the log at every commit (NORMAL would not).
// The writer never waits inside SQLite, which would stop the whole process; `whenFree` waits instead.
const WRITER_PRAGMAS = `PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;
  PRAGMA cache_size = -32000; PRAGMA busy_timeout = 0;`;
const READER_PRAGMAS = 'PRAGMA query_only = ON; PRAGMA cache_size = -32000; PRAGMA busy_timeout = 5000;';

/**
 * The SQLite adapter of Prisma made safe for a server with many requests at once.
 *
 * Used bare, the stock adapter runs every request on one connection: a write made while another request's transaction
 * is open falls inside that transaction, is acknowledged, and vanishes when the other one rolls back; readers see what
 * is not committed yet. Here reads have a connection of their own (and so see committed rows only), every write and
 * every transaction takes its turn on the single writer, and a transaction starts with BEGIN IMMEDIATE, so that two
 * processes on one file wait for each other instead of failing half-way.
 */
export function safeSqlite(file: string): SqlDriverAdapterFactory {
  const names = { provider: 'sqlite', adapterName: '@prisma/adapter-better-sqlite3' } as const;
  return {
    ...names,
    async connect(): Promise<SqlDriverAdapter> {
      const writer = await connectStock(file, false, WRITER_PRAGMAS);
      const reader = await connectStock(file, true, READER_PRAGMAS);
      const takeTurn = createTurns();
      const inTurn = <T>(work: () => Promise<T>) => runInTurn(takeTurn, work);
      return {
        ...names,
        queryRaw: (query) => (isRead(query) ? reader.queryRaw(query) : inTurn(() => writer.queryRaw(query))),
        executeRaw: (query) => inTurn(() => writer.executeRaw(query)),
        executeScript: (script) => inTurn(() => writer.executeScript(script)),
        startTransaction: (level) => startTransaction(writer, takeTurn, level),
        async dispose() {
          await reader.dispose();
          await writer.dispose();
        },
      };
    },
  };
}

async function connectStock(file: string, readonly: boolean, pragmas: string): Promise<SqlDriverAdapter> {
  const adapter = await new PrismaBetterSqlite3({ url: file, readonly, fileMustExist: true }).connect();
  await adapter.executeScript(pragmas);
  return adapter;
}

// Anything that is not plainly a read goes to the writer, where it is slower but never wrong.
function isRead(query: SqlQuery): boolean {
  return /^\s*(select|explain)\b/i.test(query.sql);
}

async function runInTurn<T>(takeTurn: TakeTurn, work: () => Promise<T>): Promise<T> {
  const endTurn = await takeTurn();
  try {
    return await whenFree(work);
  } finally {
    endTurn();
  }
}
