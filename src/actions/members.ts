import { z } from 'zod';
import { ROLES } from '../domain/access.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';
import { assertVersion } from './version.ts';

export const memberSchema = z.object({
  userId: z.string(),
  name: z.string(),
  email: z.string(),
  role: z.enum(ROLES),
  version: z.number().int(),
});
export type Member = z.infer<typeof memberSchema>;

export const membershipSchema = z.strictObject({ email: z.email(), role: z.enum(ROLES) });

/** Who works on this job; addresses are shown to those who may change the list. */
export async function listMembers(context: Context, viewer: Viewer, projectId: string): Promise<Member[]> {
  const reached = await reach(context.database.db, viewer, projectId);
  const rows = await context.database.db.membership.findMany({
    where: { projectId },
    include: { user: true },
    orderBy: [{ role: 'asc' }, { userId: 'asc' }],
  });
  return rows.map((row) =>
    memberSchema.parse({
      userId: row.userId,
      name: row.user.name,
      email: reached.may('members') ? row.user.email : '',
      role: row.role,
      version: row.version,
    }),
  );
}

/** Adds a person who has an account, or changes the role of one who is a member. */
export async function setMember(
  context: Context,
  viewer: Viewer,
  projectId: string,
  input: z.infer<typeof membershipSchema>,
): Promise<Member> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'members');
    const user = await tx.user.findUnique({ where: { email: input.email.toLowerCase() } });
    if (user === null) {
      return refuse({
        code: 'invalid',
        faults: [
          {
            path: 'email',
            message: `Nobody here has the address ${input.email}.`,
            remedy: 'An administrator makes the account first, under Accounts.',
          },
        ],
      });
    }
    const id = { projectId, userId: user.id };
    const before = await tx.membership.findUnique({ where: { projectId_userId: id } });
    const row = await tx.membership.upsert({
      where: { projectId_userId: id },
      create: { ...id, role: input.role },
      update: { role: input.role, version: { increment: 1 } },
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'member set',
      subject: 'user',
      subjectId: user.id,
      before: before?.role,
      after: { name: user.name, role: input.role },
    });
    return { userId: user.id, name: user.name, email: user.email, role: input.role, version: row.version };
  });
}

export async function removeMember(
  context: Context,
  viewer: Viewer,
  projectId: string,
  userId: string,
  version: number,
): Promise<void> {
  await context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'members');
    const row = await tx.membership.findUnique({ where: { projectId_userId: { projectId, userId } } });
    if (row === null) return refuse({ code: 'not-found', what: 'member' });
    assertVersion(row, version, { role: row.role, version: row.version });
    await tx.membership.delete({ where: { projectId_userId: { projectId, userId } } });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'member removed',
      subject: 'user',
      subjectId: userId,
      before: row.role,
    });
  });
}
