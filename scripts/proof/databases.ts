import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { migrate } from '../../src/store/migrate.ts';
import { databaseUrl } from '../../tests/support/postgres-url.ts';

export type DatabaseKind = 'sqlite' | 'postgres';

/** Where proofs and measurements get fresh, migrated databases. */
export interface PlacesToKeep {
  readonly migratedUrl: (kind: DatabaseKind) => Promise<string>;
}

/**
 * Databases that are thrown away at the end: files in a temporary folder, and a PostgreSQL server of our own, started
 * when it is first asked for.
 */
export function throwawayDatabases(): PlacesToKeep & { readonly close: () => Promise<void> } {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'jobbook-throwaway-'));
  let server: Promise<{ readonly url: string; readonly process: ChildProcess }> | undefined;

  async function urlOf(kind: DatabaseKind): Promise<string> {
    const name = `proof_${randomUUID().replaceAll('-', '')}`;
    if (kind === 'sqlite') return `file:${path.join(folder, `${name}.db`)}`;
    server ??= startPostgres();
    const { url } = await server;
    const client = new pg.Client({ connectionString: url });
    await client.connect();
    await client.query(`CREATE DATABASE ${name}`);
    await client.end();
    return databaseUrl(url, name);
  }

  return {
    migratedUrl: async (kind) => {
      const url = await urlOf(kind);
      await migrate(url, () => {});
      return url;
    },
    close: async () => {
      if (server !== undefined) await stop((await server).process);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function startPostgres() {
  const script = fileURLToPath(new URL('../../tests/support/postgres-server.mjs', import.meta.url));
  const server = spawn(process.execPath, [script], { stdio: ['pipe', 'pipe', 'inherit'] });
  const [url] = await Promise.race([
    once(createInterface({ input: server.stdout }), 'line'),
    once(server, 'exit').then(() => Promise.reject(new Error('PostgreSQL did not start; its message is above.'))),
  ]);
  return { url: String(url), process: server };
}

/** The server lives as long as its standard input is open. */
async function stop(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null) return;
  const ended = once(server, 'exit');
  server.stdin?.end();
  await ended;
}
