import { UNIT_ITEMS } from '../../src/domain/bid/bid-entries.ts';
import { itemWord } from '../../src/domain/bid/item-words.ts';
import type { BidLineName } from '../../src/domain/bid/result.ts';

const WORDS: Readonly<Record<string, string>> = {
  materials: 'Quoted material, in place of the priced takeoff',
  wastePercent: 'Waste on material, %',
  spares: 'Spares, in place of those by rule',
  escalationPercent: 'Escalation on material, %',
  freight: 'Freight',
  taxPercent: 'Sales tax on material, %',
  consumables: 'Consumables, as a sum',
  consumablesPercent: 'Consumables, % of labour',
  other: 'Other direct cost',
  supervision: 'Supervision',
  permit: 'Permit',
  contingencyP: 'Hours to be enough with a chance of, %',
  overheadPercent: 'Overhead on cost, %',
  'bond.of': 'Bond is on the',
  'bond.percent': 'Bond, %',
  'profit.kind': 'Profit is a',
  'profit.percent': 'Profit, %',
  profit: 'Profit',
  date: 'Day of the bid',
  validUntil: 'Holds until',
  estimateClass: 'Estimate class',
  inclusions: 'Included',
  exclusions: 'Not included',
  ownerFurnished: 'Furnished by the owner',
  qualifications: 'The price supposes',
};

const ROWS: Readonly<Record<string, string>> = {
  timed: 'row',
  subcontracts: 'subcontract',
  taxes: 'tax',
  quotes: 'quote',
  lines: 'line',
  alternates: 'alternate',
  unitPrices: 'unit price',
  addenda: 'addendum',
  'bond.scale': 'bond step',
};

const CELLS: Readonly<Record<string, string>> = {
  item: 'What it is',
  goesTo: 'Goes to',
  number: 'Number',
  time: 'For how long',
  per: 'Counted in',
  rate: 'Rate of one',
  once: 'Paid once',
  work: 'Work',
  amount: 'Amount',
  name: 'Name',
  percent: '%',
  on: 'Due on',
  id: 'Called',
  package: 'Package',
  supplier: 'Supplier',
  date: 'Date',
  validUntil: 'Valid until',
  currency: 'Currency',
  freight: 'Freight',
  freightAmount: 'Freight that is out',
  tax: 'Tax',
  taxAmount: 'Tax that is in it',
  firm: 'Held until delivery',
  chosen: 'Chosen: it is in the price',
  note: 'Note',
  detail: 'More exactly',
  state: 'It is',
  kind: 'It',
  materials: 'Material',
  hours: 'Hours',
  subcontracts: 'Subcontracts',
  other: 'Other cost',
  material: 'Material of one',
  offered: 'Price that is offered',
};

export function bidCellWord(cell: string): string {
  return CELLS[cell] ?? cell;
}

/** What the forms of a bid call an entry, by its path: `quotes[0].lines[1].amount` is "Amount of line 2 of quote 1". */
export function bidEntryWord(path: string): string {
  if (path.startsWith('ownerFurnished.')) return `Furnished by the owner: ${ownedWord(path)}`;
  const [, group, row, rest] = /^([\w.]+)\[(\d+)\](?:\.(.+))?$/.exec(path) ?? [];
  if (group === undefined || row === undefined) return WORDS[path] ?? path;
  const owner = `${ROWS[group] ?? group} ${Number(row) + 1}`;
  if (rest === undefined) return owner;
  const inner = /^\w+\[\d+\]/.test(rest) ? bidEntryWord(rest) : bidCellWord(rest.replace(/^on\..*$/, 'on'));
  return `${inner} of ${owner}`;
}

/** `ownedWord('ownerFurnished.tap') = 'tap-offs'`. */
export function ownedWord(path: string): string {
  const item = UNIT_ITEMS.find((own) => path === `ownerFurnished.${own}`);
  return item === undefined ? path : itemWord(item);
}

export const BID_LINE_WORDS: Readonly<Record<BidLineName, string>> = {
  materials: 'Material',
  waste: 'Waste',
  spares: 'Spares',
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
