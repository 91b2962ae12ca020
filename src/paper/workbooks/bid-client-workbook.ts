import ExcelJs from 'exceljs';
import { itemWord } from '../../domain/bid/item-words.ts';
import type { BidResult, UnitPrices } from '../../domain/bid/result.ts';
import { type Frame, majorOf, moneyFormat, roundedTo } from './bid/frame.ts';
import { termsSheet } from './bid/terms-sheet.ts';
import { addTable, FIRST_ROW, type TableSheet } from './table-sheet.ts';

export interface BidClientWorkbook extends Frame {
  readonly at: Date;
  readonly bid: BidResult;
  readonly site: string | undefined;
}

/** The client's version of a bid as a workbook (XLSX): price, alternates, unit prices, terms, and not one cost. */
export async function bidClientWorkbook(input: BidClientWorkbook): Promise<Uint8Array> {
  const workbook = new ExcelJs.Workbook();
  workbook.created = input.at;
  workbook.modified = input.at;
  const { bid } = input;
  addTable(workbook, priceSheet(input));
  if (bid.alternates.length > 0) addTable(workbook, alternatesSheet(input));
  if (bid.unitPrices !== null) addTable(workbook, unitSheet(input, bid.unitPrices));
  addTable(workbook, termsSheet(input, bid));
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

function priceSheet(input: BidClientWorkbook): TableSheet {
  const { bid, title, currency, site } = input;
  const isWhole = bid.incomplete.length === 0;
  return {
    name: 'Bid',
    title: isWhole ? title : `${title} – A DRAFT: the price is not complete, do not sign`,
    columns: [
      { head: 'What', width: 36 },
      { head: `Amount, ${currency}`, width: 20, format: moneyFormat(input) },
      { head: 'Note', width: 56, wraps: true },
    ],
    rows: [
      ['Price', majorOf(input)(bid.price), isWhole ? null : 'not complete: do not sign'],
      ...(site === undefined ? [] : [['Place of the work', null, site]]),
      [
        'Caution',
        null,
        'The work is done to the sheets of the busway’s maker, the local codes and the judgement of licensed people; nothing in this bid permits anybody to energise anything.',
      ],
    ],
  };
}

function alternatesSheet(input: BidClientWorkbook): TableSheet {
  const { bid, title, currency } = input;
  return {
    name: 'Alternates',
    title: `${title} – alternates, not in the price`,
    columns: [
      { head: 'Alternate', width: 44 },
      { head: 'It', width: 10 },
      { head: 'Note', width: 48, wraps: true },
      { head: `To the price, ${currency}`, width: 20, format: moneyFormat(input) },
    ],
    rows: bid.alternates.map(({ entry, amount }) => [
      entry.name,
      entry.kind === 'add' ? 'adds' : 'deducts',
      entry.note,
      amount === null ? 'missing' : majorOf(input)(amount),
    ]),
  };
}

function unitSheet(input: BidClientWorkbook, { lines }: UnitPrices): TableSheet {
  const { title, currency } = input;
  const money = moneyFormat(input);
  const major = majorOf(input);
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
        extended === null ? 'missing' : { formula: roundedTo(input, `C${row}*D${row}`), result: major(extended) },
      ];
    }),
  };
}
