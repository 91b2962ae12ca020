import type { JSX } from 'preact';
import { isFor } from '../../../src/domain/bid/held.ts';
import { quoteLineWord } from '../../../src/domain/bid/item-words.ts';
import type { LevelledCell, LevelledPackage, LevelledQuote } from '../../../src/domain/bid/level-quotes.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { DataTable } from '../../components/data-table.tsx';

interface Row {
  readonly name: string;
  readonly cells: readonly (JSX.Element | string)[];
}

/** The quotes of a package side by side: what each says of every row, what stands in for the rest, and the level total. */
export function LevelledQuotes({ of, currency }: { of: LevelledPackage; currency: string }): JSX.Element {
  const money = (minor: number) => formatMoney(minor, currency);
  const rows: Row[] = [
    { name: 'Supplier', cells: of.quotes.map(({ quote }) => quote.supplier) },
    ...of.rows.map((row) => ({
      name: quoteLineWord(row),
      cells: row.cells.map((cell, column) => say(cell, of.quotes[column], money)),
    })),
    ...standing(of.quotes, money),
  ];
  return (
    <DataTable
      caption={of.name}
      remark={of.lowest === null ? 'no total is complete' : `lowest level total: ${of.lowest}`}
      rows={rows}
      keyOf={(row) => row.name}
      narrow="scrolls"
      columns={[
        { head: 'Line', kind: 'name', cell: (row) => row.name, foot: 'Level total' },
        ...of.quotes.map((levelled, column) => ({
          head: `${levelled.quote.id}${levelled.quote.chosen ? ' – chosen' : ''}`,
          kind: 'number' as const,
          cell: (row: Row) => row.cells[column],
          foot: <Total of={levelled} money={money} />,
        })),
      ]}
    />
  );
}

type Write = (minor: number) => string;

function say(cell: LevelledCell, levelled: LevelledQuote | undefined, money: Write): JSX.Element | string {
  if (cell === null) return <span class="soft">not said</span>;
  if (cell.state === 'included') return 'included';
  if (cell.state === 'priced') return money(cell.amount ?? 0);
  if (cell.amount !== null) return `lacks; plug ${money(cell.amount)}`;
  const isOurs = levelled?.ours.some(({ item }) => isFor(cell.item, item)) ?? false;
  return isOurs ? 'lacks; at our prices' : <strong>lacks, no plug</strong>;
}

function standing(quotes: readonly LevelledQuote[], money: Write): Row[] {
  const inOrOut = (said: 'in' | 'out' | null, amount: number, isKnown: boolean) => {
    if (said === null) return 'not said';
    return isKnown ? `${said}; ${money(amount)}` : said;
  };
  return [
    ...(quotes.some(({ ours }) => ours.length > 0)
      ? [{ name: 'At our prices, what it lacks', cells: quotes.map(({ ours }) => money(ourSum(ours))) }]
      : []),
    {
      name: 'Freight',
      cells: quotes.map(({ quote, freight }) =>
        inOrOut(quote.freight, freight, quote.freight === 'out' && quote.freightAmount !== null),
      ),
    },
    {
      name: 'Tax, taken out to compare',
      cells: quotes.map(({ quote, taxInside }) =>
        inOrOut(quote.tax, -taxInside, quote.tax === 'in' && quote.taxAmount !== null),
      ),
    },
    { name: 'Valid until', cells: quotes.map(({ quote }) => quote.validUntil ?? 'not said') },
    { name: 'Held until delivery', cells: quotes.map(({ quote }) => (quote.firm ? 'yes' : 'no')) },
  ];
}

function ourSum(ours: LevelledQuote['ours']): number {
  return ours.reduce((sum, { amount }) => sum + amount, 0);
}

function Total({ of, money }: { of: LevelledQuote; money: Write }) {
  return (
    <>
      <strong>{money(of.total)}</strong>
      {of.missing.length > 0 && <div class="soft">not complete: {of.missing.join(', ')}</div>}
    </>
  );
}
