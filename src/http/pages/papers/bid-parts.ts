import { bidLineWord } from '../../../../views/words/bid-entries.ts';
import { sayWorking } from '../../../../views/words/bid-working.ts';
import { isFor } from '../../../domain/bid/held.ts';
import { itemWord, quoteLineWord } from '../../../domain/bid/item-words.ts';
import type { LevelledCell, LevelledPackage, LevelledQuote } from '../../../domain/bid/level-quotes.ts';
import type { BidLine, BidLineName, BidResult, PricedThing } from '../../../domain/bid/result.ts';
import { formatHours } from '../../../domain/units/quantities.ts';
import type { PaperPart } from '../../../paper/estimate/paper.ts';

export type Money = (minor: number) => string;
type TablePart = Extract<PaperPart, { kind: 'table' }>;

const MISSING = 'missing';

/** Lines that stand above the cost and make it a price. */
const MARKS: readonly BidLineName[] = ['overhead', 'bond', 'profit'];

/** The lines from cost to price, the cost summed between them; `how` adds the working of each. */
export function linesTable(bid: BidResult, money: Money, how: 'with' | 'without'): TablePart {
  const line = { title: 'Line', share: 24 };
  const amount = { title: 'Amount', share: 16, align: 'right' as const };
  const columns = how === 'with' ? [line, { title: 'How', share: 60 }, amount] : [line, amount];
  const rowOf = (one: BidLine) =>
    how === 'with'
      ? [bidLineWord(one), sayWorking(one, money), money(one.amount)]
      : [bidLineWord(one), money(one.amount)];
  const isCost = ({ line: name }: BidLine) => !MARKS.includes(name);
  return {
    kind: 'table',
    table: {
      title: 'From cost to price',
      columns,
      rows: [
        ...bid.lines.filter(isCost).map(rowOf),
        { group: 'Cost', beside: money(bid.cost) },
        ...bid.lines.filter((one) => !isCost(one)).map(rowOf),
        { group: bid.incomplete.length === 0 ? 'Price' : 'Price, not complete', beside: money(bid.price) },
      ],
      none: 'Nothing is entered for the bid.',
      ...(how === 'with' ? {} : { part: { from: 0, width: 0.5 } }),
    },
  };
}

/** Markup and margin beside each other, so that neither is taken for the other. */
export function priceFacts(bid: BidResult, money: Money): PaperPart {
  const profit = bid.lines.find(({ working }) => working.kind === 'profit');
  const shares =
    profit?.working.kind === 'profit'
      ? [
          ['Profit as markup on cost', percent(profit.working.markupPercent)] as const,
          ['The same as margin of the price', percent(profit.working.marginPercent)] as const,
        ]
      : [];
  return {
    kind: 'facts',
    across: 6,
    facts: [
      ['Price', `${money(bid.price)}${bid.incomplete.length === 0 ? '' : ', not complete'}`],
      ['Cost', money(bid.cost)],
      ...shares,
      ...dateFacts(bid),
    ],
  };
}

export function dateFacts({ terms }: BidResult): (readonly [string, string])[] {
  return [
    ['Day of the bid', terms.date ?? 'not stated'],
    ['Holds until', terms.validUntil ?? 'not stated'],
  ];
}

export function lackingPart(bid: BidResult): PaperPart[] {
  return bid.incomplete.length === 0
    ? []
    : [{ kind: 'list', heading: 'The price is not complete', items: bid.incomplete, none: '' }];
}

export function checksPart(bid: BidResult): PaperPart[] {
  return bid.checks.length === 0
    ? []
    : [{ kind: 'list', heading: 'Worth a second look', items: bid.checks.map(({ message }) => message), none: '' }];
}

/** What goes with the price; `all` says of an empty list that it is empty. */
export function termParts({ terms }: BidResult, which: 'all' | 'stated'): PaperPart[] {
  const addenda = terms.addenda.map(({ number, date, note }) =>
    [`No. ${number}`, ...(date === null ? [] : [`of ${date}`]), ...(note === null ? [] : [note])].join(', '),
  );
  const lists: Extract<PaperPart, { kind: 'list' }>[] = [
    { kind: 'list', heading: 'Included', items: terms.inclusions, none: 'Nothing is listed.' },
    ...(terms.ownerFurnished.length === 0
      ? []
      : [
          {
            ...{ kind: 'list' as const, heading: 'Furnished by the owner, installed by us', none: '' },
            items: terms.ownerFurnished.map(itemWord),
          },
        ]),
    { kind: 'list', heading: 'Not included', items: terms.exclusions, none: 'Nothing is listed.' },
    { kind: 'list', heading: 'Qualifications', items: terms.qualifications, none: 'None.' },
    { kind: 'list', heading: 'Addenda received and allowed for', items: addenda, none: 'None.' },
  ];
  return which === 'all' ? lists : lists.filter(({ items }) => items.length > 0);
}

export function alternatesTable(bid: BidResult, money: Money, how: 'with' | 'without'): TablePart[] {
  if (bid.alternates.length === 0) return [];
  const columns = [
    { title: 'Alternate', share: 24 },
    { title: 'It', share: 10 },
    ...(how === 'with' ? [{ title: 'How', share: 46 }] : []),
    { title: 'Note', share: 20 },
    { title: 'To the price', share: 16, align: 'right' as const },
  ];
  const rows = bid.alternates.map(({ entry, lines, amount }) => [
    entry.name,
    entry.kind === 'add' ? 'adds' : 'deducts',
    ...(how === 'with' ? [lines.map((line) => `${bidLineWord(line)} ${money(line.amount)}`).join(' + ')] : []),
    entry.note ?? '',
    amount === null ? MISSING : money(amount),
  ]);
  return [{ kind: 'table', table: { title: 'Alternates', columns, rows, none: '' } }];
}

export function unitPricesTable(bid: BidResult, money: Money, how: 'with' | 'without'): TablePart[] {
  if (bid.unitPrices === null) return [];
  const { lines, remainder } = bid.unitPrices;
  const figure = (title: string, share: number) => ({ title, share, align: 'right' as const });
  const inner =
    how === 'with' ? [figure('Material of one', 14), figure('Hours of one', 11), figure('Cost of one', 14)] : [];
  const rows = lines.map((line) => [
    itemWord(line.item),
    line.unit,
    quantity(line.quantity),
    ...(how === 'with'
      ? [
          orMissing(line.material, money),
          formatHours(line.hours),
          orMissing(line.cost, (cost) => money(Math.round(cost))),
        ]
      : []),
    orMissing(line.offered ?? line.worked, money),
    orMissing(line.extended, money),
  ]);
  const foot = ['Everything else in the price', '', '', ...inner.map(() => ''), '', money(remainder)];
  return [
    {
      kind: 'table',
      table: {
        title: 'Unit prices',
        columns: [
          { title: 'Item', share: 22 },
          { title: 'Unit', share: 7 },
          figure('Quantity', 10),
          ...inner,
          figure('Unit price', 14),
          figure('Extended', 16),
        ],
        rows: how === 'with' ? [...rows, foot] : rows,
        none: '',
      },
    },
  ];
}

/** Quotes of a package beside each other, row by row. */
export function quotesTable({ name, rows, quotes, lowest }: LevelledPackage, money: Money): TablePart {
  const share = 70 / quotes.length;
  const sums = (title: string, of: (index: number) => string) => [title, ...quotes.map((_, index) => of(index))];
  return {
    kind: 'table',
    table: {
      title: `Quotes levelled: ${name}`,
      columns: [
        { title: 'Line', share: 30 },
        ...quotes.map(({ quote }) => ({
          title: `${quote.supplier}${quote.chosen ? ' (chosen)' : ''}${quote.id === lowest ? ' (lowest)' : ''}`,
          share,
          align: 'right' as const,
        })),
      ],
      rows: [
        ...rows.map((row) => [
          quoteLineWord(row),
          ...row.cells.map((cell, index) => sayCell(cell, quotes[index]!, money)),
        ]),
        sums('Quoted', (index) => money(quotes[index]!.quoted)),
        sums('Stands in for what it lacks', (index) => money(quotes[index]!.plugs)),
        ...(quotes.some(({ ours }) => ours.length > 0)
          ? [sums('At our prices, what it lacks', (index) => money(sumOf(quotes[index]!.ours)))]
          : []),
        sums('Freight left out', (index) => money(quotes[index]!.freight)),
        sums('Less tax inside', (index) => money(-quotes[index]!.taxInside)),
        sums('Levelled', (index) => {
          const { total, missing } = quotes[index]!;
          return missing.length === 0 ? money(total) : `${money(total)}, lacks ${missing.join(', ')}`;
        }),
      ],
      none: '',
    },
  };
}

function sumOf(lines: readonly { readonly amount: number }[]): number {
  return lines.reduce((sum, { amount }) => sum + amount, 0);
}

function sayCell(cell: LevelledCell, { ours }: LevelledQuote, money: Money): string {
  if (cell === null) return 'says nothing';
  if (cell.state === 'included') return 'included';
  if (cell.state === 'priced') return orMissing(cell.amount, money);
  if (cell.amount !== null) return `lacks it; ${money(cell.amount)} stands in`;
  return ours.some(({ item }) => isFor(cell.item, item)) ? 'lacks it; at our prices' : 'lacks it';
}

export function timedTable(bid: BidResult, money: Money): TablePart[] {
  if (bid.timed.length === 0) return [];
  return [
    {
      kind: 'table',
      table: {
        title: 'Paid by time',
        columns: [
          { title: 'What', share: 34 },
          { title: 'Number', share: 10, align: 'right' },
          { title: 'Time', share: 16, align: 'right' },
          { title: 'Rate', share: 14, align: 'right' },
          { title: 'Once', share: 12, align: 'right' },
          { title: 'Amount', share: 14, align: 'right' },
        ],
        rows: bid.timed.map((line) => [
          line.item,
          quantity(line.number),
          `${quantity(line.time)} ${line.per}${line.time === 1 ? '' : 's'}`,
          orMissing(line.rate, money),
          line.once === null ? '' : money(line.once),
          orMissing(line.amount, money),
        ]),
        none: '',
      },
    },
  ];
}

export function materialTable({ materials, held, spares }: BidResult, money: Money): TablePart[] {
  return [
    ...pricedTable('Material at the prices of its types', materials, money),
    ...pricedTable('In chosen quotes, so not in the price again: at the prices of the types', held, money),
    ...pricedTable('Spares by the rules for ordering, at the prices of their types', spares, money),
  ];
}

function pricedTable(title: string, lines: readonly PricedThing[], money: Money): TablePart[] {
  if (lines.length === 0) return [];
  return [
    {
      kind: 'table',
      table: {
        title,
        columns: [
          { title: 'Thing', share: 26 },
          { title: 'Detail', share: 20 },
          { title: 'Type', share: 20 },
          { title: 'Quantity', share: 10, align: 'right' },
          { title: 'Price', share: 12, align: 'right' },
          { title: 'Amount', share: 14, align: 'right' },
        ],
        rows: lines.map((line) => [
          line.item,
          line.detail ?? '',
          line.type,
          quantity(line.quantity),
          orMissing(line.price, money),
          orMissing(line.amount, money),
        ]),
        none: '',
      },
    },
  ];
}

function orMissing<T>(value: T | null, say: (value: T) => string): string {
  return value === null ? MISSING : say(value);
}

function quantity(value: number): string {
  return value.toLocaleString('en-US', { maximumFractionDigits: 3 });
}

function percent(value: number): string {
  return `${Number(value.toFixed(2))} %`;
}
