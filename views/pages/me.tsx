import type { JSX } from 'preact';
import { Button } from '../components/button.tsx';
import { Confirm } from '../components/confirm.tsx';
import { DataTable } from '../components/data-table.tsx';
import { DefinitionList } from '../components/definition-list.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { type Entered, type FaultOf, faultProps } from '../components/fault-of.ts';
import { TextField } from '../components/field.tsx';
import { Form } from '../components/form.tsx';
import { OneTime } from '../components/one-time.tsx';
import { Part } from '../components/part.tsx';
import { Time } from '../components/time.tsx';

export interface TokenRow {
  readonly id: string;
  readonly label: string;
  readonly createdAt: Date;
  readonly lastUsedAt: Date | null;
  readonly revoked: boolean;
}

export interface MePageProps {
  readonly name: string;
  readonly email: string;
  readonly administrator: boolean;
  readonly tokens: readonly TokenRow[];
  readonly csrf: string;
  readonly submissionId: string;
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  /** Of a token that was just made; it is shown this once. */
  readonly secret: { readonly label: string; readonly text: string } | null;
}

/** One's own account: password, and tokens for scripts. */
export function MePage(props: MePageProps): JSX.Element {
  const { secret } = props;
  return (
    <>
      {secret !== null && (
        <OneTime
          title={`Token ${secret.label}`}
          secret={secret.text}
          remark='Send it as "Authorization: Bearer …". The record keeps only its hash, so it is not shown again.'
        />
      )}
      <DefinitionList
        entries={[
          { term: 'Name', value: props.name },
          { term: 'E-mail address', value: props.email },
          { term: 'Administrator', value: props.administrator ? 'yes' : 'no' },
        ]}
      />
      <Password {...props} />
      <Tokens {...props} />
    </>
  );
}

function Password({ csrf, faultOf }: MePageProps) {
  return (
    <Part title="Change the password" id="password">
      <Form action="/me/password" csrf={csrf}>
        <TextField
          name="current"
          label="Password now"
          kind="password"
          autocomplete="current-password"
          need="required"
          {...faultProps(faultOf, 'current')}
        />
        <TextField
          name="next"
          label="New password"
          kind="password"
          autocomplete="new-password"
          need="required"
          hint="At least 10 characters; a few words are easier to remember than signs."
          {...faultProps(faultOf, 'next')}
        />
        <Button kind="lead">Change the password</Button>
      </Form>
    </Part>
  );
}

function Tokens({ tokens, csrf, submissionId, entered, faultOf }: MePageProps) {
  return (
    <Part title="Tokens for scripts" id="tokens" tools={<a href="/docs">The API</a>}>
      <DataTable
        caption="Your tokens"
        rows={tokens}
        keyOf={(token) => token.id}
        none={<EmptyState text="No token yet. A script sends one with each request and may do what you may do." />}
        columns={[
          { head: 'Token', kind: 'name', cell: (token) => token.label },
          { head: 'Made', cell: (token) => <Time at={token.createdAt} /> },
          {
            head: 'Last used',
            cell: (token) =>
              token.lastUsedAt === null ? <span class="soft">never</span> : <Time at={token.lastUsedAt} />,
          },
          {
            head: 'State',
            cell: (token) =>
              token.revoked ? (
                'revoked'
              ) : (
                <Confirm
                  ask="Revoke"
                  question="Scripts that send this token are refused from then on. It cannot be brought back."
                  answer={`Revoke ${token.label}`}
                  action={`/me/tokens/${token.id}/revocation`}
                  csrf={csrf}
                />
              ),
          },
        ]}
      />
      <Form action="/me/tokens" csrf={csrf} submissionId={submissionId}>
        <TextField
          name="label"
          label="What the token is for"
          value={entered.label ?? ''}
          need="required"
          {...faultProps(faultOf, 'label')}
        />
        <Button>Make a token</Button>
      </Form>
    </Part>
  );
}
