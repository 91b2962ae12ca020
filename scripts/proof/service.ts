import { randomUUID } from 'node:crypto';
import type { Context } from '../../src/actions/context.ts';
import { makeToken } from '../../src/actions/tokens.ts';
import { buildApp } from '../../src/app.ts';
import { openDatabase } from '../../src/store/database.ts';

export interface Service {
  readonly context: Context;
  readonly url: string;
  readonly close: () => Promise<void>;
}

/** One server process's worth of the service, on its own connection to the database, listening on a free port. */
export async function openService(databaseUrl: string): Promise<Service> {
  const database = await openDatabase(databaseUrl);
  const context: Context = { database, clock: () => new Date(), newId: randomUUID };
  const app = await buildApp({
    config: { logLevel: 'silent', tls: null, trustProxy: false, publicUrl: null },
    context,
    sessionSecret: randomUUID(),
  });
  const url = await app.listen({ host: '127.0.0.1', port: 0 });
  return {
    context,
    url,
    close: async () => {
      app.server.closeAllConnections();
      await app.close();
      await database.close();
    },
  };
}

/** A token of a new administrator. */
export async function administratorToken({ context }: Service): Promise<string> {
  const person = { name: 'Ada Marsh', email: 'ada@plover-quay.example', administrator: true };
  const user = await context.database.db.user.create({
    data: { id: randomUUID(), ...person, passwordHash: '', createdAt: context.clock() },
  });
  const { secret } = await makeToken(context, { userId: user.id, ...person }, 'measurements', null);
  if (secret === null) throw new Error('A new token has no secret.');
  return secret;
}

export interface Answer {
  readonly status: number;
  readonly etag: string;
  readonly body: unknown;
}

/** One request to the public API. */
export async function ask(
  base: string,
  token: string,
  method: string,
  path: string,
  body?: unknown,
  headers: Readonly<Record<string, string>> = {},
): Promise<Answer> {
  const response = await fetch(`${base}/api/v1${path}`, {
    method,
    headers: {
      authorization: `Bearer ${token}`,
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      ...headers,
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  const text = await response.text();
  return {
    status: response.status,
    etag: response.headers.get('etag') ?? '',
    body: text === '' ? null : JSON.parse(text),
  };
}
