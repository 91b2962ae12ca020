import { type Quote, type QuotedItem, type QuoteLine, UNIT_ITEMS, type UnitItem } from './bid-entries.ts';
import { isBareLack, isFor, leaves } from './held.ts';
import { quoteLineWord } from './item-words.ts';

/** What a quote says of a row: its line, or nothing at all. */
export type LevelledCell = QuoteLine | null;

export interface LevelledQuote {
  readonly quote: Quote;
  /** Minor units: what was quoted, what stands in for what it lacks, and the freight that it leaves out. */
  readonly quoted: number;
  readonly plugs: number;
  /** What it lacks without a plug and our own prices know: it stays in the price by these. */
  readonly ours: readonly { readonly item: UnitItem; readonly amount: number }[];
  readonly freight: number;
  /** Tax in the quoted amounts, taken out so that rivals are compared without it. */
  readonly taxInside: number;
  /** quoted + plugs + ours + freight - taxInside. */
  readonly total: number;
  /** Lacks that have no plug and no price of ours, freight or tax of which nobody knows the amount: the total is not complete. */
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

/** Things of the takeoff at our own prices, minor units; only those whose prices are all known. */
export type OurPrices = ReadonlyMap<UnitItem, number>;
const NONE: OurPrices = new Map();

/**
 * Quotes of each package side by side, row by row of what any of them names: levelled total = quoted + plugs + what it lacks
 * at our own prices + freight left out - tax inside. Minor units. What has neither is missing and never counted as nought.
 *
 * Source: the trade's scope sheet (domain rules §5).
 * Example: 100.00 without contact sets, plugged at 12.00, freight 3.00 out: levelled 115.00.
 */
export function levelQuotes(quotes: readonly Quote[], ours: OurPrices = NONE): readonly LevelledPackage[] {
  const names = [...new Set(quotes.map((quote) => quote.package))];
  return names.map((name) =>
    levelPackage(
      name,
      quotes.filter((quote) => quote.package === name),
      ours,
    ),
  );
}

function levelPackage(name: string, quotes: readonly Quote[], ours: OurPrices): LevelledPackage {
  const named = new Map<string, { item: QuotedItem; detail: string | null }>();
  for (const { item, detail } of quotes.flatMap((quote) => quote.lines))
    named.set(keyOf({ item, detail }), { item, detail });
  const rows = [...named.values()].map(({ item, detail }) => ({
    item,
    detail,
    cells: quotes.map((quote) => cellOf(quote, keyOf({ item, detail }))),
  }));
  const levelled = quotes.map((quote, column) => ({
    ...levelQuote(quote, ours),
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
export function levelQuote(quote: Quote, ourPrices: OurPrices = NONE): Omit<LevelledQuote, 'unsaid'> {
  const of = (state: QuoteLine['state']) =>
    quote.lines.filter((line) => line.state === state).reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  const quoted = of('priced');
  const plugs = of('lacks');
  const freight = quote.freight === 'out' ? (quote.freightAmount ?? 0) : 0;
  const taxInside = quote.tax === 'in' ? (quote.taxAmount ?? 0) : 0;
  const ours = ourPartOf(quote, ourPrices);
  const unplugged = quote.lines
    .filter((line) => isBareLack(line) && !ours.some(({ item }) => isFor(line.item, item)))
    .map(quoteLineWord);
  const missing = [
    ...unplugged,
    ...(quote.freight === 'out' && quote.freightAmount === null ? ['freight'] : []),
    ...(quote.tax === 'in' && quote.taxAmount === null ? ['the tax that is in it'] : []),
    ...(quote.lines.some(({ state }) => state === 'priced') ? [] : ['any amount']),
  ];
  const own = ours.reduce((sum, { amount }) => sum + amount, 0);
  return { quote, quoted, plugs, ours, freight, taxInside, total: quoted + plugs + own + freight - taxInside, missing };
}

/** A subcontract takes the place of no material, so none is left by it. */
function ourPartOf(quote: Quote, ours: OurPrices): LevelledQuote['ours'] {
  if (quote.goesTo !== 'materials') return [];
  return UNIT_ITEMS.flatMap((item) => {
    const amount = ours.get(item);
    return amount === undefined || !leaves(quote, item) ? [] : [{ item, amount }];
  });
}
