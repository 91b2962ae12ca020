import ExcelJs from 'exceljs';
import { addOrderSheets, type ListedRow, type SpareRow, type ToolRow } from './order-sheets.ts';
import { addTable, type Cell, type TableColumn } from './table-sheet.ts';

/** A line to order, in words. */
export interface OrderRow {
  readonly level: string;
  readonly run: string;
  readonly thing: string;
  readonly type: string;
  readonly length: string;
  readonly lengthMm: number | null;
  readonly quantity: number;
  readonly unit: string;
  /** Where along the run it was counted from. */
  readonly places: string;
}

export interface TakeoffWorkbook {
  readonly title: string;
  readonly at: Date;
  readonly job: readonly OrderRow[];
  readonly byLevel: readonly OrderRow[];
  readonly counted: readonly OrderRow[];
  readonly list: readonly ListedRow[];
  readonly spares: readonly SpareRow[];
  readonly tools: readonly ToolRow[];
}

/** Of a job of thousands of runs the file is a fifth larger than it might be, and made in two thirds of the time. */
const QUICK = { level: 3 };

type Key = keyof OrderRow;

const COLUMNS: Readonly<Record<Key, TableColumn>> = {
  level: { head: 'Level', width: 16 },
  run: { head: 'Run', width: 16 },
  thing: { head: 'Thing', width: 40, wraps: true },
  type: { head: 'Type', width: 24 },
  length: { head: 'Length', width: 14 },
  lengthMm: { head: 'Length, mm', width: 12, format: '0.####' },
  quantity: { head: 'Quantity', width: 12, format: '#,##0.###' },
  unit: { head: 'Unit', width: 8 },
  places: { head: 'Counted from', width: 60, wraps: true },
};

/** What to order as a workbook (XLSX): over the job, by level, line by line as counted, and as it is ordered. No money in it. */
export async function takeoffWorkbook(takeoff: TakeoffWorkbook): Promise<Uint8Array> {
  const { title, at, job, byLevel, counted } = takeoff;
  const workbook = new ExcelJs.Workbook();
  workbook.created = at;
  workbook.modified = at;
  const add = (name: string, rows: readonly OrderRow[], keys: readonly Key[]) =>
    addTable(workbook, {
      name,
      title,
      columns: keys.map((key) => COLUMNS[key]),
      rows: rows.map((row) => keys.map((key): Cell => row[key])),
    });
  add('Job', job, ['thing', 'type', 'length', 'lengthMm', 'quantity', 'unit']);
  add('By level', byLevel, ['level', 'thing', 'type', 'length', 'lengthMm', 'quantity', 'unit']);
  add('Counted', counted, ['level', 'run', 'thing', 'type', 'length', 'lengthMm', 'quantity', 'unit', 'places']);
  addOrderSheets(workbook, title, takeoff);
  return new Uint8Array(await workbook.xlsx.writeBuffer({ zip: { compressionOptions: QUICK } }));
}
