import { setTimeout as sleep } from 'node:timers/promises';
import { isDriverAdapterError } from '@prisma/driver-adapter-utils';

const PATIENCE_MS = 60_000;
const PAUSE_MS = 10;

/**
 * Does `work` on a SQLite connection, again and again while another process holds the file, for at most a minute. It
 * is safe to repeat because SQLite refuses with BUSY before it has changed anything: at BEGIN, or at a lone statement's
 * start. Waiting inside SQLite instead would stop this whole process.
 */
export async function whenFree<T>(work: () => Promise<T>): Promise<T> {
  const deadline = Date.now() + PATIENCE_MS;
  for (;;) {
    try {
      return await work();
    } catch (error) {
      if (!isBusy(error) || Date.now() > deadline) throw error;
    }
    await sleep(1 + Math.random() * PAUSE_MS);
  }
}

function isBusy(error: unknown): boolean {
  return isDriverAdapterError(error) && error.cause.kind === 'SocketTimeout';
}
