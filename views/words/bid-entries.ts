import type { BidLineName } from '../../src/domain/bid/result.ts';

const WORDS: Readonly<Record<string, string>> = {
  materials: 'Quoted material, in place of the priced takeoff',
  taxPercent: 'Sales tax on material, %',
  other: 'Other direct cost',
  supervision: 'Supervision',
  contingencyP: 'Hours to be enough with a chance of, %',
  overheadPercent: 'Overhead on cost, %',
  'profit.kind': 'Profit is a',
  'profit.percent': 'Profit, %',
};

/** What the form of a bid calls an entry, by its path. */
export function bidEntryWord(path: string): string {
  return WORDS[path] ?? path;
}

export const BID_LINE_WORDS: Readonly<Record<BidLineName, string>> = {
  materials: 'Material',
  tax: 'Sales tax',
  labour: 'Labour',
  extras: 'Lines added by hand',
  other: 'Other direct cost',
  supervision: 'Supervision',
  contingency: 'Contingency',
  overhead: 'Overhead',
  profit: 'Profit',
};
