import ExcelJs from 'exceljs';
import type { BidLine, BidResult } from '../../domain/bid/result.ts';
import { type Frame, majorOf, moneyFormat } from './bid/frame.ts';
import { offerSheets } from './bid/offer-sheets.ts';
import { signatureRows } from './bid/signature-rows.ts';
import { termsSheet } from './bid/terms-sheet.ts';
import { addTable, type Cell, FIRST_ROW } from './table-sheet.ts';

export interface BidSummaryWorkbook extends Frame {
  readonly at: Date;
  readonly bid: BidResult;
  readonly lineWord: (line: BidLine) => string;
}

const SIGNED = ['Estimated by, date', 'Checked by, date', 'Released to the client by, date'];
const MARKS: readonly string[] = ['overhead', 'bond', 'profit'];

/**
 * The lines of a bid on one sheet (XLSX) for whoever signs, with lines to sign on: cost and price are sums of them, markup
 * and margin are worked beside each other. Alternates and unit prices stand behind it as they are offered. Money: office only.
 */
export async function bidSummaryWorkbook(input: BidSummaryWorkbook): Promise<Uint8Array> {
  const workbook = new ExcelJs.Workbook();
  workbook.created = input.at;
  workbook.modified = input.at;
  const { bid, title, currency } = input;
  addTable(workbook, {
    name: 'Summary',
    title: bid.incomplete.length === 0 ? title : `${title} – NOT COMPLETE: ${bid.incomplete.join(' ')}`,
    columns: [
      { head: 'Line', width: 40 },
      { head: `Amount, ${currency}`, width: 20, format: moneyFormat(input) },
      { head: '%', width: 12, format: '0.00' },
      { head: 'Signed', width: 44 },
    ],
    rows: [...summaryRows(input), ...signatureRows(SIGNED, 4)],
  });
  for (const sheet of [...offerSheets(input, bid), termsSheet(input, bid)]) addTable(workbook, sheet);
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

function summaryRows(input: BidSummaryWorkbook): readonly (readonly Cell[])[] {
  const { bid, lineWord } = input;
  const major = majorOf(input);
  const costs = bid.lines.filter(({ line }) => !MARKS.includes(line));
  const marks = bid.lines.filter(({ line }) => MARKS.includes(line));
  const rowOf = (line: BidLine): Cell[] => [lineWord(line), major(line.amount), null];
  const costRow = FIRST_ROW + costs.length;
  const priceRow = costRow + marks.length + 1;
  const cost = costs.length === 0 ? '0' : `SUM(B${FIRST_ROW}:B${costRow - 1})`;
  return [
    ...costs.map(rowOf),
    ['Cost', { formula: cost, result: major(bid.cost) }, null],
    ...marks.map(rowOf),
    ['Price', { formula: `SUM(B${costRow}:B${priceRow - 1})`, result: major(bid.price) }, null],
    ...profitRows(marks, costRow, priceRow),
  ];
}

/** Profit with both its names, worked from the amounts above. */
function profitRows(marks: readonly BidLine[], costRow: number, priceRow: number): readonly (readonly Cell[])[] {
  const place = marks.findIndex(({ working }) => working.kind === 'profit');
  const working = marks[place]?.working;
  if (working?.kind !== 'profit') return [];
  const profit = `B${costRow + 1 + place}`;
  const rest = `(B${priceRow}-${profit})`;
  return [
    [
      'Profit as markup on cost',
      null,
      { formula: `IF(${rest}=0,0,100*${profit}/${rest})`, result: working.markupPercent },
    ],
    [
      'The same as margin of the price',
      null,
      { formula: `IF(B${priceRow}=0,0,100*${profit}/B${priceRow})`, result: working.marginPercent },
    ],
  ];
}
