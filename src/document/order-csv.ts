import type { UnitSystem } from '../domain/model.ts';
import type { Order, OrderLine } from '../domain/ordering/order-list.ts';
import { formatLength } from '../domain/units/format-length.ts';
import { toMm } from '../domain/units/length.ts';
import { writeTable } from './lists/write-table.ts';

const HEADINGS = [
  'level',
  'order',
  'needed',
  'order by',
  'no date because',
  'for',
  'item',
  'kind',
  'hand',
  'busway type',
  'length',
  'length mm',
  'quantity',
  'unit',
  'marks',
];

/** The order list as CSV, a line a thing, with the marks of everything it was counted from. */
export function orderCsv(
  orders: readonly Order[],
  units: UnitSystem,
  say: {
    readonly noDate: (why: NonNullable<Order['need']['why']>) => string;
    readonly purpose: (line: OrderLine) => string;
    readonly marks: (line: OrderLine) => string;
  },
): string {
  return writeTable(
    HEADINGS,
    orders.flatMap(({ level, number, need, orderBy, lines }) =>
      lines.map((line) => [
        level ?? '',
        String(number),
        need.date ?? '',
        orderBy ?? '',
        need.why === null ? '' : say.noDate(need.why),
        say.purpose(line),
        line.item === 'extra' ? 'added by hand' : line.item,
        line.kind ?? '',
        line.hand ?? '',
        line.type ?? '',
        line.length === null ? '' : formatLength(line.length, units),
        line.length === null ? '' : String(toMm(line.length)),
        String(line.quantity),
        line.unit,
        say.marks(line),
      ]),
    ),
  );
}
