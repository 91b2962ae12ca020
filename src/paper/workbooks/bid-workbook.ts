import ExcelJs from 'exceljs';
import type { BidLine, BidResult } from '../../domain/bid/result.ts';
import { minorDigits } from '../../domain/units/money.ts';
import { addTable, type Cell, FIRST_ROW, letter, sumOf } from './table-sheet.ts';

export interface BidWorkbook {
  /** As it stands above each table: job, design, date. */
  readonly title: string;
  readonly currency: string;
  readonly at: Date;
  readonly bid: BidResult;
  readonly lineWord: (line: BidLine['line']) => string;
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
  addPrice(workbook, input);
  if (input.bid.materials.length > 0) addMaterial(workbook, input);
  addHours(workbook, input);
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

function addPrice(workbook: ExcelJs.Workbook, input: BidWorkbook): void {
  const { bid, lineWord, title, currency } = input;
  const major = majorOf(currency);
  const rows = bid.lines.map((line, index): Cell[] => [
    lineWord(line.line),
    ...priceCells(line, index, input),
    { formula: amountFormula(line, index, input), result: major(line.amount) },
  ]);
  addTable(workbook, {
    name: 'Price',
    title: bid.incomplete.length === 0 ? title : `${title} – NOT COMPLETE: ${bid.incomplete.join(' ')}`,
    columns: [
      { head: 'Line', width: 28 },
      { head: 'Figure', width: 16, format: '#,##0.00####' },
      { head: 'Of or at', width: 18, format: '#,##0.00####' },
      { head: 'What the figure is', width: 42 },
      { head: `Amount, ${currency}`, width: 20, format: moneyFormat(currency) },
    ],
    rows,
    foot: ['Price', null, null, null, { formula: sumOf(5, rows.length), result: major(bid.price) }],
  });
}

/** The two figures a line is made of, and what they are. */
function priceCells({ working }: BidLine, index: number, { currency }: BidWorkbook): readonly [Cell, Cell, string] {
  const major = majorOf(currency);
  const above = `SUM(E${FIRST_ROW}:E${FIRST_ROW + index - 1})`;
  switch (working.kind) {
    case 'entered':
      return [null, null, 'as entered'];
    case 'priced':
      return [null, null, 'from the sheet Material'];
    case 'percent':
      return [
        working.percent,
        { formula: index === 1 ? `E${FIRST_ROW}` : above, result: major(working.of) },
        '% of the amount beside it',
      ];
    case 'hours':
      return [working.hours, working.costPerHour / 10 ** minorDigits(currency), 'labour hours, at the cost of one'];
    case 'range':
      return [
        working.to - working.from,
        working.costPerHour / 10 ** minorDigits(currency),
        `hours from P50 to P${working.p}, at the cost of one`,
      ];
    case 'profit':
      return [working.markupPercent, { formula: above, result: major(working.of) }, '% markup on the amount beside it'];
  }
}

function amountFormula({ amount, working }: BidLine, index: number, { currency, bid }: BidWorkbook): string {
  const row = FIRST_ROW + index;
  const digits = minorDigits(currency);
  switch (working.kind) {
    case 'entered':
      return String(amount / 10 ** digits);
    case 'priced':
      return `Material!F${FIRST_ROW + bid.materials.length}`;
    case 'percent':
    case 'profit':
      return `ROUND(B${row}*C${row}/100,${digits})`;
    case 'hours':
    case 'range':
      return `ROUND(B${row}*C${row},${digits})`;
  }
}

function addMaterial(workbook: ExcelJs.Workbook, { bid, currency, title }: BidWorkbook): void {
  const major = majorOf(currency);
  const total = bid.materials.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  addTable(workbook, {
    name: 'Material',
    title,
    columns: [
      { head: 'Thing', width: 24 },
      { head: 'Detail', width: 24 },
      { head: 'Type', width: 24 },
      { head: 'Quantity', width: 12, format: '#,##0.###' },
      { head: `Price, ${currency}`, width: 16, format: moneyFormat(currency) },
      { head: `Amount, ${currency}`, width: 18, format: moneyFormat(currency) },
    ],
    rows: bid.materials.map((line, index) => [
      line.item,
      line.detail,
      line.type,
      line.quantity,
      line.price === null ? 'no price' : major(line.price),
      line.amount === null
        ? 'no price'
        : {
            formula: `ROUND(D${FIRST_ROW + index}*E${FIRST_ROW + index},${minorDigits(currency)})`,
            result: major(line.amount),
          },
    ]),
    foot: ['Sum', null, null, null, null, { formula: sumOf(6, bid.materials.length), result: major(total) }],
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

function majorOf(currency: string): (minor: number) => number {
  const scale = 10 ** minorDigits(currency);
  return (minor) => minor / scale;
}

function moneyFormat(currency: string): string {
  const digits = minorDigits(currency);
  return digits === 0 ? '#,##0' : `#,##0.${'0'.repeat(digits)}`;
}
