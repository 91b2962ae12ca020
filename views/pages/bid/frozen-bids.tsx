import type { JSX } from 'preact';
import type { FrozenBid } from '../../../src/document/frozen-bid.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { Button } from '../../components/button.tsx';
import { DataTable } from '../../components/data-table.tsx';
import { TextField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { Part } from '../../components/part.tsx';
import { Time } from '../../components/time.tsx';

export interface FrozenBidsProps {
  readonly jobId: string;
  readonly csrf: string;
  readonly submissionId: string;
  readonly currency: string;
  readonly zone: string | null;
  readonly frozen: readonly FrozenBid[];
  /** Whether there is a bid to freeze. */
  readonly can: boolean;
}

/** Bids that were frozen, and freezing the one above. */
export function FrozenBids({ jobId, csrf, submissionId, currency, zone, frozen, can }: FrozenBidsProps): JSX.Element {
  const base = `/jobs/${jobId}/bid/frozen`;
  return (
    <Part title="Frozen bids" id="frozen">
      {frozen.length > 0 && (
        <DataTable
          caption="Newest first"
          rows={frozen}
          keyOf={({ id }) => id}
          columns={[
            { head: 'Bid', kind: 'name', cell: ({ id, name }) => <a href={`${base}/${id}`}>{name}</a> },
            { head: 'Frozen', cell: ({ madeAt }) => <Time at={new Date(madeAt)} zone={zone} /> },
            { head: 'By', cell: ({ madeBy }) => madeBy },
            { head: 'Price', kind: 'number', cell: ({ price }) => formatMoney(price, currency) },
          ]}
        />
      )}
      {can && (
        <Form action={base} csrf={csrf} submissionId={submissionId}>
          <TextField name="name" label="Freeze the bid above as" need="required" hint="As Bid of 12 May, addendum 2." />
          <Button>Freeze the bid</Button>
        </Form>
      )}
      <p class="soft">
        A frozen bid keeps every input and figure with a hash over both. Nothing that is changed later changes it.
      </p>
    </Part>
  );
}
