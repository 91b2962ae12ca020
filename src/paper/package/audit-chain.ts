import { createHash } from 'node:crypto';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import { z } from 'zod';
import { canonicalJson } from '../../domain/canonical-json.ts';

/** What the first entry of a chain names as the hash before it. */
export const FIRST_HASH = '0'.repeat(64);

/** How far an audit trail holds: what was read, the hash it ends with, and where it first breaks. */
export interface Chain {
  readonly entries: number;
  readonly head: string;
  readonly faults: readonly string[];
}

/** Walks a trail of one entry a line from its first entry on, and computes every hash again. */
export async function walkChain(stream: Readable): Promise<Chain> {
  let entries = 0;
  let head = FIRST_HASH;
  const faults: string[] = [];
  for await (const line of createInterface({ input: stream, crlfDelay: Number.POSITIVE_INFINITY })) {
    entries += 1;
    const hash = hashOf(line, entries, head);
    if (hash === null && faults.length === 0) faults.push(`the audit trail breaks at entry ${entries}`);
    head = hash ?? head;
  }
  return { entries, head, faults };
}

const lineSchema = z.looseObject({
  seq: z.number(),
  detailHash: z.string(),
  previousHash: z.string(),
  hash: z.string(),
  before: z.unknown().optional(),
  after: z.unknown().optional(),
});

/** The entry's hash when it stands where it should and is what it says; null when it does not. */
function hashOf(line: string, seq: number, previousHash: string): string | null {
  const entry = lineSchema.safeParse(parsed(line));
  if (!entry.success) return null;
  const { hash, before, after, ...head } = entry.data;
  const hasDetails = 'before' in entry.data || 'after' in entry.data;
  const details = sha256(canonicalJson({ before: before ?? null, after: after ?? null }));
  const sound =
    head.seq === seq &&
    head.previousHash === previousHash &&
    (!hasDetails || details === head.detailHash) &&
    sha256(canonicalJson(head)) === hash;
  return sound ? hash : null;
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
