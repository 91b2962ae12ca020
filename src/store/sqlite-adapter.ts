import { setTimeout as sleep } from 'node:timers/promises';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import {
  DriverAdapterError,
  type IsolationLevel,
  isDriverAdapterError,
  type SqlDriverAdapter,
  type SqlDriverAdapterFactory,
  type SqlQuery,
  type SqlQueryable,
  type Transaction,
} from '@prisma/driver-adapter-utils';
import { refuseInsideWrite } from './write-transaction.ts';

// A committed record must survive a power cut: synchronous=FULL syncs the log at every commit (NORMAL would not).
// The writer never waits inside SQLite, which would stop the whole process; `whenFree` waits instead.
const WRITER_PRAGMAS = `PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;
  PRAGMA cache_size = -32000; PRAGMA busy_timeout = 0;`;
const READER_PRAGMAS = 'PRAGMA query_only = ON; PRAGMA cache_size = -32000; PRAGMA busy_timeout = 5000;';

const BUSY_PATIENCE_MS = 15_000;
const BUSY_PAUSE_MS = 10;

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

type TakeTurn = () => Promise<() => void>;

function createTurns(): TakeTurn {
  let last: Promise<void> = Promise.resolve();
  return async () => {
    refuseInsideWrite();
    const before = last;
    let endTurn!: () => void;
    last = new Promise((resolve) => {
      endTurn = resolve;
    });
    await before;
    return endTurn;
  };
}

async function runInTurn<T>(takeTurn: TakeTurn, work: () => Promise<T>): Promise<T> {
  const endTurn = await takeTurn();
  try {
    return await whenFree(work);
  } finally {
    endTurn();
  }
}

// Safe to repeat: SQLite refuses with BUSY before it has changed anything, at BEGIN or at a lone statement's start.
async function whenFree<T>(work: () => Promise<T>): Promise<T> {
  const deadline = Date.now() + BUSY_PATIENCE_MS;
  for (;;) {
    try {
      return await work();
    } catch (error) {
      if (!isBusy(error) || Date.now() > deadline) throw error;
    }
    await sleep(1 + Math.random() * BUSY_PAUSE_MS);
  }
}

function isBusy(error: unknown): boolean {
  return isDriverAdapterError(error) && error.cause.kind === 'SocketTimeout';
}

async function startTransaction(
  writer: SqlDriverAdapter,
  takeTurn: TakeTurn,
  level: IsolationLevel | undefined,
): Promise<Transaction> {
  if (level !== undefined && level !== 'SERIALIZABLE') {
    throw new DriverAdapterError({ kind: 'InvalidIsolationLevel', level });
  }
  const endTurn = await takeTurn();
  try {
    await whenFree(() => writer.executeScript('BEGIN IMMEDIATE'));
    return openTransaction(writer, endTurn);
  } catch (error) {
    endTurn();
    throw error;
  }
}

/** Prisma itself sends COMMIT and ROLLBACK as statements, then calls `commit` or `rollback` to hand the turn on. */
function openTransaction(writer: SqlDriverAdapter, endTurn: () => void): Transaction {
  let open = true;
  const whileOpen = <T>(work: () => Promise<T>): Promise<T> => (open ? work() : Promise.reject(closedTransaction()));
  const savepoint = async (sql: string) => {
    await whileOpen(() => writer.executeRaw({ sql, args: [], argTypes: [] }));
  };
  const close = () => {
    open = false;
    endTurn();
  };
  const queryable: SqlQueryable = {
    provider: writer.provider,
    adapterName: writer.adapterName,
    // A transaction that timed out may still have statements coming: they must not land in the next one.
    queryRaw: (query) => whileOpen(() => writer.queryRaw(query)),
    executeRaw: (query) => whileOpen(() => writer.executeRaw(query)),
  };
  return {
    ...queryable,
    options: { usePhantomQuery: false },
    createSavepoint: (name) => savepoint(`SAVEPOINT ${name}`),
    rollbackToSavepoint: (name) => savepoint(`ROLLBACK TO ${name}`),
    releaseSavepoint: (name) => savepoint(`RELEASE SAVEPOINT ${name}`),
    async commit() {
      close();
    },
    async rollback() {
      if (open) await undoLeftOver(writer);
      close();
    },
  };
}

// After a COMMIT that failed Prisma sends no ROLLBACK, which would leave the transaction open for whoever comes next;
// after a ROLLBACK that it did send there is nothing to undo, which SQLite reports as an error.
async function undoLeftOver(writer: SqlDriverAdapter): Promise<void> {
  try {
    await writer.executeScript('ROLLBACK');
  } catch (error) {
    if (!(isDriverAdapterError(error) && /no transaction is active/.test(error.cause.originalMessage ?? '')))
      throw error;
  }
}

function closedTransaction(): DriverAdapterError {
  return new DriverAdapterError({
    kind: 'TransactionAlreadyClosed',
    cause: 'A statement came after its transaction ended.',
  });
}
