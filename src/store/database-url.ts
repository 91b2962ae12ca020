import path from 'node:path';
import { fileURLToPath } from 'node:url';

export type DatabaseUrl =
  | { readonly kind: 'sqlite'; readonly file: string }
  | { readonly kind: 'postgres'; readonly url: string };

const projectRoot = fileURLToPath(new URL('../../', import.meta.url));

/**
 * Says which database an address means. A `file:` path that is not absolute counts from the project's root, so that
 * the same address means the same file from whatever folder the process was started.
 */
export function parseDatabaseUrl(url: string): DatabaseUrl {
  if (/^postgres(ql)?:\/\//.test(url)) return { kind: 'postgres', url };
  if (url.startsWith('file:')) return { kind: 'sqlite', file: sqliteFile(url) };
  // The address may hold a password, so only its scheme is repeated.
  const scheme = /^[a-z][a-z0-9+.-]*:/i.exec(url)?.[0] ?? 'no scheme';
  throw new Error(
    `DATABASE_URL must start with "file:" (SQLite) or "postgresql://" (PostgreSQL), but it has ${scheme} – for example file:./data/jobs.db.`,
  );
}

function sqliteFile(url: string): string {
  const named = url.startsWith('file://') ? fileURLToPath(url) : url.slice('file:'.length);
  if (named === '' || named.startsWith(':memory:') || named.includes('?')) {
    throw new Error(
      `DATABASE_URL "${url}" must name a file and nothing else, for example file:./data/jobs.db: the record is kept on disk.`,
    );
  }
  return path.resolve(projectRoot, named);
}
