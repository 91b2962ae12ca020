import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { migrate } from '../../src/store/migrate.ts';
import { databaseUrl, TEMPLATE } from './postgres-url.ts';

declare module 'vitest' {
  interface ProvidedContext {
    postgresBroker: string;
    /** Gone after the run, with everything in it. */
    scratchFolder: string;
  }
}

/**
 * Runs once for the whole test run. It starts no server: it only answers, on a port of the loopback, the address of
 * one, and makes that server when a test file asks for the first time. So a run that needs no PostgreSQL pays nothing.
 */
export default async function postgresBroker(project: TestProject): Promise<() => Promise<void>> {
  const servers: ChildProcess[] = [];
  let url: Promise<string> | undefined;
  const broker = createServer(async (_request, response) => {
    url ??= startServer(servers);
    await url.then(
      (answer) => response.end(answer),
      (error: unknown) => response.writeHead(500).end(String(error)),
    );
  });
  broker.listen(0, '127.0.0.1');
  await once(broker, 'listening');
  const scratch = mkdtempSync(path.join(os.tmpdir(), 'jobbook-test-'));
  project.provide('scratchFolder', scratch);
  project.provide('postgresBroker', `http://127.0.0.1:${portOf(broker.address())}/`);
  return async () => {
    broker.closeAllConnections();
    broker.close();
    await Promise.all(servers.map(stopServer));
    rmSync(scratch, { recursive: true, force: true });
  };
}

function portOf(address: AddressInfo | string | null): number {
  if (address === null || typeof address === 'string') throw new Error('The broker listens on no port.');
  return address.port;
}

async function startServer(servers: ChildProcess[]): Promise<string> {
  const script = fileURLToPath(new URL('./postgres-server.mjs', import.meta.url));
  const server = spawn(process.execPath, [script], { stdio: ['pipe', 'pipe', 'inherit'] });
  servers.push(server);
  const [url] = await Promise.race([
    once(createInterface({ input: server.stdout }), 'line'),
    once(server, 'exit').then(() => Promise.reject(new Error('PostgreSQL did not start; its message is above.'))),
  ]);
  await makeTemplate(url);
  return url;
}

// New databases are copies of this one, which is quicker than running the migrations for each.
async function makeTemplate(url: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(`CREATE DATABASE ${TEMPLATE}`);
  await client.end();
  await migrate(databaseUrl(url, TEMPLATE), () => {});
}

async function stopServer(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null) return;
  const ended = once(server, 'exit');
  server.stdin?.end();
  await ended;
}
