import { profitOn } from '../../domain/bid/profit.ts';
import type { Fault } from '../fault.ts';
import { type Salvaged, wasGiven } from '../parsing/salvaged.ts';
import { sayNumber, sayValue } from '../parsing/say.ts';
import type { BidDocument } from '../schema/bid.ts';
import type { JobDocument } from '../schema/document.ts';
import { faultAt } from './fault-at.ts';

type Bid = Salvaged<BidDocument>;

/** Percentages that no price can give, sums that are entered twice, and names that stand twice. */
export function judgeBid({ bid }: Salvaged<JobDocument>): Fault[] {
  if (!bid) return [];
  return [
    ...judgeProfit(bid),
    ...judgeBond(bid),
    ...judgeTwice(bid),
    ...judgeTaxes(bid),
    ...judgeNames(bid),
    ...judgeDays(bid),
  ];
}

/** A margin is a part of the price: at 100 % there is no price that gives it. A markup is not a margin: one must be said. */
function judgeProfit({ profit }: Bid): Fault[] {
  const { kind, percent } = profit ?? {};
  if (!profit || percent === undefined) return [];
  if (kind === undefined) return [faultAt(['bid', 'profit'], bothWays(percent), WHICH)];
  if (kind !== 'margin' || percent < 100) return [];
  const message = `A margin of ${sayNumber(percent)} % cannot be reached at any price.`;
  return [faultAt(['bid', 'profit', 'percent'], message, 'Write "markup" if it is on cost, or a margin under 100 %.')];
}

const WHICH = 'Write "markup" or "margin", whichever is meant.';

/** `10 % as a markup is 9.1 % of the price; 10 % as a margin is 11.1 % on cost.` */
function bothWays(percent: number): string {
  const tenth = (figure: number) => sayNumber(Number(figure.toFixed(1)));
  const said = `${sayNumber(percent)} %`;
  const markup = `${said} as a markup is ${tenth(profitOn(1, { kind: 'markup', percent }).marginPercent)} % of the price`;
  if (percent >= 100) return `${markup}; as a margin it cannot be reached.`;
  return `${markup}; ${said} as a margin is ${tenth(profitOn(1, { kind: 'margin', percent }).markupPercent)} % on cost.`;
}

/** A premium on the price is in the price, and so is the profit: together they must leave something. */
function judgeBond({ bond, profit }: Bid): Fault[] {
  if (bond?.of !== 'price') return [];
  const { kind, percent } = profit ?? {};
  if (profit !== undefined && (kind === undefined || percent === undefined)) return [];
  if (kind === 'margin' && (percent ?? 0) >= 100) return [];
  const markup = kind === undefined || percent === undefined ? 0 : profitOn(1, { kind, percent }).amount;
  const rates = [
    { rate: bond.percent, path: ['bid', 'bond', 'percent'] },
    ...(bond.scale ?? []).map((step, i) => ({ rate: step?.percent, path: ['bid', 'bond', 'scale', i, 'percent'] })),
  ];
  return rates.flatMap(({ rate, path }) => {
    if (rate === undefined || (rate / 100) * (1 + markup) < 1) return [];
    const message = `A bond of ${sayNumber(rate)} % of the price and the profit together leave nothing for the cost.`;
    return [faultAt(path, message, 'A premium is a few per cent: 1.2 % is 12 for each 1,000 of the price.')];
  });
}

function judgeTwice(bid: Bid): Fault[] {
  if (!wasGiven(bid, 'consumables') || !wasGiven(bid, 'consumablesPercent')) return [];
  const message = 'Consumables are entered as a sum and as a percentage of labour.';
  return [faultAt(['bid', 'consumables'], message, 'Keep one of the two.')];
}

function judgeTaxes({ taxPercent, taxes }: Bid): Fault[] {
  const faults = (taxes ?? []).flatMap((tax, i) => {
    const twice = (tax?.on ?? []).find((line, at, on) => line !== undefined && on.indexOf(line) !== at);
    if (twice === undefined) return [];
    return [
      faultAt(
        ['bid', 'taxes', i, 'on'],
        `${sayValue(twice)} stands twice in the base of this tax.`,
        'Name each line once.',
      ),
    ];
  });
  const again = (taxes ?? []).findIndex((tax) => tax?.on?.includes('materials'));
  if (taxPercent === undefined || taxPercent === 0 || again < 0) return faults;
  const message = `Material is taxed twice: by the sales tax of ${sayNumber(taxPercent)} % and by ${sayValue(taxes?.[again]?.name ?? 'a tax by category')}.`;
  return [
    ...faults,
    faultAt(
      ['bid', 'taxes', again, 'on'],
      message,
      'Take material off this base, or leave the sales tax on material out and enter both taxes by category.',
    ),
  ];
}

function judgeNames({ alternates, unitPrices, taxes }: Bid): Fault[] {
  return [
    ...once(
      (alternates ?? []).map((entry) => entry?.name),
      (i) => ['bid', 'alternates', i, 'name'],
    ),
    ...once(
      (unitPrices ?? []).map((entry) => entry?.item),
      (i) => ['bid', 'unitPrices', i, 'item'],
    ),
    ...once(
      (taxes ?? []).map((entry) => entry?.name),
      (i) => ['bid', 'taxes', i, 'name'],
    ),
  ];
}

/** Two names that differ in capitals or spaces alone are one to a reader. */
function once(names: readonly (string | undefined)[], pathOf: (i: number) => (string | number)[]): Fault[] {
  const plain = names.map((name) => name?.trim().replace(/\s+/g, ' ').toLowerCase());
  return names.flatMap((name, i) =>
    name === undefined || plain.indexOf(plain[i]) === i
      ? []
      : [faultAt(pathOf(i), `${sayValue(name)} stands here twice.`, 'Keep one, or call the other something else.')],
  );
}

function judgeDays({ date, validUntil }: Bid): Fault[] {
  if (date === undefined || validUntil === undefined || validUntil >= date) return [];
  const message = `The bid is of ${date} and holds until ${validUntil}, which is before it.`;
  return [faultAt(['bid', 'validUntil'], message, 'Enter the last day that it holds.')];
}
