import { createHash, randomBytes } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';
import { z } from 'zod';
import { isUniqueViolation, type Reader } from '../store/database.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { once, type Submission } from './once.ts';
import { refuse } from './refused.ts';
import { assertVersion } from './version.ts';

const LINK_LIFE_MS = 72 * 3600 * 1000;
/** A hash to verify against when there is no such account, so that both answers take as long. */
const nobody = hash(randomBytes(16).toString('hex'));

export const passwordSchema = z
  .string()
  .min(10, 'at least 10 characters')
  .max(200)
  .describe('At least 10 characters; a few words are easier to remember than signs.');

export const accountSchema = z.strictObject({
  name: z.string().trim().min(1).max(120),
  email: z.email().max(200),
  password: passwordSchema,
});

export const inviteSchema = z.strictObject({
  name: z.string().trim().min(1).max(120),
  email: z.email().max(200),
  administrator: z.boolean().default(false),
});

export const userSchema = z.object({
  id: z.string(),
  name: z.string(),
  email: z.string(),
  administrator: z.boolean(),
  disabled: z.boolean(),
  version: z.number().int(),
});
export type UserView = z.infer<typeof userSchema>;

/** True while nobody has an account; the first link is then the only way in. */
export async function isEmpty(reader: Reader): Promise<boolean> {
  return (await reader.user.findFirst({ select: { id: true } })) === null;
}

/** A fresh one-time secret for the first account, or null when there is one already. Older first links stop working. */
export async function firstAccountSecret(context: Context): Promise<string | null> {
  return context.database.write(async (tx) => {
    if (!(await isEmpty(tx))) return null;
    await tx.oneTimeLink.deleteMany({ where: { purpose: 'first-account' } });
    return newLink(context, tx, 'first-account', null);
  });
}

/** Makes the first administrator from the one-time link. */
export async function makeFirstAccount(
  context: Context,
  secret: string,
  input: z.infer<typeof accountSchema>,
): Promise<Viewer> {
  const passwordHash = await hash(input.password);
  return context.database.write(async (tx) => {
    await useLink(context, tx, secret, 'first-account');
    if (!(await isEmpty(tx))) refuse({ code: 'used-link' });
    const user = await tx.user.create({
      data: {
        id: context.newId(),
        email: input.email.toLowerCase(),
        name: input.name,
        passwordHash,
        administrator: true,
        createdAt: context.clock(),
      },
    });
    await audit(tx, context, null, {
      chain: 'site',
      action: 'first account made',
      subject: 'user',
      subjectId: user.id,
      after: viewOf(user),
    });
    return viewerOf(user);
  });
}

/** Checks a login; the same refusal for an unknown address, a wrong password and a closed account. */
export async function login(
  context: Context,
  input: { readonly email: string; readonly password: string },
): Promise<Viewer> {
  const user = await context.database.db.user.findUnique({ where: { email: input.email.trim().toLowerCase() } });
  const sound = await verify(user?.passwordHash || (await nobody), input.password).catch(() => false);
  if (user === null || !sound || user.disabledAt !== null) refuse({ code: 'wrong-login' });
  return viewerOf(user);
}

/** The person behind a session, or null when the account is gone or closed. */
export async function findViewer(context: Context, userId: string): Promise<Viewer | null> {
  const user = await context.database.db.user.findUnique({ where: { id: userId } });
  return user === null || user.disabledAt !== null ? null : viewerOf(user);
}

/**
 * An account without a password yet, and the secret of the link by which its owner sets one. Sent again under the same
 * submission it answers with the same account and without the secret: `newPasswordLink` makes another.
 */
export async function invite(
  context: Context,
  viewer: Viewer,
  input: z.infer<typeof inviteSchema>,
  submission: Submission | null,
): Promise<{ user: UserView; secret: string | null }> {
  if (!viewer.administrator) refuse({ code: 'forbidden', needs: 'administrator' });
  const email = input.email.toLowerCase();
  let secret: string | null = null;
  try {
    const user = await context.database.write((tx) => {
      secret = null;
      return once(tx, context, viewer, submission, async () => {
        const made = await tx.user.create({
          data: {
            id: context.newId(),
            email,
            name: input.name,
            passwordHash: '',
            administrator: input.administrator,
            createdAt: context.clock(),
          },
        });
        secret = await newLink(context, tx, 'invitation', made.id);
        await audit(tx, context, viewer, {
          chain: 'site',
          action: 'account made',
          subject: 'user',
          subjectId: made.id,
          after: viewOf(made),
        });
        return viewOf(made);
      });
    });
    return { user, secret };
  } catch (error) {
    if (isUniqueViolation(error)) refuse({ code: 'duplicate', what: 'account', field: 'email', value: email });
    throw error;
  }
}

/** A fresh link for somebody who lost the password; sessions stay until the new password is set. */
export async function newPasswordLink(context: Context, viewer: Viewer, userId: string): Promise<string> {
  if (!viewer.administrator) refuse({ code: 'forbidden', needs: 'administrator' });
  return context.database.write(async (tx) => {
    const user =
      (await tx.user.findUnique({ where: { id: userId } })) ?? refuse({ code: 'not-found', what: 'account' });
    await audit(tx, context, viewer, {
      chain: 'site',
      action: 'password link made',
      subject: 'user',
      subjectId: user.id,
    });
    return newLink(context, tx, 'invitation', user.id);
  });
}

/** Sets the password by a link; every older session and link of the account ends. */
export async function acceptInvitation(context: Context, secret: string, password: string): Promise<Viewer> {
  const passwordHash = await hash(password);
  return context.database.write(async (tx) => {
    const userId = (await useLink(context, tx, secret, 'invitation')) ?? refuse({ code: 'used-link' });
    const user = await tx.user.update({ where: { id: userId }, data: { passwordHash, version: { increment: 1 } } });
    await tx.session.deleteMany({ where: { userId } });
    await tx.oneTimeLink.updateMany({ where: { userId, usedAt: null }, data: { usedAt: context.clock() } });
    await audit(tx, context, viewerOf(user), {
      chain: 'site',
      action: 'password set',
      subject: 'user',
      subjectId: userId,
    });
    return viewerOf(user);
  });
}

export async function changePassword(context: Context, viewer: Viewer, current: string, next: string): Promise<void> {
  await login(context, { email: viewer.email, password: current });
  const passwordHash = await hash(next);
  await context.database.write(async (tx) => {
    await tx.user.update({ where: { id: viewer.userId }, data: { passwordHash, version: { increment: 1 } } });
    await audit(tx, context, viewer, {
      chain: 'site',
      action: 'password set',
      subject: 'user',
      subjectId: viewer.userId,
    });
  });
}

export async function listUsers(context: Context, viewer: Viewer): Promise<UserView[]> {
  if (!viewer.administrator) refuse({ code: 'forbidden', needs: 'administrator' });
  const users = await context.database.db.user.findMany({ orderBy: [{ name: 'asc' }, { id: 'asc' }] });
  return users.map(viewOf);
}

export const userChangeSchema = z.strictObject({
  name: z.string().trim().min(1).max(120).optional(),
  administrator: z.boolean().optional(),
  disabled: z.boolean().optional(),
});

/** Changes an account; the last open administrator cannot be closed or demoted, or nobody could come in again. */
export async function changeUser(
  context: Context,
  viewer: Viewer,
  userId: string,
  version: number,
  change: z.infer<typeof userChangeSchema>,
): Promise<UserView> {
  if (!viewer.administrator) refuse({ code: 'forbidden', needs: 'administrator' });
  return context.database.write(async (tx) => {
    const before =
      (await tx.user.findUnique({ where: { id: userId } })) ?? refuse({ code: 'not-found', what: 'account' });
    assertVersion(before, version, viewOf(before));
    const losesOffice = before.administrator && (change.administrator === false || change.disabled === true);
    const others = await tx.user.count({ where: { administrator: true, disabledAt: null, id: { not: userId } } });
    if (losesOffice && others === 0)
      refuse({ code: 'in-use', what: 'the last administrator', by: 'this site: make another administrator first' });
    const after = await tx.user.update({
      where: { id: userId },
      data: {
        ...(change.name === undefined ? {} : { name: change.name }),
        ...(change.administrator === undefined ? {} : { administrator: change.administrator }),
        ...(change.disabled === undefined ? {} : { disabledAt: change.disabled ? context.clock() : null }),
        version: { increment: 1 },
      },
    });
    if (change.disabled === true) await tx.session.deleteMany({ where: { userId } });
    await audit(tx, context, viewer, {
      chain: 'site',
      action: 'account changed',
      subject: 'user',
      subjectId: userId,
      before: viewOf(before),
      after: viewOf(after),
    });
    return viewOf(after);
  });
}

type Row = {
  id: string;
  name: string;
  email: string;
  administrator: boolean;
  disabledAt: Date | null;
  version: number;
};

function viewOf(user: Row): UserView {
  return {
    id: user.id,
    name: user.name,
    email: user.email,
    administrator: user.administrator,
    disabled: user.disabledAt !== null,
    version: user.version,
  };
}

function viewerOf(user: Row): Viewer {
  return { userId: user.id, name: user.name, email: user.email, administrator: user.administrator };
}

type LinkTx = Parameters<Parameters<Context['database']['write']>[0]>[0];

async function newLink(context: Context, tx: LinkTx, purpose: string, userId: string | null): Promise<string> {
  const secret = randomBytes(24).toString('base64url');
  const now = context.clock();
  await tx.oneTimeLink.create({
    data: {
      hash: hashSecret(secret),
      purpose,
      userId,
      createdAt: now,
      expiresAt: new Date(now.getTime() + LINK_LIFE_MS),
    },
  });
  return secret;
}

async function useLink(context: Context, tx: LinkTx, secret: string, purpose: string): Promise<string | null> {
  const now = context.clock();
  const taken = await tx.oneTimeLink.updateMany({
    where: { hash: hashSecret(secret), purpose, usedAt: null, expiresAt: { gt: now } },
    data: { usedAt: now },
  });
  if (taken.count !== 1) refuse({ code: 'used-link' });
  const link = await tx.oneTimeLink.findUnique({ where: { hash: hashSecret(secret) } });
  return link?.userId ?? null;
}

export function hashSecret(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}
