import type { JSX } from 'preact';
import type { HeldLine } from '../../../src/domain/bid/result.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { DataTable } from '../../components/data-table.tsx';
import { Money } from '../../components/money.tsx';

/** What the chosen quotes take the place of, at the prices it would have: what a lot holds without saying so is seen here. */
export function HeldThings({ lines, currency }: { lines: readonly HeldLine[]; currency: string }): JSX.Element {
  const total = lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  return (
    <DataTable
      caption="What the chosen quotes take the place of"
      remark="not in the price again"
      rows={lines.map((line, index) => ({ ...line, index }))}
      keyOf={(line) => String(line.index)}
      columns={[
        { head: 'Thing', kind: 'name', cell: (line) => [line.item, line.detail].filter(Boolean).join(', ') },
        { head: 'Quantity', kind: 'number', cell: (line) => line.quantity.toLocaleString('en-US') },
        { head: 'Held by', cell: (line) => heldBy(line), foot: 'Sum' },
        {
          head: 'At our prices',
          kind: 'number',
          cell: (line) => <Money minor={line.amount} currency={currency} />,
          foot: formatMoney(total, currency),
        },
      ]}
    />
  );
}

export function heldBy({ quote, isNamed }: HeldLine): string {
  return `quote ${quote}, ${isNamed ? 'which names it' : 'as part of the lot'}`;
}
