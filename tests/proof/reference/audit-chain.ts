import { createHash } from 'node:crypto';

/** One entry of an audit trail as it is stored. */
export interface ChainEntry {
  readonly chain: string;
  readonly seq: number;
  readonly at: Date;
  readonly userId: string | null;
  readonly userName: string;
  readonly action: string;
  readonly subject: string;
  readonly subjectId: string;
  readonly money: boolean;
  readonly before: unknown;
  readonly after: unknown;
  readonly previousHash: string;
  readonly hash: string;
}

/**
 * Where a chain first breaks, counted from 1; null when it holds. Written again from what the contributor's guide says of
 * it: numbers without a gap, each entry naming the hash before it, and each hash taken over the entry with the hash of its
 * details in their place, as JSON with sorted keys.
 */
export function chainBreak(entries: readonly ChainEntry[]): number | null {
  let previous = '0'.repeat(64);
  for (const [i, entry] of entries.entries()) {
    const { before, after, hash, at, chain, seq, userId, userName, action, subject, subjectId, money, previousHash } =
      entry;
    const detailHash = sha256(sortedJson({ after, before }));
    const head = { action, at: at.toISOString(), chain, detailHash, money, previousHash, seq, subject, subjectId };
    const expected = sha256(sortedJson({ ...head, userId, userName }));
    if (seq !== i + 1 || previousHash !== previous || hash !== expected) return i + 1;
    previous = hash;
  }
  return null;
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

function sortedJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(sortedJson).join(',')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  const members = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${members.map(([key, held]) => `${JSON.stringify(key)}:${sortedJson(held)}`).join(',')}}`;
}
