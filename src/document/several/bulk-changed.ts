import type { RunDocument } from '../schema/run.ts';
import type { BulkField, BulkSet } from './bulk-schema.ts';

/** A run with the fields of `set` changed: what is not named stays, null takes a field away. Equal values change nothing. */
export function bulkChanged(run: RunDocument, set: BulkSet): RunDocument {
  const { elevationMm, end, supply, deviceA, faultKA, xOverR, terminations, side, ...own } = set;
  const start = run.start ?? { xMm: 0, yMm: 0, zMm: 0 };
  const changed = {
    ...run,
    ...given({ ...own, end: endOf(run, end) }),
    ...(side === undefined ? {} : { side }),
    ...(elevationMm === undefined || elevationMm === (run.start?.zMm ?? 0)
      ? {}
      : { start: { ...start, zMm: elevationMm } }),
    feed: withoutNulls({ ...run.feed, ...given({ supply, deviceA, faultKA, xOverR, terminations }) }),
  };
  return withoutNulls(changed, 'side') as RunDocument;
}

/** What a field of `set` is in a run; null where it states none. */
export function bulkValue(run: RunDocument, field: BulkField): unknown {
  switch (field) {
    case 'elevationMm':
      return run.start?.zMm ?? 0;
    case 'supply':
    case 'deviceA':
    case 'faultKA':
    case 'xOverR':
    case 'terminations':
      return run.feed[field] ?? null;
    case 'end': {
      const last = run.legs.at(-1)?.lengthMm ?? 0;
      if (run.end === undefined) return null;
      return { shortMm: tidy(last - run.end.reachMm), longMm: tidy(run.end.hardStopMm - last) };
    }
    default:
      return run[field] ?? null;
  }
}

function endOf(run: RunDocument, end: BulkSet['end']): RunDocument['end'] | null {
  if (end === undefined || end === null) return end;
  const last = run.legs.at(-1)?.lengthMm ?? 0;
  return { reachMm: Math.max(0, tidy(last - end.shortMm)), hardStopMm: tidy(last + end.longMm) };
}

function given<T extends object>(fields: T): Partial<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<T>;
}

function withoutNulls<T extends object>(fields: T, kept?: keyof T): T {
  return Object.fromEntries(Object.entries(fields).filter(([key, value]) => value !== null || key === kept)) as T;
}

function tidy(mm: number): number {
  return Math.round(mm * 10_000) / 10_000;
}
