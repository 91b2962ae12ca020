import ExcelJs from 'exceljs';
import type { BookRow } from '../../document/labour-book-sheet/book-rows.ts';
import { BOOK_HEADINGS, FIGURE_COLUMNS } from '../../document/labour-book-sheet/columns.ts';
import { letter } from './table-sheet.ts';

export interface LabourBookWorkbook {
  /** Job, version and date: at the foot of every printed page. */
  readonly title: string;
  /** What must be said of the book on every print; empty for a company's own. */
  readonly notice: string;
  readonly rows: readonly BookRow[];
  readonly at: Date;
}

const WIDTHS: Readonly<Record<string, number>> = { name: 32, part: 14, conditions: 34, value: 22 };

/**
 * A labour book as a workbook that can be edited and read back: headings in the first row, one row a thing, figures as
 * figures. Money: office only, for it holds the crew's rates.
 */
export async function labourBookWorkbook({ title, notice, rows, at }: LabourBookWorkbook): Promise<Uint8Array> {
  const workbook = new ExcelJs.Workbook();
  workbook.created = at;
  workbook.modified = at;
  const sheet = workbook.addWorksheet('Labour book', {
    views: [{ state: 'frozen', ySplit: 1 }],
    pageSetup: { orientation: 'landscape', fitToPage: true, fitToWidth: 1, fitToHeight: 0, printTitlesRow: '1:1' },
    headerFooter: { oddHeader: `&L${plain(title)}&R&P / &N`, oddFooter: `&L${plain(notice)}` },
  });
  sheet.addRow([...BOOK_HEADINGS]).font = { bold: true };
  for (const row of rows)
    sheet.addRow(BOOK_HEADINGS.map((heading) => cellOf(row[heading], FIGURE_COLUMNS.has(heading))));
  BOOK_HEADINGS.forEach((heading, index) => {
    sheet.getColumn(index + 1).width = WIDTHS[heading] ?? 13;
  });
  sheet.pageSetup.printArea = `A1:${letter(BOOK_HEADINGS.length)}${rows.length + 1}`;
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

/** `value` holds words and figures: what is a figure there is one for the spreadsheet too. */
function cellOf(text: string | undefined, isFigure: boolean): string | number | null {
  if (text === undefined) return null;
  const isPlain = /^-?\d+(\.\d+)?$/.test(text) && String(Number(text)) === text;
  return isPlain || (isFigure && Number.isFinite(Number(text))) ? Number(text) : text;
}

/** In a header of a sheet `&` begins a code. */
function plain(text: string): string {
  return text.replaceAll('&', '&&');
}
