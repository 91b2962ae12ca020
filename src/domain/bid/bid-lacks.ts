import type { Labour } from '../labour/result.ts';
import type { RunLayout } from '../layout/result.ts';
import type { Bid, Job } from '../model.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import { type Quote, type QuotedItem, type QuoteLine, UNIT_ITEMS } from './bid-entries.ts';
import type { Bought } from './bought.ts';
import { holds, isBareLack, isFor, leaves, silentKitParts } from './held.ts';
import { itemWord, quoteLineWord } from './item-words.ts';
import type { LevelledPackage } from './level-quotes.ts';
import { alternateLacks } from './price-alternates.ts';
import type { PricedLine, PricedThing, UnitPrices } from './result.ts';

export interface Lacking {
  readonly job: Job;
  readonly bid: Bid;
  readonly bought: Bought;
  readonly layouts: readonly RunLayout[];
  readonly takeoff: readonly TakeoffLine[];
  readonly labour: Labour | null;
  readonly packages: readonly LevelledPackage[];
  readonly unitPrices: UnitPrices | null;
}

/** What the price lacks, a sentence each with its remedy. What is missing is never counted as costing nothing. */
export function bidLacks(of: Lacking): readonly string[] {
  return [
    ...lackingPrices(of.bid.materials === null ? of.bought.priced : []),
    ...lackingSpares(of.bought.spares),
    ...lackingOther(of),
    ...lackingExtras(of.job),
    ...lackingHours(of),
    ...lackingQuotes(of),
    ...lackingSums(of.bid),
    ...lackingAlternates(of),
    ...lackingUnits(of.unitPrices),
  ];
}

function lackingPrices(materials: readonly PricedLine[]): string[] {
  return materials
    .filter(({ price }) => price === null)
    .map(({ type, item, detail, quantity }) => {
      const what = detail === null ? item : `${item} ${detail}`;
      return `No price for ${quantity} × ${what} of ${type}: enter it in the type's prices, or a quoted sum for all material.`;
    });
}

function lackingSpares(spares: readonly PricedThing[]): string[] {
  const unpriced = spares.filter(({ price }) => price === null);
  if (unpriced.length === 0) return [];
  const named = unpriced.map(({ item, detail, quantity }) => [quantity, '×', item, detail].filter(Boolean).join(' '));
  return [
    `No price for spares by the rules for ordering: ${named.join(', ')}. Enter prices in the type, or one sum for all spares (0 where the material holds them).`,
  ];
}

const BY_OTHERS = ['fire-seal', 'label', 'slot-closure'] as const;

/** What no type has a price for belongs to the quoted material or to the other cost: with neither it is nowhere. */
function lackingOther({ bid, takeoff }: Lacking): string[] {
  if (bid.materials !== null || bid.other !== null) return [];
  const chosen = bid.quotes.filter((quote) => quote.chosen);
  const isHeld = (item: (typeof BY_OTHERS)[number]) =>
    bid.ownerFurnished.includes(item) ||
    chosen.some((quote) => holds(quote, item) || leaves(quote, item)) ||
    (item === 'fire-seal' && bid.subcontracts.some(({ work }) => work === 'fire-sealing'));
  const items = BY_OTHERS.filter((item) => !isHeld(item) && takeoff.some((counted) => counted.item === item));
  if (items.length === 0) return [];
  return [`No price for ${items.join(', ')}: enter their cost as other direct cost (0 where others bring them).`];
}

function lackingExtras(job: Job): string[] {
  return job.extras
    .filter(({ price, hours }) => price === null && hours === null)
    .map(({ item }) => `The hand-made line "${item}" has neither a price nor hours: enter one, or take the line out.`);
}

function lackingHours({ layouts, labour }: Lacking): string[] {
  const unsound = layouts.filter(({ ok }) => !ok).map(({ run }) => run);
  const named = `${unsound.slice(0, 5).join(', ')}${unsound.length > 5 ? ` and ${unsound.length - 5} more` : ''}`;
  return [
    ...(labour === null ? ['No labour book: the price holds no labour. Enter one.'] : []),
    ...(labour !== null && labour.costPerProductiveHour === null
      ? ['The labour book has no crew that works: the price holds no labour. Enter the crew and its rates.']
      : []),
    ...(labour?.byActivity ?? [])
      .filter(({ activity, quantity, hours }) => activity !== 'extra' && quantity > 0 && hours === 0)
      .map(
        ({ activity, quantity }) =>
          `The labour book gives 0 h for ${activity}, and ${Number(quantity.toFixed(2))} are counted: the price holds no labour for it. Enter its hours, or take the activity out of the book where others do it.`,
      ),
    ...(unsound.length > 0
      ? [`Not in the price, because no sections can be laid yet: ${named}. Mend those runs first.`]
      : []),
  ];
}

function lackingQuotes({ bid, bought, packages }: Lacking): string[] {
  const unchosen = packages
    .filter(({ quotes }) => !quotes.some(({ quote }) => quote.chosen))
    .map(({ name }) => `No quote of "${name}" is chosen, so none is in the price: choose one, or take them out.`);
  return [...unchosen, ...bid.quotes.filter(({ chosen }) => chosen).flatMap((quote) => lackingIn(quote, bid, bought))];
}

function lackingIn(quote: Quote, bid: Bid, bought: Bought): string[] {
  const named = `The chosen quote ${quote.id} of ${quote.supplier}`;
  const unplugged = quote.lines.filter((line) => isBareLack(line) && !isElsewhere(line, quote, bid, bought));
  return [
    ...unplugged.map(
      (line) =>
        `${named} lacks ${quoteLineWord(line)}, and nothing stands in for it: enter a plug amount, or take the line out where something else of the bid holds it.`,
    ),
    ...silentParts(quote, bid).map(
      (part) =>
        `${named} is for a part of the joint kit and says nothing of ${itemWord(part)}, and the kit has one price: enter them as included, as lacking with a plug amount, or as the kit.`,
    ),
    ...(quote.lines.some(({ state }) => state === 'priced')
      ? []
      : [`${named} has no amount: enter what it asks, or choose another.`]),
    ...(quote.freight === 'out' && quote.freightAmount === null && bid.freight === null
      ? [`${named} leaves the freight out, and none is entered: enter the freight of the quote or of the bid.`]
      : []),
    ...(isStale(quote, bid)
      ? [
          `${named} was valid until ${quote.validUntil}, and the bid is of ${bid.date}: have it confirmed and enter the new date, or choose another.`,
        ]
      : []),
  ];
}

/** Parts of a joint kit that this quote is silent of and no other chosen one offers. */
function silentParts(quote: Quote, bid: Bid): readonly QuotedItem[] {
  if (quote.goesTo !== 'materials') return [];
  const others = bid.quotes.filter((other) => other.chosen && other.id !== quote.id);
  return silentKitParts(quote).filter(
    (part) => !others.some(({ lines }) => lines.some((line) => line.item === part && line.state !== 'lacks')),
  );
}

/** What a quote lacks may stay at our own prices – where one is missing, that is told by itself – or be in another chosen quote. */
function isElsewhere({ item }: QuoteLine, quote: Quote, bid: Bid, { priced }: Bought): boolean {
  const others = bid.quotes.filter((other) => other.chosen && other.id !== quote.id);
  const isOffered = others.some(({ lines }) => lines.some((line) => line.item === item && line.state !== 'lacks'));
  const isLeft = UNIT_ITEMS.some(
    (unit) => isFor(item, unit) && leaves(quote, unit) && priced.some(({ key }) => key === unit),
  );
  return isOffered || isLeft || bid.ownerFurnished.some((owners) => isFor(item, owners));
}

/** Dates as `2026-05-12` stand in the order of their text. */
export function isStale({ validUntil }: Quote, { date }: Bid): boolean {
  return validUntil !== null && date !== null && validUntil < date;
}

function lackingSums(bid: Bid): string[] {
  return [
    ...bid.timed
      .filter(({ rate }) => rate === null)
      .map(({ item, per }) => `No rate for "${item}": enter what one costs a ${per} (0 where others bring it).`),
    ...bid.subcontracts
      .filter(({ amount }) => amount === null)
      .map(({ item }) => `No amount for the subcontract "${item}": enter it (0 where others have it).`),
  ];
}

function lackingAlternates({ bid, labour }: Lacking): string[] {
  return bid.alternates.flatMap((entry) => {
    const what = alternateLacks(entry, labour?.costPerProductiveHour ?? null);
    if (what === null) return [];
    const remedy = what === 'any figure' ? 'enter its material, hours or other cost' : 'enter the crew and its rates';
    return [`The alternate "${entry.name}" has no price, because it lacks ${what}: ${remedy}.`];
  });
}

function lackingUnits(prices: UnitPrices | null): string[] {
  return (prices?.lines ?? [])
    .filter(({ extended }) => extended === null)
    .map(({ item, quantity }) =>
      quantity === 0
        ? `No unit price for ${itemWord(item)}: the takeoff has none of them. Offer a price of your own, or take the line out.`
        : `No unit price for ${itemWord(item)}: nobody has priced their material alone. Enter the material of one, or the price in the type.`,
    );
}
