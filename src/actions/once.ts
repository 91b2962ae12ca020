import { createHash } from 'node:crypto';
import { canonicalJson } from '../domain/canonical-json.ts';
import type { Tx } from '../store/database.ts';
import type { Context, Viewer } from './context.ts';
import { refuse } from './refused.ts';

/** The caller's key for one create, and what was asked with it. */
export interface Submission {
  readonly key: string;
  readonly request: unknown;
}

/**
 * A create that a double tap, a resend or a retry makes once: the same key with the same request gives the first answer again;
 * with another request it is refused. Without a key the work is simply done.
 */
export async function once<T>(
  tx: Tx,
  context: Context,
  viewer: Viewer,
  submission: Submission | null,
  work: () => Promise<T>,
): Promise<T> {
  if (submission === null) return work();
  const requestHash = createHash('sha256')
    .update(canonicalJson(submission.request ?? null))
    .digest('hex');
  const id = { userId: viewer.userId, key: submission.key };
  const known = await tx.submission.findUnique({ where: { userId_key: id } });
  if (known !== null) {
    if (known.requestHash !== requestHash) refuse({ code: 'key-reused' });
    return known.body as T;
  }
  const answer = await work();
  const body = JSON.parse(JSON.stringify(answer ?? null)) as never;
  await tx.submission.create({ data: { ...id, requestHash, status: 201, body, createdAt: context.clock() } });
  return answer;
}
