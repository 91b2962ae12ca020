import { type Capability, isRole, may, type Role } from '../domain/access.ts';
import type { Reader, Tx } from '../store/database.ts';
import type { Viewer } from './context.ts';
import { refuse } from './refused.ts';

/** A project as this viewer may see it. */
export interface Reach {
  readonly projectId: string;
  readonly number: string;
  readonly name: string;
  readonly role: Role | null;
  readonly may: (capability: Capability) => boolean;
}

/**
 * The project through what the viewer may reach: somebody else's project is not found rather than forbidden,
 * so that its existence is not told. A missing capability is a refusal that names it.
 */
export async function reach(
  reader: Reader | Tx,
  viewer: Viewer,
  projectId: string,
  capability: Capability = 'read',
): Promise<Reach> {
  const project = await reader.project.findUnique({
    where: { id: projectId },
    select: {
      id: true,
      number: true,
      name: true,
      memberships: { where: { userId: viewer.userId }, select: { role: true } },
    },
  });
  const stated = project?.memberships[0]?.role ?? null;
  const role = stated !== null && isRole(stated) ? stated : null;
  if (project === null || (role === null && !viewer.administrator)) refuse({ code: 'not-found', what: 'job' });
  const person = { administrator: viewer.administrator, role };
  if (!may(person, capability)) refuse({ code: 'forbidden', needs: capability });
  return { projectId, number: project.number, name: project.name, role, may: (asked) => may(person, asked) };
}
