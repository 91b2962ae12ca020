import { isDriverAdapterError } from '@prisma/driver-adapter-utils';
import { Prisma } from '../../gen/sqlite/client.ts';

export type FailureKind = 'unique-violation' | 'write-conflict' | 'other';

/**
 * Sorts what a database call threw. Prisma gives model calls a code (P2002, P2034) on both databases; a raw statement
 * arrives as P2010 with the adapter's own error inside, and a COMMIT that fails as that error itself. The rest of
 * `meta` differs between the two databases: do not read it.
 */
export function failureKind(error: unknown): FailureKind {
  if (isDriverAdapterError(error)) return adapterFailureKind(error.cause.kind);
  if (!(error instanceof Prisma.PrismaClientKnownRequestError)) return 'other';
  if (error.code === 'P2002') return 'unique-violation';
  if (error.code === 'P2034') return 'write-conflict';
  if (error.code === 'P2010') return rawFailureKind(error.meta);
  return 'other';
}

/** Whether the row to be written has the unique key of one that is there already. */
export function isUniqueViolation(error: unknown): boolean {
  return failureKind(error) === 'unique-violation';
}

function rawFailureKind(meta: Record<string, unknown> | undefined): FailureKind {
  return adapterFailureKind(property(property(property(meta, 'driverAdapterError'), 'cause'), 'kind'));
}

function adapterFailureKind(kind: unknown): FailureKind {
  if (kind === 'UniqueConstraintViolation') return 'unique-violation';
  if (kind === 'TransactionWriteConflict') return 'write-conflict';
  return 'other';
}

function property(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null && name in value ? Reflect.get(value, name) : undefined;
}
