import { createWriteStream, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { afterAll } from 'vitest';
import { readZip } from '../../../src/paper/package/read-zip.ts';

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A folder of its own, removed with the test. */
export function aFolder(): string {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'closeout-test-'));
  folders.push(folder);
  return folder;
}

/** Writes a package to a file and hands back where. */
export async function kept(stream: Readable): Promise<string> {
  const file = path.join(aFolder(), 'package.zip');
  await pipeline(stream, createWriteStream(file));
  return file;
}

/** The same for bytes that are there already. */
export function keptBytes(bytes: Uint8Array): string {
  const file = path.join(aFolder(), 'package.zip');
  writeFileSync(file, bytes);
  return file;
}

/** The files of a package by name, in its order. */
export async function unpacked(zip: string): Promise<Map<string, Buffer>> {
  const files = new Map<string, Buffer>();
  for await (const { name, stream } of readZip(zip)) {
    const chunks: Uint8Array[] = [];
    for await (const chunk of stream) chunks.push(chunk);
    files.set(name, Buffer.concat(chunks));
  }
  return files;
}

export const bytesOf = (file: string): Buffer => readFileSync(file);
