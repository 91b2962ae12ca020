import type { Database, Reader } from './database.ts';

const kinds = new WeakMap<Reader, Database['kind']>();

export function rememberKind(reader: Reader, kind: Database['kind']): void {
  kinds.set(reader, kind);
}

/** Which database a client or a transaction speaks to, for the few statements written by hand. */
export function kindOf(reader: Reader): Database['kind'] {
  const kind = kinds.get(reader);
  if (kind === undefined) throw new Error('This client did not come from openDatabase() or write(); use those.');
  return kind;
}
