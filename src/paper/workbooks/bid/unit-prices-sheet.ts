import type { Workbook } from 'exceljs';
import { itemWord } from '../../../domain/bid/item-words.ts';
import type { UnitPrice, UnitPrices } from '../../../domain/bid/result.ts';
import { addTable, type Cell, FIRST_ROW } from '../table-sheet.ts';
import { FIGURE, type Frame, majorOf, moneyFormat, roundedTo } from './frame.ts';

/** Unit prices with what they extend to; what is left of the price stands in the last row. `price` is the cell of it. */
export function addUnitPrices(
  workbook: Workbook,
  frame: Frame,
  { lines, remainder, factor }: UnitPrices,
  price: string,
): void {
  const money = moneyFormat(frame);
  const last = FIRST_ROW + lines.length - 1;
  addTable(workbook, {
    name: 'Unit prices',
    title: `${frame.title} – unit prices`,
    columns: [
      { head: 'Thing', width: 22 },
      { head: 'Unit', width: 8 },
      { head: 'Quantity', width: 12, format: '#,##0.####' },
      { head: `Cost of one, ${frame.currency}`, width: 20, format: FIGURE },
      { head: 'Overhead, bond, profit ×', width: 24, format: '0.000000' },
      { head: `Unit price, ${frame.currency}`, width: 20, format: money },
      { head: 'How', width: 12 },
      { head: `Extended, ${frame.currency}`, width: 20, format: money },
    ],
    rows: lines.map((line, index) => unitRow(line, FIRST_ROW + index, frame, factor)),
    foot: [
      'In no unit price',
      null,
      null,
      null,
      null,
      null,
      null,
      { formula: `${price}-SUM(H${FIRST_ROW}:H${last})`, result: majorOf(frame)(remainder) },
    ],
  });
}

function unitRow(line: UnitPrice, row: number, frame: Frame, factor: number): readonly Cell[] {
  const major = majorOf(frame);
  const worked: Cell =
    line.worked === null ? 'no price' : { formula: roundedTo(frame, `D${row}*E${row}`), result: major(line.worked) };
  return [
    itemWord(line.item),
    line.unit,
    line.quantity,
    line.cost === null ? null : major(line.cost),
    factor,
    line.offered === null ? worked : major(line.offered),
    line.offered === null ? 'worked' : 'offered',
    line.extended === null
      ? 'no price'
      : { formula: roundedTo(frame, `F${row}*C${row}`), result: major(line.extended) },
  ];
}
