import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import compress from '@fastify/compress';
import fastifyStatic from '@fastify/static';
import type { App } from '../app-type.ts';

const assetFolder = fileURLToPath(new URL('../../../views/assets', import.meta.url));
const htmxFolder = path.join(path.dirname(createRequire(import.meta.url).resolve('htmx.org/package.json')), 'dist');

/** Our own files under a prefix that changes with their content, htmx under its version: both may be kept for a year. */
export async function assets(app: App): Promise<void> {
  await app.register(compress, { threshold: 1024, encodings: ['br', 'gzip'] });
  const kept = { immutable: true, maxAge: '365d', index: false } as const;
  await app.register(fastifyStatic, { root: assetFolder, prefix: `/assets/${assetVersion()}/`, ...kept });
  await app.register(fastifyStatic, {
    root: htmxFolder,
    prefix: '/vendor/htmx-4.0.1/',
    decorateReply: false,
    allowedPath: (asked) => /\/(htmx|ext\/hx-[a-z-]+)\.min\.js$/.test(asked),
    ...kept,
  });
}

let version: string | undefined;

/** A short hash over all asset files. */
export function assetVersion(): string {
  version ??= hashFolder();
  return version;
}

function hashFolder(): string {
  const hash = createHash('sha256');
  for (const name of readdirSync(assetFolder).sort())
    hash.update(name).update(readFileSync(path.join(assetFolder, name)));
  return hash.digest('hex').slice(0, 12);
}
