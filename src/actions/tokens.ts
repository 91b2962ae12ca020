import { randomBytes } from 'node:crypto';
import { z } from 'zod';
import { hashSecret } from './accounts.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { once, type Submission } from './once.ts';
import { refuse } from './refused.ts';

export const tokenSchema = z.object({
  id: z.string(),
  label: z.string(),
  createdAt: z.string(),
  lastUsedAt: z.string().nullable(),
  revoked: z.boolean(),
});
export type TokenView = z.infer<typeof tokenSchema>;

const PREFIX = 'bjb_';

/**
 * A token for scripts, with the rights of its maker. The secret is told once and the record keeps its hash alone, so the
 * same submission sent again answers with the same token and without the secret.
 */
export async function makeToken(
  context: Context,
  viewer: Viewer,
  label: string,
  submission: Submission | null,
): Promise<{ token: TokenView; secret: string | null }> {
  const secret = PREFIX + randomBytes(24).toString('base64url');
  let told: string | null = null;
  const token = await context.database.write((tx) => {
    told = null;
    return once(tx, context, viewer, submission, async () => {
      const row = await tx.apiToken.create({
        data: {
          id: context.newId(),
          userId: viewer.userId,
          label,
          hash: hashSecret(secret),
          createdAt: context.clock(),
        },
      });
      await audit(tx, context, viewer, {
        chain: 'site',
        action: 'token made',
        subject: 'token',
        subjectId: row.id,
        after: { label },
      });
      told = secret;
      return viewOf(row);
    });
  });
  return { token, secret: told };
}

export async function listTokens(context: Context, viewer: Viewer): Promise<TokenView[]> {
  const rows = await context.database.db.apiToken.findMany({
    where: { userId: viewer.userId },
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
  });
  return rows.map(viewOf);
}

export async function revokeToken(context: Context, viewer: Viewer, id: string): Promise<void> {
  await context.database.write(async (tx) => {
    const gone = await tx.apiToken.updateMany({
      where: { id, userId: viewer.userId, revokedAt: null },
      data: { revokedAt: context.clock() },
    });
    if (gone.count === 0) refuse({ code: 'not-found', what: 'token' });
    await audit(tx, context, viewer, { chain: 'site', action: 'token revoked', subject: 'token', subjectId: id });
  });
}

/** The person behind a bearer token, or null. Notes the use at most once a minute, so that reading does not write all day. */
export async function viewerByToken(context: Context, secret: string): Promise<Viewer | null> {
  const row = await context.database.db.apiToken.findUnique({
    where: { hash: hashSecret(secret) },
    include: { user: true },
  });
  if (row === null || row.revokedAt !== null || row.user.disabledAt !== null) return null;
  const now = context.clock();
  if (row.lastUsedAt === null || now.getTime() - row.lastUsedAt.getTime() > 60_000) {
    await context.database.db.apiToken.updateMany({ where: { id: row.id }, data: { lastUsedAt: now } });
  }
  return { userId: row.user.id, name: row.user.name, email: row.user.email, administrator: row.user.administrator };
}

function viewOf(row: {
  id: string;
  label: string;
  createdAt: Date;
  lastUsedAt: Date | null;
  revokedAt: Date | null;
}): TokenView {
  return {
    id: row.id,
    label: row.label,
    createdAt: row.createdAt.toISOString(),
    lastUsedAt: row.lastUsedAt?.toISOString() ?? null,
    revoked: row.revokedAt !== null,
  };
}
