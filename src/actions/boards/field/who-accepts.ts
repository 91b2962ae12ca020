import { isRole, may, type Role } from '../../../domain/access.ts';
import type { Reader } from '../../../store/database.ts';

export interface Acceptor {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
}

/** Members of the job who accept other people's work, by name; whoever did the work sees whom to call. */
export async function whoAccepts(reader: Reader, projectId: string): Promise<readonly Acceptor[]> {
  const members = await reader.membership.findMany({
    where: { projectId, user: { disabledAt: null } },
    select: { role: true, user: { select: { id: true, name: true } } },
    orderBy: { user: { name: 'asc' } },
  });
  return members.flatMap(({ role, user }) =>
    isRole(role) && may({ administrator: false, role }, 'inspect') ? [{ ...user, role }] : [],
  );
}
