import type { Job } from '../model.ts';
import type { SpareLine } from '../ordering/spares.ts';
import { formatLength } from '../units/format-length.ts';
import { PRICED_PIECES, sectionPieceOf } from './piece-price.ts';
import type { PricedThing } from './result.ts';

/**
 * What is ordered beyond the work by the job's rules, at the prices of the types: spares, those for the owner, and waste by
 * the piece – but not where the bid states waste on material as a percentage, which stands for it. Minor units; a thing
 * that no type prices has `price` and `amount` null.
 *
 * Source: the usual words of a specification (the greater of a minimum and a percentage; the owner's apart).
 * Example: 384 hangers, 5 % and at least 10: 20 spare at 68.00 are 1,360.00.
 */
export function priceSpares({ types, project, bid }: Job, spares: readonly SpareLine[] | null): readonly PricedThing[] {
  const prices = new Map(types.map((type) => [type.id, type.prices]));
  return (spares ?? []).flatMap((line): PricedThing[] => {
    const quantity = line.spare + line.owner + (bid?.wastePercent == null ? line.waste : 0);
    if (quantity === 0) return [];
    const own = prices.get(line.type ?? '');
    const price = own === undefined ? null : priceOf(own, line);
    const amount = price === null ? null : Math.round(quantity * price);
    return [{ type: line.type ?? '', ...wordsOf(line, project.units), quantity, price, amount }];
  });
}

function priceOf(prices: Job['types'][number]['prices'], { item, kind, length }: SpareLine): number | null {
  if (item === 'section') return length === null ? null : sectionPieceOf(prices, kind ?? 'stock', length);
  const piece = PRICED_PIECES.find(([own]) => own === item);
  return piece === undefined ? null : prices[piece[1]];
}

function wordsOf({ item, kind, hand, length, unit }: SpareLine, units: Job['project']['units']) {
  const word = PRICED_PIECES.find(([own]) => own === item)?.[2] ?? item.replaceAll('-', ' ');
  const exactly = [kind, hand, length === null ? null : formatLength(length, units), unit === 'each' ? null : unit];
  return { item: word, detail: exactly.filter((part) => part !== null).join(' ') || null };
}
