import type { JSX } from 'preact';
import { Button } from '../components/button.tsx';
import { DataTable } from '../components/data-table.tsx';
import { type Entered, type FaultOf, faultProps } from '../components/fault-of.ts';
import { TextField, TickField } from '../components/field.tsx';
import { Form } from '../components/form.tsx';
import { OneTime } from '../components/one-time.tsx';
import { Part } from '../components/part.tsx';

export interface AccountRow {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly administrator: boolean;
  readonly disabled: boolean;
  readonly version: number;
}

export interface AccountsPageProps {
  readonly accounts: readonly AccountRow[];
  readonly csrf: string;
  readonly submissionId: string;
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  /** A link that was just made; it is shown this once. */
  readonly link: { readonly for: string; readonly url: string } | null;
}

/** Everybody's account, for the administrator: made, closed, opened again. */
export function AccountsPage(props: AccountsPageProps): JSX.Element {
  const { accounts, csrf, link } = props;
  return (
    <>
      {link !== null && (
        <OneTime
          title={`One-time link for ${link.for}`}
          secret={link.url}
          remark="Hand it over yourself: whoever opens it sets the password. It works once, for three days, and is not shown again."
        />
      )}
      <DataTable
        caption="Accounts"
        remark={String(accounts.length)}
        rows={accounts}
        keyOf={(account) => account.id}
        columns={[
          { head: 'Name', kind: 'name', cell: (account) => account.name },
          { head: 'E-mail address', cell: (account) => account.email },
          { head: 'Administrator', cell: (account) => (account.administrator ? 'yes' : '') },
          { head: 'State', cell: (account) => (account.disabled ? 'closed' : 'open') },
          { head: 'Change', cell: (account) => <AccountForms account={account} csrf={csrf} /> },
        ]}
      />
      <NewAccount {...props} />
    </>
  );
}

function AccountForms({ account, csrf }: { account: AccountRow; csrf: string }) {
  const base = `/accounts/${account.id}`;
  return (
    <div class="row">
      <Form action={base} csrf={csrf} version={account.version}>
        <Button kind="plain" name="disabled" value={account.disabled ? 'no' : 'yes'}>
          {account.disabled ? 'Open again' : 'Close'}
          <span class="unseen"> the account of {account.name}</span>
        </Button>
      </Form>
      {!account.disabled && (
        <Form action={`${base}/link`} csrf={csrf}>
          <Button kind="plain">
            New link<span class="unseen"> for {account.name}</span>
          </Button>
        </Form>
      )}
    </div>
  );
}

function NewAccount({ csrf, submissionId, entered, faultOf }: AccountsPageProps) {
  return (
    <Part title="Make an account" id="new">
      <Form action="/accounts" csrf={csrf} submissionId={submissionId}>
        <TextField
          name="name"
          label="Name"
          value={entered.name ?? ''}
          need="required"
          {...faultProps(faultOf, 'name')}
        />
        <TextField
          name="email"
          label="E-mail address"
          kind="email"
          value={entered.email ?? ''}
          need="required"
          {...faultProps(faultOf, 'email')}
        />
        <TickField
          name="administrator"
          label="An administrator: makes accounts and jobs, and may do everything in each job"
          ticked={entered.administrator === 'yes' ? 'yes' : 'no'}
        />
        <Button kind="lead">Make the account</Button>
      </Form>
    </Part>
  );
}
