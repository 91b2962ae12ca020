import type { Fault } from '../fault.ts';
import { type Salvaged, wasGiven } from '../parsing/salvaged.ts';
import { sayList, sayValue } from '../parsing/say.ts';
import type { BidDocument } from '../schema/bid.ts';
import type { JobDocument } from '../schema/document.ts';
import { isCurrency } from './currencies.ts';
import { faultAt } from './fault-at.ts';

type Quote = Salvaged<NonNullable<BidDocument['quotes']>[number]>;

/** Quotes that cannot be added up or laid side by side: two currencies, two names, two choices, a day before its own. */
export function judgeQuotes({ bid, project }: Salvaged<JobDocument>): Fault[] {
  const quotes = (bid?.quotes ?? []).map((quote) => quote ?? {});
  return [
    ...quotes.flatMap((quote, i) => [
      ...judgeCurrency(quote, i, project?.currency),
      ...judgeDays(quote, i),
      ...judgeAmounts(quote, i),
    ]),
    ...judgeNames(quotes),
    ...judgeChoices(quotes),
    ...judgeSum(quotes, bid?.materials),
  ];
}

function named({ id, supplier }: Quote): string {
  return `Quote ${sayValue(id ?? '')}${supplier === undefined ? '' : ` of ${supplier}`}`;
}

function judgeCurrency(quote: Quote, i: number, currency: string | undefined): Fault[] {
  if (quote.currency === undefined || currency === undefined || quote.currency === currency) return [];
  if (!isCurrency(currency)) return [];
  const message = `${named(quote)} is in ${quote.currency} and the job in ${currency}: amounts of two currencies cannot be added.`;
  const remedy = `Enter its amounts in ${currency} at a rate that you have agreed, put the rate in its note, and leave its currency out.`;
  return [faultAt(['bid', 'quotes', i, 'currency'], message, remedy)];
}

function judgeDays(quote: Quote, i: number): Fault[] {
  const { date, validUntil } = quote;
  if (date === undefined || validUntil === undefined || validUntil >= date) return [];
  const message = `${named(quote)} is of ${date} and valid until ${validUntil}, which is before it.`;
  return [
    faultAt(['bid', 'quotes', i, 'validUntil'], message, 'Enter the last day that it holds as it stands in the quote.'),
  ];
}

function judgeAmounts(quote: Quote, i: number): Fault[] {
  return (quote.lines ?? []).flatMap((line, row) => {
    const path = ['bid', 'quotes', i, 'lines', row, 'amount'];
    if (line?.state === 'priced' && !wasGiven(line, 'amount'))
      return [
        faultAt(
          path,
          `Line ${row + 1} of ${named(quote)} is priced and has no amount.`,
          'Enter it, or write that the line is included or lacks.',
        ),
      ];
    if (line?.state === 'included' && line.amount !== undefined)
      return [
        faultAt(
          path,
          `Line ${row + 1} of ${named(quote)} is included in another and has an amount of its own.`,
          'Take the amount out, or write that the line is priced.',
        ),
      ];
    return [];
  });
}

function judgeNames(quotes: readonly Quote[]): Fault[] {
  return quotes.flatMap(({ id }, i) => {
    if (id === undefined || quotes.findIndex((other) => other.id === id) === i) return [];
    return [
      faultAt(['bid', 'quotes', i, 'id'], `Two quotes are called ${sayValue(id)}.`, 'Give each a name of its own.'),
    ];
  });
}

function judgeChoices(quotes: readonly Quote[]): Fault[] {
  return quotes.flatMap((quote, i) => {
    const rivals = quotes.filter((other) => other.chosen === true && other.package === quote.package);
    if (quote.chosen !== true || quote.package === undefined || rivals[0] === quote) return [];
    const message = `${sayList(rivals.map(named), 'and')} are both chosen for ${sayValue(quote.package)}, so it would be paid for twice.`;
    return [
      faultAt(['bid', 'quotes', i, 'chosen'], message, 'Choose one of them, or give the other a package of its own.'),
    ];
  });
}

/** A sum in place of the takeoff, and a quote in place of the takeoff: one of the two is meant. */
function judgeSum(quotes: readonly Quote[], materials: number | undefined): Fault[] {
  const chosen = quotes.find((quote) => quote.chosen === true && quote.goesTo !== 'subcontracts');
  if (materials === undefined || chosen === undefined) return [];
  const message = `A sum for all material is entered, and ${named(chosen)} is chosen for material too.`;
  return [faultAt(['bid', 'materials'], message, 'Take the sum out, or let no quote for material be chosen.')];
}
