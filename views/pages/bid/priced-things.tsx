import type { JSX } from 'preact';
import type { PricedThing } from '../../../src/domain/bid/result.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { DataTable } from '../../components/data-table.tsx';
import { Money } from '../../components/money.tsx';
import { Part } from '../../components/part.tsx';

export interface PricedThingsProps {
  readonly title: string;
  readonly caption: string;
  readonly id: string;
  readonly lines: readonly PricedThing[];
  readonly currency: string;
}

/** What a line of the bid was summed from. */
export function PricedThings({ title, caption, id, lines, currency }: PricedThingsProps): JSX.Element {
  const total = lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  return (
    <Part title={title} id={id}>
      <DataTable
        caption={caption}
        rows={lines.map((line, index) => ({ ...line, index }))}
        keyOf={(line) => String(line.index)}
        columns={[
          { head: 'Thing', kind: 'name', cell: (line) => [line.item, line.detail].filter(Boolean).join(', ') },
          { head: 'Type', cell: (line) => line.type, foot: 'Sum' },
          { head: 'Quantity', kind: 'number', cell: (line) => line.quantity.toLocaleString('en-US') },
          { head: 'Price', kind: 'number', cell: (line) => <Money minor={line.price} currency={currency} /> },
          {
            head: 'Amount',
            kind: 'number',
            cell: (line) => <Money minor={line.amount} currency={currency} />,
            foot: formatMoney(total, currency),
          },
        ]}
      />
    </Part>
  );
}
