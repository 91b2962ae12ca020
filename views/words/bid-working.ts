import type { BidLine, BidWorking } from '../../src/domain/bid/result.ts';
import { formatHours } from '../../src/domain/units/quantities.ts';
import { BID_LINE_WORDS } from './bid-entries.ts';

type Money = (minor: number) => string;

/** How a line of a bid came about, in one sentence with its figures. */
export function sayWorking({ line, working }: BidLine, money: Money): string {
  switch (working.kind) {
    case 'entered':
      return line === 'extras' ? 'quantity × price of each line' : 'as entered';
    case 'priced':
      return line === 'spares'
        ? 'by the rules for ordering, at the prices of the types, below'
        : 'the takeoff at the prices of its types, below';
    case 'quoted':
      return [`takeoff at the prices of its types ${money(working.takeoff)}`, ...sayParts(working.parts, money)].join(
        ' + ',
      );
    case 'parts':
      return sayParts(working.parts, money).join(' + ');
    case 'percent':
      return `${working.percent} % of ${money(working.of)}${sayBase(working, money)}`;
    case 'hours':
      return `${formatHours(working.hours)} likely × ${money(Math.round(working.costPerHour))} a productive hour`;
    case 'range':
      return `from P50 ${formatHours(working.from)} to P${working.p} ${formatHours(working.to)}, × ${money(Math.round(working.costPerHour))}`;
    case 'bond':
      return `${sayBond(working, money)}, ${working.base === 'price' ? 'the price, itself and the profit in it' : 'cost with overhead'}`;
    case 'profit':
      return `markup ${rounded(working.markupPercent)} % on ${money(working.of)}, margin ${rounded(working.marginPercent)} % of the price`;
  }
}

/** `1.2 % of 100,000.00`, or by a scale `2.5 % of the first 100,000.00 + 1.5 % of the next 40,000.00: of 140,000.00`. */
function sayBond({ percent, of, scale }: Extract<BidWorking, { kind: 'bond' }>, money: Money): string {
  const base = money(Math.round(of));
  if (scale === undefined) return `${percent} % of ${base}`;
  const steps = scale.steps.map(
    (step, i) => `${step.percent} % of the ${i === 0 ? 'first' : 'next'} ${money(Math.round(step.of))}`,
  );
  return `${steps.join(' + ')}: of ${base}`;
}

function sayParts(parts: readonly { readonly name: string; readonly amount: number }[], money: Money): string[] {
  return parts.map(({ name, amount }) => `${name} ${money(amount)}`);
}

/** `(material, waste)`, and what of them is left out. */
function sayBase({ on, less }: Extract<BidWorking, { kind: 'percent' }>, money: Money): string {
  if (on === undefined) return '';
  const lines = on.map((line) => BID_LINE_WORDS[line].toLowerCase()).join(', ');
  return less === undefined ? ` (${lines})` : ` (${lines}, less ${money(less)} of quotes that it does not touch)`;
}

const rounded = (percent: number): number => Number(percent.toFixed(2));
