import type { Workbook } from 'exceljs';
import { addTable, type Cell, FIRST_ROW } from './table-sheet.ts';

/** A line of the order list, in words. */
export interface ListedRow {
  readonly level: string;
  readonly order: number;
  readonly needed: string;
  readonly orderBy: string;
  readonly purpose: string;
  readonly thing: string;
  readonly type: string;
  readonly length: string;
  readonly lengthMm: number | null;
  readonly quantity: number;
  readonly unit: string;
  readonly marks: string;
}

export interface SpareRow {
  readonly thing: string;
  readonly type: string;
  readonly length: string;
  readonly unit: string;
  readonly needed: number;
  readonly wastePercent: number;
  readonly waste: number;
  readonly percent: number;
  readonly minimum: number;
  readonly spare: number;
  readonly owner: number;
}

export interface ToolRow {
  readonly tool: string;
  readonly perCrew: number;
  readonly crews: number | null;
  readonly which: string;
  readonly note: string;
}

/** A cell of a workbook takes no more letters than this; what is left out is said. */
const MOST_LETTERS = 32_000;

/** The order list by floor and need date, what is ordered beyond the work, and the crews' tools. */
export function addOrderSheets(
  workbook: Workbook,
  title: string,
  { list, spares, tools }: { list: readonly ListedRow[]; spares: readonly SpareRow[]; tools: readonly ToolRow[] },
): void {
  addTable(workbook, {
    name: 'Order list',
    title,
    columns: [
      { head: 'Level', width: 16 },
      { head: 'Order', width: 8 },
      { head: 'Needed', width: 24 },
      { head: 'Order by', width: 14 },
      { head: 'For', width: 18 },
      { head: 'Thing', width: 40, wraps: true },
      { head: 'Type', width: 24 },
      { head: 'Length', width: 14 },
      { head: 'Length, mm', width: 12, format: '0.####' },
      { head: 'Quantity', width: 12, format: '#,##0.###' },
      { head: 'Unit', width: 8 },
      { head: 'Marks', width: 60 },
    ],
    rows: list.map((row): Cell[] => [
      row.level,
      row.order,
      row.needed,
      row.orderBy,
      row.purpose,
      row.thing,
      row.type,
      row.length,
      row.lengthMm,
      row.quantity,
      row.unit,
      cut(row.marks),
    ]),
  });
  addTable(workbook, {
    name: 'Spares',
    title,
    columns: [
      { head: 'Thing', width: 40, wraps: true },
      { head: 'Type', width: 24 },
      { head: 'Length', width: 14 },
      { head: 'Taken in', width: 12, format: '#,##0.###' },
      { head: 'Waste, %', width: 10, format: '0.##' },
      { head: 'Waste', width: 10, format: '#,##0.###' },
      { head: 'Spares, %', width: 10, format: '0.##' },
      { head: 'At least', width: 10, format: '#,##0' },
      { head: 'Spares', width: 10, format: '#,##0.###' },
      { head: 'For the owner', width: 14, format: '#,##0' },
      { head: 'Ordered in all', width: 14, format: '#,##0.###' },
      { head: 'Unit', width: 8 },
    ],
    rows: spares.map((row, index) => spareCells(row, FIRST_ROW + index)),
  });
  addTable(workbook, {
    name: 'Tools',
    title,
    columns: [
      { head: 'Tool', width: 44 },
      { head: 'For a crew', width: 12, format: '#,##0' },
      { head: 'Crews', width: 10, format: '#,##0' },
      { head: 'In all', width: 10, format: '#,##0' },
      { head: 'Which crews', width: 40 },
      { head: 'Note', width: 50 },
    ],
    rows: tools.map(({ tool, perCrew, crews, which, note }, index): Cell[] => {
      const row = FIRST_ROW + index;
      const all = crews === null ? null : { formula: `B${row}*C${row}`, result: perCrew * crews };
      return [tool, perCrew, crews, all, which, note];
    }),
  });
}

function spareCells(row: SpareRow, at: number): Cell[] {
  const { needed, wastePercent, waste, percent, minimum, spare, owner } = row;
  const [noise, decimals] = row.unit === 'm' ? [9, 3] : [6, 0];
  const part = (column: string) => `ROUNDUP(ROUND(D${at}*${column}${at}/100,${noise}),${decimals})`;
  return [
    row.thing,
    row.type,
    row.length,
    needed,
    wastePercent,
    { formula: part('E'), result: waste },
    percent,
    minimum,
    { formula: `MAX(H${at},${part('G')})`, result: spare },
    owner,
    { formula: `D${at}+F${at}+I${at}+J${at}`, result: needed + waste + spare + owner },
    row.unit,
  ];
}

function cut(text: string): string {
  return text.length <= MOST_LETTERS
    ? text
    : `${text.slice(0, MOST_LETTERS)} … the rest is in the CSV of the order list`;
}
