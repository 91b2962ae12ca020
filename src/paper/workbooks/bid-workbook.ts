import ExcelJs from 'exceljs';
import type { BidLine, BidResult, PricedThing } from '../../domain/bid/result.ts';
import { addAlternates } from './bid/alternates-sheet.ts';
import { FIGURE, majorOf, moneyFormat, roundedTo } from './bid/frame.ts';
import { type LineRows, lineRows, sumOfRows } from './bid/line-rows.ts';
import { partsSheet } from './bid/parts-sheet.ts';
import { quotesSheet } from './bid/quotes-sheet.ts';
import { addUnitPrices } from './bid/unit-prices-sheet.ts';
import { addTable, FIRST_ROW, letter, sumOf } from './table-sheet.ts';

export interface BidWorkbook {
  /** As it stands above each table: job, design, date. */
  readonly title: string;
  readonly currency: string;
  readonly at: Date;
  readonly bid: BidResult;
  readonly lineWord: (line: BidLine) => string;
  /** Hours by activity and level; the last figure of a row belongs to no level. */
  readonly hours: {
    readonly levels: readonly string[];
    readonly rows: readonly { readonly activity: string; readonly hours: readonly number[] }[];
  };
}

/**
 * The build-up of a bid as a workbook (XLSX): the price with formulas that reach into the material and the hours, so that a
 * reader can follow every sum. Money: office only.
 */
export async function bidWorkbook(input: BidWorkbook): Promise<Uint8Array> {
  const workbook = new ExcelJs.Workbook();
  workbook.created = input.at;
  workbook.modified = input.at;
  const { bid, lineWord } = input;
  const quotes = quotesSheet(input, bid.packages);
  const parts = partsSheet(input, bid, quotes.places, lineWord);
  const takeoff = `Material!F${FIRST_ROW + bid.materials.length}`;
  const spares = `Spares!F${FIRST_ROW + bid.spares.length}`;
  addPrice(workbook, input, {
    title: input.title,
    currency: input.currency,
    lines: bid.lines,
    first: FIRST_ROW,
    wordOf: lineWord,
    takeoff,
    spares,
    partsOf: parts.partsOf,
  });
  addPriced(workbook, input, 'Material', bid.materials);
  addPriced(workbook, input, 'Spares', bid.spares);
  for (const { table } of [parts, quotes]) if (table.rows.length > 0) addTable(workbook, table);
  addAlternates(workbook, input, bid.alternates, lineWord);
  const price = `Price!E${FIRST_ROW + bid.lines.length}`;
  if (bid.unitPrices !== null) addUnitPrices(workbook, input, bid.unitPrices, price);
  addHours(workbook, input);
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

function addPrice(workbook: ExcelJs.Workbook, input: BidWorkbook, rows: LineRows): void {
  const { bid, title, currency } = input;
  addTable(workbook, {
    name: 'Price',
    title: bid.incomplete.length === 0 ? title : `${title} – NOT COMPLETE: ${bid.incomplete.join(' ')}`,
    columns: [
      { head: 'Line', width: 28 },
      { head: 'Figure', width: 16, format: FIGURE },
      { head: 'Of or at', width: 18, format: FIGURE },
      { head: 'What the figure is', width: 42 },
      { head: `Amount, ${currency}`, width: 20, format: moneyFormat(input) },
    ],
    rows: lineRows(rows),
    foot: ['Price', null, null, null, sumOfRows(rows)],
  });
}

function addPriced(workbook: ExcelJs.Workbook, input: BidWorkbook, name: string, lines: readonly PricedThing[]): void {
  if (lines.length === 0) return;
  const { currency, title } = input;
  const major = majorOf(input);
  const total = lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  addTable(workbook, {
    name,
    title,
    columns: [
      { head: 'Thing', width: 24 },
      { head: 'Detail', width: 24 },
      { head: 'Type', width: 24 },
      { head: 'Quantity', width: 12, format: '#,##0.###' },
      { head: `Price, ${currency}`, width: 16, format: moneyFormat(input) },
      { head: `Amount, ${currency}`, width: 18, format: moneyFormat(input) },
    ],
    rows: lines.map((line, index) => [
      line.item,
      line.detail,
      line.type,
      line.quantity,
      line.price === null ? 'no price' : major(line.price),
      line.amount === null
        ? 'no price'
        : {
            formula: roundedTo(input, `D${FIRST_ROW + index}*E${FIRST_ROW + index}`),
            result: major(line.amount),
          },
    ]),
    foot: ['Sum', null, null, null, null, { formula: sumOf(6, lines.length), result: major(total) }],
  });
}

function addHours(workbook: ExcelJs.Workbook, { hours, title }: BidWorkbook): void {
  const { levels, rows } = hours;
  const last = levels.length + 2;
  const sum = (figures: readonly number[]) => figures.reduce((total, figure) => total + figure, 0);
  addTable(workbook, {
    name: 'Hours',
    title: `${title} – likely labour hours`,
    columns: [
      { head: 'Activity', width: 34 },
      ...[...levels, 'No level'].map((head) => ({ head, width: 14, format: '#,##0.00' })),
      { head: 'Job', width: 14, format: '#,##0.00' },
    ],
    rows: rows.map(({ activity, hours: figures }, index) => [
      activity,
      ...figures,
      {
        formula: `SUM(B${FIRST_ROW + index}:${letter(last)}${FIRST_ROW + index})`,
        result: sum(figures),
      },
    ]),
    foot: [
      'All activities',
      ...Array.from({ length: levels.length + 2 }, (_, column) => ({
        formula: sumOf(column + 2, rows.length),
        result: sum(
          rows.map(({ hours: figures }) => figures[column] ?? (column === levels.length + 1 ? sum(figures) : 0)),
        ),
      })),
    ],
  });
}
