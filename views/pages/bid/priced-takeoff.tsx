import type { JSX } from 'preact';
import type { PricedLine } from '../../../src/domain/bid/result.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { DataTable } from '../../components/data-table.tsx';
import { Money } from '../../components/money.tsx';
import { Part } from '../../components/part.tsx';

/** What the material line was summed from. */
export function PricedTakeoff({ lines, currency }: { lines: readonly PricedLine[]; currency: string }): JSX.Element {
  const total = lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  return (
    <Part title="Material at the prices of its types" id="materials">
      <DataTable
        caption="Priced takeoff"
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
