import type { Workbook } from 'exceljs';
import type { AlternatePrice, BidLine } from '../../../domain/bid/result.ts';
import { addTable, type Cell, FIRST_ROW } from '../table-sheet.ts';
import { FIGURE, type Frame, majorOf, moneyFormat } from './frame.ts';
import { type LineRows, lineRows } from './line-rows.ts';

/** Alternates, each with its own build-up at the percentages of the bid. */
export function addAlternates(
  workbook: Workbook,
  frame: Frame,
  alternates: readonly AlternatePrice[],
  wordOf: (line: BidLine) => string,
): void {
  if (alternates.length === 0) return;
  const rows: (readonly Cell[])[] = [];
  for (const { entry, lines, amount } of alternates) {
    const of: LineRows = {
      ...frame,
      lines,
      first: FIRST_ROW + rows.length,
      wordOf,
      takeoff: '0',
      spares: '0',
      partsOf: () => null,
    };
    const sign = entry.kind === 'add' ? '' : '-';
    const sum = `${sign}SUM(E${of.first}:E${of.first + lines.length - 1})`;
    rows.push(...lineRows(of).map((row) => [...row, entry.name]));
    rows.push([
      entry.kind === 'add' ? 'ADDS' : 'DEDUCTS',
      null,
      null,
      amount === null ? 'NOT COMPLETE: no price yet' : entry.note,
      amount === null ? null : { formula: sum, result: majorOf(frame)(amount) },
      entry.name,
    ]);
  }
  addTable(workbook, {
    name: 'Alternates',
    title: `${frame.title} – alternates, not in the price`,
    columns: [
      { head: 'Line', width: 28 },
      { head: 'Figure', width: 16, format: FIGURE },
      { head: 'Of or at', width: 18, format: FIGURE },
      { head: 'What the figure is', width: 42 },
      { head: `Amount, ${frame.currency}`, width: 20, format: moneyFormat(frame) },
      { head: 'Alternate', width: 40 },
    ],
    rows,
  });
}
