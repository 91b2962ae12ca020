import type { JSX } from 'preact';
import type { BidResult } from '../../../src/domain/bid/result.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { DataTable } from '../../components/data-table.tsx';
import { Part } from '../../components/part.tsx';
import { bidLineWord } from '../../words/bid-entries.ts';
import { sayWorking } from '../../words/bid-working.ts';

/** The build-up, line by line, each with how it came about; the last two make the cost a price. */
export function BidLines({ bid, currency }: { bid: BidResult; currency: string }): JSX.Element {
  const money = (minor: number) => formatMoney(minor, currency);
  return (
    <Part title="Build-up of the price" id="lines">
      <DataTable
        caption="From cost to price"
        remark={`cost ${money(bid.cost)}`}
        rows={bid.lines}
        keyOf={bidLineWord}
        columns={[
          { head: 'Line', kind: 'name', cell: bidLineWord, foot: 'Price' },
          { head: 'How', cell: (line) => sayWorking(line, money) },
          {
            head: 'Amount',
            kind: 'number',
            cell: (line) => money(line.amount),
            foot: (
              <strong>
                {money(bid.price)}
                {bid.incomplete.length > 0 && ' – not complete'}
              </strong>
            ),
          },
        ]}
      />
      <p class="soft">
        Each line is rounded once; the lines sum to the price. A markup is on cost, a margin of the price: both are
        shown. Overhead is on the cost, profit on cost and overhead.
      </p>
    </Part>
  );
}
