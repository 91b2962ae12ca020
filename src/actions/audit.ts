import { createHash } from 'node:crypto';
import { canonicalJson } from '../domain/canonical-json.ts';
import type { Reader, Tx } from '../store/database.ts';
import type { Context, Viewer } from './context.ts';

export interface Deed {
  /** The project's id, or 'site' for accounts. */
  readonly chain: string;
  readonly action: string;
  readonly subject: string;
  readonly subjectId: string;
  readonly before?: unknown;
  readonly after?: unknown;
  /** True when `before` or `after` holds prices, rates or the bid: they are then shown to the office alone. */
  readonly money?: boolean;
}

export const FIRST_HASH = '0'.repeat(64);

/** Appends to the chain inside the caller's transaction, so that no change goes unrecorded and no record lacks its change. Answers the entry's number. */
export async function audit(tx: Tx, context: Context, viewer: Viewer | null, deed: Deed): Promise<number> {
  const last = await tx.auditEntry.findFirst({
    where: { chain: deed.chain },
    orderBy: { seq: 'desc' },
    select: { seq: true, hash: true },
  });
  const entry = {
    chain: deed.chain,
    seq: (last?.seq ?? 0) + 1,
    at: context.clock(),
    userId: viewer?.userId ?? null,
    userName: viewer?.name ?? 'system',
    action: deed.action,
    subject: deed.subject,
    subjectId: deed.subjectId,
    money: deed.money ?? false,
    previousHash: last?.hash ?? FIRST_HASH,
  };
  const before = plain(deed.before);
  const after = plain(deed.after);
  const hash = entryHash({ ...entry, at: entry.at.toISOString(), before, after });
  await tx.auditEntry.create({
    data: {
      id: context.newId(),
      ...entry,
      hash,
      ...(before === null ? {} : { before }),
      ...(after === null ? {} : { after }),
    },
  });
  return entry.seq;
}

/** What an entry's hash is taken over. `detailHash` stands for before and after, so that a copy without them still verifies. */
export interface HashedEntry {
  readonly chain: string;
  readonly seq: number;
  readonly at: string;
  readonly userId: string | null;
  readonly userName: string;
  readonly action: string;
  readonly subject: string;
  readonly subjectId: string;
  readonly money: boolean;
  readonly previousHash: string;
  readonly before: unknown;
  readonly after: unknown;
}

/** SHA-256 over the canonical JSON of the entry with the SHA-256 of its details in place of the details. */
export function entryHash(entry: HashedEntry): string {
  const { before, after, ...head } = entry;
  return sha256(canonicalJson({ ...head, detailHash: detailHash(before, after) }));
}

export function detailHash(before: unknown, after: unknown): string {
  return sha256(canonicalJson({ before: before ?? null, after: after ?? null }));
}

/** Walks a chain and says where it first breaks; null when it holds. */
export async function firstBreak(reader: Reader, chain: string): Promise<number | null> {
  let previousHash = FIRST_HASH;
  let expected = 1;
  for (;;) {
    const entries = await reader.auditEntry.findMany({
      where: { chain, seq: { gte: expected } },
      orderBy: { seq: 'asc' },
      take: 1000,
    });
    if (entries.length === 0) return null;
    for (const entry of entries) {
      const { id: _id, hash, at, ...rest } = entry;
      const sound =
        entry.seq === expected &&
        entry.previousHash === previousHash &&
        entryHash({ ...rest, at: at.toISOString() }) === hash;
      if (!sound) return expected;
      previousHash = hash;
      expected += 1;
    }
  }
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** As it will be read back: dates as text, no undefined. */
function plain(value: unknown): never | null {
  if (value === undefined || value === null) return null;
  return JSON.parse(JSON.stringify(value)) as never;
}
