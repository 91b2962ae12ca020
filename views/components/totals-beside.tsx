import type { JSX } from 'preact';
import type { Totals } from '../../src/domain/beside/totals.ts';
import { formatMoney } from '../../src/domain/units/money.ts';
import { DataTable } from './data-table.tsx';

export interface TotalsBesideProps {
  readonly base: Totals;
  readonly changed: Totals;
  readonly currency: string;
  /** Over the two columns: "As it stands", "With version 2026-2". */
  readonly heads: readonly [string, string];
  readonly caption: string;
}

interface Row {
  readonly word: string;
  readonly was: number | null;
  readonly is: number | null;
  readonly write: (value: number) => string;
}

const hours = (value: number) =>
  `${value.toLocaleString('en-US', { minimumFractionDigits: 1, maximumFractionDigits: 1 })} h`;

/** What a job comes to in two ways, side by side, with the difference. */
export function TotalsBeside({ base, changed, currency, heads, caption }: TotalsBesideProps): JSX.Element {
  const money = (minor: number) => formatMoney(Math.round(minor), currency);
  const row = (word: string, of: (totals: Totals) => number | null, write: Row['write']): Row => ({
    word,
    was: of(base),
    is: of(changed),
    write,
  });
  const rows = [
    row('Labour hours, likely', (totals) => totals.hours?.likely ?? null, hours),
    row('Labour hours, mean', (totals) => totals.hours?.mean ?? null, hours),
    row('Labour hours, P50', (totals) => totals.hours?.p50 ?? null, hours),
    row('Labour hours, P80', (totals) => totals.hours?.p80 ?? null, hours),
    row('One productive hour', (totals) => totals.costPerProductiveHour, money),
    row('Labour', (totals) => totals.labour, money),
    row('Material', (totals) => totals.material, money),
    row('Cost', (totals) => totals.cost, money),
    row('Price', (totals) => totals.price, money),
  ].filter(({ was, is }) => was !== null || is !== null);
  const cell = (value: number | null, write: Row['write']) =>
    value === null ? <span class="soft">none</span> : write(value);
  return (
    <DataTable
      caption={caption}
      rows={[...rows, ...finishRows(base, changed)]}
      keyOf={({ word }) => word}
      narrow="scrolls"
      columns={[
        { head: 'Figure', kind: 'name', cell: ({ word }) => word },
        { head: heads[0], kind: 'number', cell: (one) => ('was' in one ? cell(one.was, one.write) : one.before) },
        { head: heads[1], kind: 'number', cell: (one) => ('was' in one ? cell(one.is, one.write) : one.after) },
        {
          head: 'Difference',
          kind: 'number',
          cell: (one) => ('was' in one ? difference(one) : one.before === one.after ? none() : 'other day'),
        },
      ]}
    />
  );
}

function difference({ was, is, write }: Row) {
  if (was === null || is === null) return <span class="soft">–</span>;
  const change = is - was;
  if (Math.abs(change) < 1e-9) return none();
  const share = was === 0 ? '' : ` (${change > 0 ? '+' : ''}${((change / was) * 100).toFixed(1)} %)`;
  return `${change > 0 ? '+' : ''}${write(change)}${share}`;
}

function none() {
  return <span class="soft">none</span>;
}

function finishRows(base: Totals, changed: Totals) {
  const [was, is] = [base.finish, changed.finish];
  if (was === null && is === null) return [];
  const day = (text: string | undefined) => text ?? 'no plan';
  return [
    { word: 'Finish, no crew stands', before: day(was?.steady), after: day(is?.steady) },
    { word: 'Finish, as soon as possible', before: day(was?.earliest), after: day(is?.earliest) },
  ];
}
