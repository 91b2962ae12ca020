import { existsSync } from 'node:fs';
import { type Prisma, PrismaClient as SqliteClient } from '../../gen/sqlite/client.ts';
import { rememberKind } from './database-kind.ts';
import { parseDatabaseUrl } from './database-url.ts';
import { safeSqlite } from './sqlite-adapter.ts';
import { createTurns } from './turns.ts';
import { transactionOptions, write } from './write-transaction.ts';

export { isUniqueViolation } from './failure.ts';

/** The SQLite client is the narrower of the two generated types: what compiles against it runs on both databases. */
export type Db = SqliteClient;
export type Tx = Prisma.TransactionClient;
/** For queries that may run outside or inside a transaction. */
export type Reader = Db | Tx;

export type Database = {
  readonly kind: 'sqlite' | 'postgres';
  readonly db: Db;
  /** One serializable transaction, in turn with all others; may run again, so do nothing in `work` outside `tx`. */
  write<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  close(): Promise<void>;
};

const POSTGRES_CONNECTIONS = 10;

/**
 * Opens a database that `migrate` has prepared. `file:` is SQLite (a relative path counts from the project's root),
 * `postgresql:` is PostgreSQL. Throws a sentence when the address is neither, or when the file is not there.
 */
export async function openDatabase(url: string): Promise<Database> {
  const target = parseDatabaseUrl(url);
  const db = target.kind === 'sqlite' ? sqliteClient(target.file) : await postgresClient(target.url);
  rememberKind(db, target.kind);
  await db.$connect();
  const kind = target.kind;
  return { kind, db, write: kind === 'sqlite' ? (work) => write(db, work) : inTurn(db), close: () => db.$disconnect() };
}

/** The SQLite adapter has a queue of its own; waiting writes must not hold PostgreSQL's few connections, which readers need. */
function inTurn(db: Db): Database['write'] {
  const takeTurn = createTurns();
  return async (work) => {
    const endTurn = await takeTurn();
    try {
      return await write(db, work);
    } finally {
      endTurn();
    }
  };
}

function sqliteClient(file: string): Db {
  if (!existsSync(file)) throw new Error(`There is no database at ${file} yet: run "npm run migrate" first.`);
  return new SqliteClient({ adapter: safeSqlite(file), transactionOptions });
}

// Loaded only when asked for: a site on SQLite should not pay for the second client at every start.
async function postgresClient(url: string): Promise<Db> {
  const [{ PrismaClient }, { PrismaPg }] = await Promise.all([
    import('../../gen/postgres/client.ts'),
    import('@prisma/adapter-pg'),
  ]);
  const adapter = new PrismaPg({ connectionString: url, max: POSTGRES_CONNECTIONS });
  // The one cast of the store. Both clients are generated from one set of models; PostgreSQL's only offers more.
  return new PrismaClient({ adapter, transactionOptions }) as unknown as Db;
}
