import type { Quote, QuotedItem, QuoteLine } from './bid-entries.ts';
import { quoteLineWord } from './item-words.ts';

/** What a quote says of a row: its line, or nothing at all. */
export type LevelledCell = QuoteLine | null;

export interface LevelledQuote {
  readonly quote: Quote;
  /** Minor units: what was quoted, what stands in for what it lacks, and the freight that it leaves out. */
  readonly quoted: number;
  readonly plugs: number;
  readonly freight: number;
  /** Tax in the quoted amounts, taken out so that rivals are compared without it. */
  readonly taxInside: number;
  /** quoted + plugs + freight - taxInside. */
  readonly total: number;
  /** Lacks that have no plug, freight or tax of which nobody knows the amount: the total is not complete. */
  readonly missing: readonly string[];
  /** Rows that it says nothing about: to be asked. */
  readonly unsaid: readonly string[];
}

export interface LevelledPackage {
  readonly name: string;
  readonly rows: readonly {
    readonly item: QuotedItem;
    readonly detail: string | null;
    /** In the order of `quotes`. */
    readonly cells: readonly LevelledCell[];
  }[];
  readonly quotes: readonly LevelledQuote[];
  /** Of the quotes whose totals are complete; null when none is. */
  readonly lowest: string | null;
}

/**
 * Quotes of each package side by side, row by row of what any of them names: levelled total = quoted + plugs + freight
 * left out - tax inside. Minor units. What a quote lacks without a plug is missing and never counted as nought.
 *
 * Source: the trade's scope sheet (domain rules §5).
 * Example: 100.00 without contact sets, plugged at 12.00, freight 3.00 out: levelled 115.00.
 */
export function levelQuotes(quotes: readonly Quote[]): readonly LevelledPackage[] {
  const names = [...new Set(quotes.map((quote) => quote.package))];
  return names.map((name) =>
    levelPackage(
      name,
      quotes.filter((quote) => quote.package === name),
    ),
  );
}

function levelPackage(name: string, quotes: readonly Quote[]): LevelledPackage {
  const named = new Map<string, { item: QuotedItem; detail: string | null }>();
  for (const { item, detail } of quotes.flatMap((quote) => quote.lines))
    named.set(keyOf({ item, detail }), { item, detail });
  const rows = [...named.values()].map(({ item, detail }) => ({
    item,
    detail,
    cells: quotes.map((quote) => cellOf(quote, keyOf({ item, detail }))),
  }));
  const levelled = quotes.map((quote, column) => ({
    ...levelQuote(quote),
    unsaid: rows.filter(({ cells }) => cells[column] === null).map(quoteLineWord),
  }));
  const whole = levelled.filter(({ missing }) => missing.length === 0);
  const least = Math.min(...whole.map(({ total }) => total));
  return { name, rows, quotes: levelled, lowest: whole.find(({ total }) => total === least)?.quote.id ?? null };
}

function keyOf({ item, detail }: { item: QuotedItem; detail: string | null }): string {
  return `${item} ${detail?.trim().toLowerCase() ?? ''}`;
}

/** Lines of one name in a quote are one row of it; the first speaks, with all their amounts. */
function cellOf({ lines }: Quote, key: string): LevelledCell {
  const own = lines.filter((line) => keyOf(line) === key);
  const [first] = own;
  if (first === undefined) return null;
  const amounts = own.map(({ amount }) => amount).filter((amount) => amount !== null);
  return { ...first, amount: amounts.length === 0 ? null : amounts.reduce((sum, amount) => sum + amount, 0) };
}

/** One quote made whole: what it offers, what stands in for the rest, and what is still not known. */
export function levelQuote(quote: Quote): Omit<LevelledQuote, 'unsaid'> {
  const of = (state: QuoteLine['state']) =>
    quote.lines.filter((line) => line.state === state).reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  const quoted = of('priced');
  const plugs = of('lacks');
  const freight = quote.freight === 'out' ? (quote.freightAmount ?? 0) : 0;
  const taxInside = quote.tax === 'in' ? (quote.taxAmount ?? 0) : 0;
  const unplugged = quote.lines.filter(({ state, amount }) => state === 'lacks' && amount === null).map(quoteLineWord);
  const missing = [
    ...unplugged,
    ...(quote.freight === 'out' && quote.freightAmount === null ? ['freight'] : []),
    ...(quote.tax === 'in' && quote.taxAmount === null ? ['the tax that is in it'] : []),
    ...(quote.lines.some(({ state }) => state === 'priced') ? [] : ['any amount']),
  ];
  return { quote, quoted, plugs, freight, taxInside, total: quoted + plugs + freight - taxInside, missing };
}
