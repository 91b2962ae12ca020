import { createHash } from 'node:crypto';
import { Readable } from 'node:stream';
import { z } from 'zod';
import { type Chain, FIRST_HASH, walkChain } from './package/audit-chain.ts';
import { MANIFEST, SUMS } from './package/hashed-zip.ts';
import { readZip } from './package/read-zip.ts';

export interface VerifiedCloseout {
  readonly ok: boolean;
  /** What does not hold, in plain words; empty when all of it does. */
  readonly faults: readonly string[];
  readonly files: number;
  readonly audit: { readonly entries: number; readonly head: string };
  readonly manifest: CloseoutManifest | null;
}

const sumSchema = z.object({ name: z.string(), bytes: z.number().int(), sha256: z.string() });
const manifestSchema = z.object({
  format: z.literal('busway-closeout/1'),
  job: z.object({ number: z.string(), name: z.string() }),
  asOf: z.string(),
  designVersion: z.number().int(),
  audit: z.object({ entries: z.number().int(), head: z.string() }),
  files: z.array(sumSchema),
});
export type CloseoutManifest = z.infer<typeof manifestSchema>;

/**
 * Checks a package: every file against `SHA256SUMS` and the manifest, none missing and none besides, and the audit trail from
 * its first entry to the head that the manifest names. Reads the archive once and holds no file but the two lists.
 */
export async function verifyCloseout(zipPath: string): Promise<VerifiedCloseout> {
  const found = new Map<string, { readonly bytes: number; readonly sha256: string }>();
  const kept = new Map<string, string>();
  let chain: Chain = { entries: 0, head: FIRST_HASH, faults: [] };
  try {
    for await (const { name, stream } of readZip(zipPath)) {
      const counted = counting(stream);
      if (name === AUDIT_TRAIL) chain = await walkChain(counted.stream);
      else if (name === SUMS || name === MANIFEST) kept.set(name, await textOf(counted.stream));
      else for await (const _chunk of counted.stream);
      if (found.has(name)) chain = { ...chain, faults: [...chain.faults, `${name} is in the archive twice`] };
      found.set(name, counted.sum());
    }
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    return {
      ok: false,
      faults: [`the archive cannot be read: ${words}`],
      files: found.size,
      audit: chain,
      manifest: null,
    };
  }
  const manifest = readManifest(kept.get(MANIFEST));
  const faults = [
    ...sumFaults(kept.get(SUMS), found),
    ...manifestFaults(manifest, found),
    ...chain.faults,
    ...headFaults(manifest, chain),
  ];
  return {
    ok: faults.length === 0,
    faults,
    files: found.size,
    audit: { entries: chain.entries, head: chain.head },
    manifest,
  };
}

const AUDIT_TRAIL = 'audit-trail.jsonl';

type Found = ReadonlyMap<string, { readonly bytes: number; readonly sha256: string }>;

function counting(stream: Readable) {
  const hash = createHash('sha256');
  let bytes = 0;
  async function* passing() {
    for await (const chunk of stream) {
      hash.update(chunk);
      bytes += chunk.length;
      yield chunk;
    }
  }
  return {
    stream: Readable.from(passing(), { objectMode: false }),
    sum: () => ({ bytes, sha256: hash.digest('hex') }),
  };
}

async function textOf(stream: Readable): Promise<string> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of stream) chunks.push(chunk);
  return Buffer.concat(chunks).toString('utf8');
}

function sumFaults(text: string | undefined, found: Found): string[] {
  if (text === undefined) return [`${SUMS} is missing`];
  const listed = new Map(
    text.split('\n').flatMap((line) => (line === '' ? [] : [[line.slice(66), line.slice(0, 64)] as const])),
  );
  const wrong = [...listed].flatMap(([name, sha256]) => {
    const file = found.get(name);
    if (file === undefined) return [`${name} is missing`];
    return file.sha256 === sha256 ? [] : [`${name} is not the file that ${SUMS} lists`];
  });
  const besides = [...found.keys()].filter((name) => name !== SUMS && !listed.has(name));
  return [...wrong, ...besides.map((name) => `${name} is not listed in ${SUMS}`)];
}

function readManifest(text: string | undefined): CloseoutManifest | null {
  if (text === undefined) return null;
  try {
    return manifestSchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

function manifestFaults(manifest: CloseoutManifest | null, found: Found): string[] {
  if (manifest === null) return [`${MANIFEST} is missing or is not one of these packages'`];
  const wrong = manifest.files.filter(({ name, bytes, sha256 }) => {
    const file = found.get(name);
    return file?.sha256 !== sha256 || file.bytes !== bytes;
  });
  const listed = new Set([...manifest.files.map(({ name }) => name), MANIFEST, SUMS]);
  const besides = [...found.keys()].filter((name) => !listed.has(name));
  return [
    ...wrong.map(({ name }) => `${name} is not the file that the manifest lists`),
    ...besides.map((name) => `${name} is not listed in the manifest`),
  ];
}

function headFaults(manifest: CloseoutManifest | null, chain: Chain): string[] {
  if (manifest === null) return [];
  const same = manifest.audit.entries === chain.entries && manifest.audit.head === chain.head;
  return same ? [] : [`the audit trail ends at entry ${chain.entries}, and not at the head that the manifest names`];
}
