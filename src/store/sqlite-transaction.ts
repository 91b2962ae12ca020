import {
  DriverAdapterError,
  type IsolationLevel,
  isDriverAdapterError,
  type SqlDriverAdapter,
  type Transaction,
} from '@prisma/driver-adapter-utils';
import type { TakeTurn } from './turns.ts';
import { whenFree } from './when-free.ts';

/**
 * Begins a transaction on the one connection that writes, once it is this caller's turn. BEGIN IMMEDIATE takes the
 * file's write lock at once, so that the transaction cannot fail half-way because another process wrote meanwhile.
 */
export async function startTransaction(
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
  return {
    provider: writer.provider,
    adapterName: writer.adapterName,
    options: { usePhantomQuery: false },
    // A transaction that timed out may still have statements coming: they must not land in the next one.
    queryRaw: (query) => whileOpen(() => writer.queryRaw(query)),
    executeRaw: (query) => whileOpen(() => writer.executeRaw(query)),
    createSavepoint: (name) => savepoint(`SAVEPOINT ${name}`),
    rollbackToSavepoint: (name) => savepoint(`ROLLBACK TO ${name}`),
    releaseSavepoint: (name) => savepoint(`RELEASE SAVEPOINT ${name}`),
    async commit() {
      close();
    },
    async rollback() {
      try {
        if (open) await undoLeftOver(writer);
      } finally {
        close();
      }
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
