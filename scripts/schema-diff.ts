import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import {
  bindMigrationAwareSqlAdapterFactory,
  ColumnTypeEnum,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils';
import * as engine from '@prisma/schema-engine-wasm/schema_engine_bg';

export type Provider = 'sqlite' | 'postgres';
export const providers: readonly Provider[] = ['sqlite', 'postgres'];

/**
 * The SQL that turns a database of the schema `from` (undefined: an empty one) into one of the schema `to`; empty text
 * when they are the same. Both are texts of Prisma schemas; no database is needed.
 */
export async function schemaDiff(provider: Provider, from: string | undefined, to: string): Promise<string> {
  await loadEngine();
  const adapter = bindMigrationAwareSqlAdapterFactory(factories[provider]());
  const schemaEngine = await engine.SchemaEngine.new({ datamodels: [['schema.prisma', to]] }, () => {}, adapter);
  try {
    const result = await schemaEngine.diff({
      from: from === undefined ? { tag: 'empty' } : datamodel(from),
      to: datamodel(to),
      script: true,
      exitCode: true,
      filters: { externalTables: [], externalEnums: [] },
    });
    const changed = result.exitCode === 2;
    return changed ? (result.stdout ?? '') : '';
  } finally {
    schemaEngine.free();
  }
}

/** The schema as it is now: written by hand for SQLite, stamped from that for PostgreSQL by scripts/setup.mjs. */
export async function currentSchema(provider: Provider): Promise<string> {
  const file = provider === 'sqlite' ? '../prisma/schema.prisma' : '../prisma/.derived/postgres.prisma';
  return readFile(new URL(file, import.meta.url), 'utf8');
}

function datamodel(content: string): engine.DiffTarget {
  return { tag: 'schemaDatamodel', files: [{ path: 'schema.prisma', content }] };
}

// Node has it; the compiler's ES2023 library does not name it.
declare const WebAssembly: {
  instantiate(bytes: Uint8Array, imports: object): Promise<{ instance: { exports: { __wbindgen_start(): void } } }>;
};

let loading: Promise<void> | undefined;

// The package expects a bundler to link its WebAssembly; this is that link done by hand.
function loadEngine(): Promise<void> {
  loading ??= (async () => {
    const file = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
    const bytes = await readFile(file.replace(/\.js$/, '.wasm'));
    const { instance } = await WebAssembly.instantiate(bytes, { './schema_engine_bg.js': engine });
    engine.__wbg_set_wasm(instance.exports);
    instance.exports.__wbindgen_start();
  })();
  return loading;
}

const factories: Record<Provider, () => SqlMigrationAwareDriverAdapterFactory> = {
  sqlite: () => new PrismaBetterSqlite3({ url: ':memory:' }),
  postgres: postgresWithoutServer,
};

// For PostgreSQL the engine asks one thing only, the server's version, so no server has to run.
function postgresWithoutServer(): SqlMigrationAwareDriverAdapterFactory {
  const names = { provider: 'postgres', adapterName: 'version-answer' } as const;
  const adapter: SqlDriverAdapter = {
    ...names,
    queryRaw: async () => ({
      columnNames: ['exists', 'version', 'numeric_version'],
      columnTypes: [ColumnTypeEnum.Boolean, ColumnTypeEnum.Text, ColumnTypeEnum.Int32],
      rows: [[true, 'PostgreSQL 16.4', 160004]],
    }),
    executeRaw: async () => 0,
    executeScript: async () => {},
    startTransaction: () => Promise.reject(new Error('A comparison of two schemas needs no transaction.')),
    getConnectionInfo: () => ({ schemaName: 'public', supportsRelationJoins: true }),
    dispose: async () => {},
  };
  return { ...names, connect: async () => adapter, connectToShadowDb: async () => adapter };
}
