import { itemWord } from '../../../domain/bid/item-words.ts';
import type { BidResult, UnitPrices } from '../../../domain/bid/result.ts';
import { FIRST_ROW, type TableSheet } from '../table-sheet.ts';
import { type Frame, majorOf, moneyFormat, roundedTo } from './frame.ts';

/** What is offered beside the price, without a cost: alternates and unit prices, a sheet each, where there are any. */
export function offerSheets(frame: Frame, bid: BidResult): readonly TableSheet[] {
  return [
    ...(bid.alternates.length > 0 ? [alternatesSheet(frame, bid)] : []),
    ...(bid.unitPrices === null ? [] : [unitSheet(frame, bid.unitPrices)]),
  ];
}

function alternatesSheet(frame: Frame, bid: BidResult): TableSheet {
  const { title, currency } = frame;
  return {
    name: 'Alternates',
    title: `${title} – alternates, not in the price`,
    columns: [
      { head: 'Alternate', width: 44 },
      { head: 'It', width: 10 },
      { head: 'Note', width: 48, wraps: true },
      { head: `To the price, ${currency}`, width: 20, format: moneyFormat(frame) },
    ],
    rows: bid.alternates.map(({ entry, amount }) => [
      entry.name,
      entry.kind === 'add' ? 'adds' : 'deducts',
      entry.note,
      amount === null ? 'missing' : majorOf(frame)(amount),
    ]),
  };
}

function unitSheet(frame: Frame, { lines }: UnitPrices): TableSheet {
  const { title, currency } = frame;
  const money = moneyFormat(frame);
  const major = majorOf(frame);
  return {
    name: 'Unit prices',
    title: `${title} – unit prices`,
    columns: [
      { head: 'Item', width: 24 },
      { head: 'Unit', width: 8 },
      { head: 'Quantity', width: 12, format: '#,##0.####' },
      { head: `Unit price, ${currency}`, width: 20, format: money },
      { head: `Extended, ${currency}`, width: 20, format: money },
    ],
    rows: lines.map(({ item, unit, quantity, offered, worked, extended }, index) => {
      const price = offered ?? worked;
      const row = FIRST_ROW + index;
      return [
        itemWord(item),
        unit,
        quantity,
        price === null ? 'missing' : major(price),
        extended === null ? 'missing' : { formula: roundedTo(frame, `C${row}*D${row}`), result: major(extended) },
      ];
    }),
  };
}
