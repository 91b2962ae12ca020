import type { BidLine, BidPart, BidResult } from '../../../domain/bid/result.ts';
import { type Cell, FIRST_ROW, type TableSheet } from '../table-sheet.ts';
import { FIGURE, type Frame, majorOf, moneyFormat, roundedTo } from './frame.ts';
import type { QuoteRows } from './quotes-sheet.ts';

/**
 * What lines of several parts are made of: number × time × rate + once for what is paid by time, the lines of a quote, or a
 * sum; and where the parts of a line have their sum.
 */
export function partsSheet(
  frame: Frame,
  { lines, timed }: Pick<BidResult, 'lines' | 'timed'>,
  quotes: QuoteRows,
  wordOf: (line: BidLine) => string,
): { readonly table: TableSheet; readonly partsOf: (line: BidLine) => string | null } {
  const rows: (readonly Cell[])[] = [];
  const sums = new Map<BidLine, string>();
  for (const line of lines) {
    const { working } = line;
    if (working.kind !== 'parts' && working.kind !== 'quoted') continue;
    const first = FIRST_ROW + rows.length;
    for (const part of working.parts)
      rows.push([wordOf(line), part.name, ...partCells(line, part, FIRST_ROW + rows.length, { frame, timed, quotes })]);
    sums.set(line, `SUM(Parts!G${first}:G${FIRST_ROW + rows.length - 1})`);
  }
  const table = {
    name: 'Parts',
    title: `${frame.title} – parts of the lines`,
    columns: [
      { head: 'Line', width: 22 },
      { head: 'Part', width: 40 },
      { head: 'Number', width: 12, format: FIGURE },
      { head: 'Days, weeks or months', width: 22, format: FIGURE },
      { head: `Rate, ${frame.currency}`, width: 16, format: moneyFormat(frame) },
      { head: `Once, ${frame.currency}`, width: 16, format: moneyFormat(frame) },
      { head: `Amount, ${frame.currency}`, width: 18, format: moneyFormat(frame) },
    ],
    rows,
  };
  return { table, partsOf: (line) => sums.get(line) ?? null };
}

function partCells(
  line: BidLine,
  part: BidPart,
  row: number,
  { frame, timed, quotes }: { frame: Frame; timed: BidResult['timed']; quotes: QuoteRows },
): readonly Cell[] {
  const major = majorOf(frame);
  const result = major(part.amount);
  const entry = part.timed === undefined ? undefined : timed[part.timed];
  if (entry !== undefined)
    return [
      entry.number,
      entry.time,
      entry.rate === null ? 'no rate' : major(entry.rate),
      entry.once === null ? null : major(entry.once),
      entry.rate === null ? result : { formula: `${roundedTo(frame, `C${row}*D${row}*E${row}`)}+F${row}`, result },
    ];
  const place = part.quote === undefined ? undefined : quotes.get(part.quote);
  const isOffer = line.line !== 'freight';
  if (place === undefined || place[1] < place[0]) return [null, null, null, null, result];
  const formula = isOffer ? `SUM(Quotes!F${place[0]}:F${place[1]})` : `Quotes!F${place[1] + 1}`;
  return [null, null, null, null, { formula, result }];
}
