import type { QuoteLine } from '../../../domain/bid/bid-entries.ts';
import { isBareLack, isFor } from '../../../domain/bid/held.ts';
import { itemWord, quoteLineWord } from '../../../domain/bid/item-words.ts';
import type { LevelledPackage, LevelledQuote } from '../../../domain/bid/level-quotes.ts';
import { type Cell, FIRST_ROW, type TableSheet } from '../table-sheet.ts';
import { type Frame, majorOf, moneyFormat } from './frame.ts';

/** Where a quote's offered lines stand: first and last row of the sheet Quotes. */
export type QuoteRows = ReadonlyMap<string, readonly [number, number]>;

const STATES = { priced: 'priced', included: 'included', lacks: 'lacks; plug' } as const;

/** Quotes line by line, each with its levelled total, and where each quote's lines stand. */
export function quotesSheet(
  frame: Frame,
  packages: readonly LevelledPackage[],
): { readonly table: TableSheet; readonly places: QuoteRows } {
  const major = majorOf(frame);
  const rows: (readonly Cell[])[] = [];
  const places = new Map<string, readonly [number, number]>();
  for (const { name, quotes } of packages)
    for (const levelled of quotes) {
      const { quote } = levelled;
      const head = [name, quote.id, quote.supplier];
      const first = FIRST_ROW + rows.length;
      for (const line of quote.lines)
        rows.push([
          ...head,
          quoteLineWord(line),
          saidOf(line, levelled),
          line.amount === null ? null : major(line.amount),
        ]);
      places.set(quote.id, [first, first + quote.lines.length - 1]);
      for (const { item, amount } of levelled.ours)
        rows.push([...head, itemWord(item), 'lacks; at our prices', major(amount)]);
      rows.push([...head, 'freight', quote.freight ?? 'not said', major(levelled.freight)]);
      rows.push([...head, 'tax inside, taken out', quote.tax ?? 'not said', -major(levelled.taxInside)]);
      const total = `SUM(F${first}:F${FIRST_ROW + rows.length - 1})`;
      rows.push([...head, 'LEVELLED', standing(levelled), { formula: total, result: major(levelled.total) }]);
    }
  const table = {
    name: 'Quotes',
    title: `${frame.title} – quotes levelled`,
    columns: [
      { head: 'Package', width: 22 },
      { head: 'Quote', width: 10 },
      { head: 'Supplier', width: 28 },
      { head: 'Line', width: 28 },
      { head: 'What it says', width: 30 },
      { head: `Amount, ${frame.currency}`, width: 18, format: moneyFormat(frame) },
    ],
    rows,
  };
  return { table, places };
}

function saidOf(line: QuoteLine, { ours }: LevelledQuote): string {
  if (!isBareLack(line)) return STATES[line.state];
  return ours.some(({ item }) => isFor(line.item, item)) ? 'lacks; at our prices, below' : 'lacks; NO PLUG';
}

function standing({ quote, missing }: LevelledQuote): string {
  const whole = missing.length === 0 ? [] : [`NOT COMPLETE: ${missing.join(', ')}`];
  return [quote.chosen ? 'chosen' : 'not chosen', ...whole].join('; ');
}
