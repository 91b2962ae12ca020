import ExcelJs from 'exceljs';
import { expect, it } from 'vitest';
import { addTable, FIRST_ROW } from '../../src/paper/workbooks/table-sheet.ts';

it('figures have their column’s format, long words break, the last row alone is bold, and no cell lends its look to another', async () => {
  const written = new ExcelJs.Workbook();
  const table = addTable(written, {
    name: 'Things',
    title: 'Invented job',
    columns: [
      { head: 'Thing', width: 10, wraps: true },
      { head: 'Quantity', width: 12, format: '#,##0.###' },
      { head: 'Unit', width: 8 },
    ],
    rows: [
      ['a hanger whose name is long', 1234.5, 'each'],
      ['rod', 'not known', 'm'],
      ['clamp', null, 'each'],
    ],
    foot: ['all', { formula: 'SUM(B4:B6)', result: 1234.5 }, ''],
  });
  // Looks are shared by a column, so changing that of one cell must fail aloud and not change the others.
  expect(() => {
    table.getCell(FIRST_ROW, 1).font = { italic: true };
  }).toThrow();

  const read = new ExcelJs.Workbook();
  await read.xlsx.load((await written.xlsx.writeBuffer()) as never);
  const cell = (at: string) => read.getWorksheet('Things')?.getCell(at);
  expect(['B4', 'B5', 'B6', 'B7', 'C4'].map((at) => cell(at)?.numFmt)).toEqual([
    '#,##0.###',
    undefined,
    undefined,
    '#,##0.###',
    undefined,
  ]);
  expect(['A4', 'A7', 'B4'].map((at) => cell(at)?.alignment?.wrapText ?? false)).toEqual([true, true, false]);
  expect(['A4', 'C6', 'A7', 'B7'].map((at) => cell(at)?.font?.bold ?? false)).toEqual([false, false, true, true]);
  expect(read.getWorksheet('Things')?.getRow(4).height).toBe(45); // three lines of ten letters
});
