/** Who may do what in a project. One table, asked by every action and by the pages that offer a button. */
export const ROLES = ['office', 'foreman', 'installer', 'inspector', 'owner', 'reader'] as const;
export type Role = (typeof ROLES)[number];

export type Capability =
  | 'read'
  | 'money' // prices, rates, bid: never leaves the office
  | 'design' // levels, types, runs, taps, labour book, release
  | 'substitute' // other sections in place of one that is damaged, late or wrong
  | 'install' // records of work done
  | 'inspect' // accept another person's work, tests
  | 'members'
  | 'audit'
  | 'closeout';

const GRANTS: Readonly<Record<Role, readonly Capability[]>> = {
  office: ['read', 'money', 'design', 'substitute', 'install', 'inspect', 'members', 'audit', 'closeout'],
  foreman: ['read', 'substitute', 'install', 'inspect', 'closeout'],
  installer: ['read', 'install'],
  inspector: ['read', 'inspect', 'audit', 'closeout'],
  owner: ['read', 'closeout'],
  reader: ['read'],
};

/** True when a member with this role, or an administrator (who may do everything), has the capability. */
export function may(
  person: { readonly administrator: boolean; readonly role: Role | null },
  capability: Capability,
): boolean {
  if (person.administrator) return true;
  return person.role !== null && GRANTS[person.role].includes(capability);
}

export function isRole(text: string): text is Role {
  return (ROLES as readonly string[]).includes(text);
}
