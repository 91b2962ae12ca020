import { AsyncLocalStorage } from 'node:async_hooks';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Db, Tx } from './database.ts';
import { kindOf, rememberKind } from './database-kind.ts';
import { failureKind } from './failure.ts';

// Releasing a campus of 4 000 runs writes some 190 000 rows and takes several seconds; others wait their turn meanwhile.
const PATIENCE_MS = 60_000;
const ATTEMPTS = 12;

/** How long a transaction may wait to begin, and how long it may then take, in milliseconds. */
export const transactionOptions = { maxWait: PATIENCE_MS, timeout: PATIENCE_MS } as const;

const current = new AsyncLocalStorage<{ open: boolean }>();

/**
 * Runs `work` as one serializable transaction: either all it wrote is kept or nothing. Writes take turns, between server
 * processes too. When one collides all the same (with a statement outside any write) `work` is run again from its start,
 * at most 12 times, so it must do nothing outside `tx`: no mail, no file, no slow wait.
 */
export async function write<T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> {
  refuseInsideWrite();
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await runOnce(db, work);
    } catch (error) {
      if (failureKind(error) !== 'write-conflict' || attempt === ATTEMPTS) throw error;
      await sleep(Math.random() * Math.min(10 * 2 ** attempt, 500));
    }
  }
}

/** A write outside `tx` would wait for the very transaction that it is called from, until both time out. */
export function refuseInsideWrite(): void {
  if (current.getStore()?.open) {
    throw new Error('A write outside the transaction was made inside write(): use the transaction handed to the work.');
  }
}

async function runOnce<T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> {
  const marker = { open: true };
  const kind = kindOf(db);
  const options = { isolationLevel: 'Serializable', ...transactionOptions } as const;
  try {
    return await db.$transaction((tx) => {
      rememberKind(tx, kind);
      // Awaited inside, because a query of Prisma begins only when somebody waits for it.
      return current.run(marker, async () => {
        if (kind === 'postgres') await waitForWriters(tx);
        return await work(tx);
      });
    }, options);
  } finally {
    marker.open = false;
  }
}

/**
 * Every change appends to an audit chain, so two serializable transactions at once nearly always collide, and of fifty some
 * would collide more often than anybody retries. LOCK TABLE takes no snapshot: the transaction first sees the database when
 * it is alone, as after BEGIN IMMEDIATE on SQLite. Reading goes on meanwhile.
 */
async function waitForWriters(tx: Tx): Promise<void> {
  await tx.$executeRaw`LOCK TABLE "AuditEntry" IN SHARE ROW EXCLUSIVE MODE`;
}
