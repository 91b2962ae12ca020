// Counts what the service asks a database for, at the adapter, where nothing can be asked past it:
//
//   const reads = countReads();                       // before the database is opened
//   const { rows } = await reads.during(() => …);     // rows by table
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import { PrismaPg } from '@prisma/adapter-pg';
import type { SqlQuery, SqlResultSet } from '@prisma/driver-adapter-utils';

export interface Counted {
  readonly statements: number;
  /** Rows that came back, by the table they were first selected from. */
  readonly rows: ReadonlyMap<string, number>;
}

interface Asked {
  readonly sql: string;
  readonly rows: number;
}

interface Queryable {
  queryRaw(query: SqlQuery): Promise<SqlResultSet>;
  startTransaction?(...level: never[]): Promise<Queryable>;
}

export function countReads() {
  const asked: Asked[] = [];
  for (const adapter of [PrismaBetterSqlite3, PrismaPg]) {
    const connect: (this: unknown) => Promise<Queryable> = Reflect.get(adapter.prototype, 'connect');
    Reflect.set(adapter.prototype, 'connect', async function connectCounted(this: unknown) {
      return counted(await connect.call(this), asked);
    });
  }
  return {
    async during(work: () => Promise<unknown>): Promise<Counted> {
      asked.length = 0;
      await work();
      const rows = new Map<string, number>();
      for (const one of asked) rows.set(tableOf(one.sql), (rows.get(tableOf(one.sql)) ?? 0) + one.rows);
      return { statements: asked.length, rows };
    },
  };
}

function counted(adapter: Queryable, asked: Asked[]): Queryable {
  const query = adapter.queryRaw.bind(adapter);
  adapter.queryRaw = async (what) => {
    const answer = await query(what);
    asked.push({ sql: what.sql, rows: answer.rows.length });
    return answer;
  };
  const start = adapter.startTransaction?.bind(adapter);
  if (start !== undefined) adapter.startTransaction = async (...level) => counted(await start(...level), asked);
  return adapter;
}

/** `tableOf('SELECT … FROM "public"."Run" WHERE …')` and the same in SQLite's quotes is `Run`. */
function tableOf(sql: string): string {
  return /\bFROM\s+(?:[`"]\w+[`"]\.)?[`"](\w+)[`"]/i.exec(sql)?.[1] ?? '';
}
