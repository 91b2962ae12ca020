import { randomBytes, randomUUID } from 'node:crypto';
import { firstAccountSecret } from './actions/accounts.ts';
import type { Context } from './actions/context.ts';
import { buildApp } from './app.ts';
import { type Config, readConfig } from './config.ts';
import { openDatabase } from './store/database.ts';
import { siteSecret } from './store/site-secret.ts';

/** The process: reads the environment, opens the record, listens, and closes gracefully. */
async function serve(): Promise<void> {
  const config = readConfig();
  const database = await openDatabase(config.databaseUrl);
  const context: Context = { database, clock: () => new Date(), newId: randomUUID };
  const app = await buildApp({
    config,
    context,
    sessionSecret: await siteSecret(database, () => randomBytes(32).toString('hex')),
  });
  await app.listen({ host: config.host, port: config.port });
  await greet(config, context, listeningPort(app.server.address()));

  let closing = false;
  const close = async () => {
    if (closing) return;
    closing = true;
    app.server.closeAllConnections();
    await app.close();
    await database.close();
  };
  process.once('SIGINT', () => void close());
  process.once('SIGTERM', () => void close());
}

async function greet(config: Config, context: Context, port: number): Promise<void> {
  const host = config.host.includes(':') ? `[${config.host}]` : config.host;
  const url = config.publicUrl ?? `${config.tls === null ? 'http' : 'https'}://${host}:${port}`;
  process.stdout.write(`Busway Job Book is at ${url}\n`);
  const secret = await firstAccountSecret(context);
  if (secret !== null)
    process.stdout.write(
      `Nobody has an account yet. Make the first one here (the link works once):\n  ${url}/first-account/${secret}\n`,
    );
}

function listeningPort(address: ReturnType<import('node:net').Server['address']>): number {
  return typeof address === 'object' && address !== null ? address.port : 0;
}

await serve();
