import type { Role } from '../../src/domain/access.ts';

const WORDS: Readonly<Record<Role, string>> = {
  office: 'office',
  foreman: 'foreman',
  installer: 'installer',
  inspector: 'inspector',
  owner: 'owner',
  reader: 'read-only',
};

/** How a role is called on pages. */
export function roleWord(role: Role | null, administrator: boolean): string {
  if (role !== null) return WORDS[role];
  return administrator ? 'administrator' : 'visitor';
}

export const ROLE_WORDS = WORDS;
