import type { JSX } from 'preact';
import type { BidLine, BidResult } from '../../../src/domain/bid/result.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { formatHours } from '../../../src/domain/units/quantities.ts';
import { DataTable } from '../../components/data-table.tsx';
import { Part } from '../../components/part.tsx';
import { BID_LINE_WORDS } from '../../words/bid-entries.ts';

/** The build-up, line by line, each with how it came about; the last two make the cost a price. */
export function BidLines({ bid, currency }: { bid: BidResult; currency: string }): JSX.Element {
  const money = (minor: number) => formatMoney(minor, currency);
  return (
    <Part title="Build-up of the price" id="lines">
      <DataTable
        caption="From cost to price"
        remark={`cost ${money(bid.cost)}`}
        rows={bid.lines}
        keyOf={(line) => line.line}
        columns={[
          { head: 'Line', kind: 'name', cell: (line) => BID_LINE_WORDS[line.line], foot: 'Price' },
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

function sayWorking({ line, working }: BidLine, money: (minor: number) => string): string {
  switch (working.kind) {
    case 'entered':
      return line === 'extras' ? 'quantity × price of each line' : 'as entered';
    case 'priced':
      return 'the takeoff at the prices of its types, below';
    case 'percent':
      return `${working.percent} % of ${money(working.of)}`;
    case 'hours':
      return `${formatHours(working.hours)} likely × ${money(Math.round(working.costPerHour))} a productive hour`;
    case 'range':
      return `from P50 ${formatHours(working.from)} to P${working.p} ${formatHours(working.to)}, × ${money(Math.round(working.costPerHour))}`;
    case 'profit':
      return `markup ${rounded(working.markupPercent)} % on ${money(working.of)}, margin ${rounded(working.marginPercent)} % of the price`;
  }
}

const rounded = (percent: number): number => Number(percent.toFixed(2));
