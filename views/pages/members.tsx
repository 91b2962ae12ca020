import type { JSX } from 'preact';
import { ROLES, type Role } from '../../src/domain/access.ts';
import { Button } from '../components/button.tsx';
import { Confirm } from '../components/confirm.tsx';
import { DataTable } from '../components/data-table.tsx';
import { type Entered, type FaultOf, faultProps } from '../components/fault-of.ts';
import { SelectField, TextField } from '../components/field.tsx';
import { Form } from '../components/form.tsx';
import { Part } from '../components/part.tsx';
import { ROLE_WORDS } from '../words/roles.ts';

export interface MemberRow {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly version: number;
}

export interface MembersPageProps {
  readonly jobId: string;
  readonly members: readonly MemberRow[];
  /** null: this person may only read who works on the job. */
  readonly changing: { readonly csrf: string; readonly entered: Entered; readonly faultOf: FaultOf } | null;
}

const DOES: Readonly<Record<Role, string>> = {
  office: 'everything in this job, prices and bid included',
  foreman: 'records work, accepts other people’s, exports the closeout; no prices',
  installer: 'records work; no prices',
  inspector: 'records tests, accepts work, reads the audit trail, exports the closeout; no prices',
  owner: 'reads, exports the closeout; no prices',
  reader: 'reads; no prices',
};

/** Who works on a job, and in which role. */
export function MembersPage({ jobId, members, changing }: MembersPageProps): JSX.Element {
  const base = `/jobs/${jobId}/members`;
  return (
    <>
      <DataTable
        caption="Members"
        remark={members.length === 1 ? 'one' : String(members.length)}
        rows={members}
        keyOf={(member) => member.userId}
        columns={[
          { head: 'Name', kind: 'name', cell: (member) => member.name },
          ...(changing === null ? [] : [{ head: 'E-mail address', cell: (member: MemberRow) => member.email }]),
          { head: 'Role', cell: (member) => ROLE_WORDS[member.role] },
          { head: 'Sees and does', cell: (member) => DOES[member.role] },
          ...(changing === null
            ? []
            : [
                {
                  head: 'Take out',
                  cell: (member: MemberRow) => (
                    <Confirm
                      ask="Take out"
                      question={`${member.name} then no longer reaches this job. What was recorded stays under the name.`}
                      answer={`Take ${member.name} out`}
                      action={`${base}/${member.userId}/removal`}
                      csrf={changing.csrf}
                      version={member.version}
                    />
                  ),
                },
              ]),
        ]}
      />
      {changing !== null && (
        <Part title="Add a person, or change a role" id="set">
          <Form action={base} csrf={changing.csrf}>
            <TextField
              name="email"
              label="E-mail address"
              kind="email"
              value={changing.entered.email ?? ''}
              need="required"
              hint="Of an account that an administrator made."
              {...faultProps(changing.faultOf, 'email')}
            />
            <SelectField
              name="role"
              label="Role"
              value={changing.entered.role ?? 'installer'}
              options={ROLES.map((role) => ({ value: role, word: `${ROLE_WORDS[role]}: ${DOES[role]}` }))}
              {...faultProps(changing.faultOf, 'role')}
            />
            <Button kind="lead">Set the role</Button>
          </Form>
        </Part>
      )}
    </>
  );
}
