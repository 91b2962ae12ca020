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
  waste: 'Waste',
  escalation: 'Escalation',
  freight: 'Freight',
  tax: 'Sales tax',
  labour: 'Labour',
  consumables: 'Consumables',
  extras: 'Lines added by hand',
  equipment: 'Lifts and tools',
  subcontracts: 'Subcontracts',
  other: 'Other direct cost',
  supervision: 'Supervision',
  permit: 'Permit',
  contingency: 'Contingency',
  overhead: 'Overhead',
  bond: 'Bond',
  profit: 'Profit',
};

/** A line of a bid by its name; one of several taxes by what it is called. */
export function bidLineWord({ line, label }: { readonly line: string; readonly label?: string | null }): string {
  const words: Readonly<Record<string, string>> = BID_LINE_WORDS;
  const word = words[line] ?? line;
  return label === undefined || label === null ? word : `${word}: ${label}`;
}
