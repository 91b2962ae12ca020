import type { Finding } from '../../finding.ts';
import { type Quote, type QuotedItem, UNIT_ITEMS, type UnitItem } from '../bid-entries.ts';
import { holds } from '../held.ts';
import { itemWord } from '../item-words.ts';
import { bidFinding, type Judged } from './judged.ts';

/** What may be in the price twice: waste, freight, tests, fire seals, and things that two chosen quotes both hold. */
export function judgeTwice(of: Judged): readonly Finding[] {
  return [...wasteTwice(of), ...freightTwice(of), ...workTwice(of), ...quotedTwice(of), ...ownersToo(of)];
}

function twice(rule: string, message: string): Finding {
  return bidFinding(rule, 'warning', message);
}

function wasteTwice({ bid, spares }: Judged): Finding[] {
  const pieces = (spares ?? []).filter(({ waste }) => waste > 0).length;
  if (bid.wastePercent === null || pieces === 0) return [];
  return [
    bidFinding(
      'bid.waste-twice',
      'note',
      `The bid has ${bid.wastePercent} % waste on material, and the rules for ordering add pieces for waste to ${pieces} ${pieces === 1 ? 'thing' : 'things'}: the percentage is priced, and those pieces are ordered without being priced again.`,
    ),
  ];
}

function freightTwice({ bid }: Judged): Finding[] {
  if (bid.freight === null) return [];
  return bid.quotes
    .filter(({ chosen, freight }) => chosen && freight === 'in')
    .map(({ id, supplier }) =>
      twice(
        'bid.freight',
        `Quote ${id} of ${supplier} has the freight in it, and the bid has freight of its own: make sure that it is for other goods.`,
      ),
    );
}

function workTwice({ bid, labour }: Judged): Finding[] {
  const hours = (isIt: (activity: string) => boolean) =>
    (labour?.byActivity ?? []).reduce((sum, line) => sum + (isIt(line.activity) ? line.hours : 0), 0);
  const tests = hours((activity) => activity.startsWith('test-'));
  const seals = hours((activity) => activity === 'fire-seal');
  const does = (work: 'testing' | 'fire-sealing', item: QuotedItem) =>
    bid.subcontracts.some((entry) => entry.work === work) ||
    bid.quotes.some((quote) => quote.chosen && quote.goesTo === 'subcontracts' && offers(quote, item));
  const testsTwice = `The labour holds ${tests.toFixed(1)} h of tests, and a subcontract is for tests as well: take out of the labour book what the agency does.`;
  const sealsTwice = `The labour holds ${seals.toFixed(1)} h of fire seals, and a subcontract is for them as well: take one of the two out.`;
  return [
    ...(tests > 0 && does('testing', 'tests') ? [twice('bid.tests-twice', testsTwice)] : []),
    ...(seals > 0 && does('fire-sealing', 'fire-seal') ? [twice('bid.seals-twice', sealsTwice)] : []),
  ];
}

function offers({ lines }: Quote, item: QuotedItem): boolean {
  return lines.some((line) => line.item === item && line.state !== 'lacks');
}

/** Of two that are for the lot, or one for the lot and one for a part of it, everything in common is named once. */
function quotedTwice({ bid, takeoff }: Judged): Finding[] {
  const chosen = bid.quotes.filter((quote) => quote.chosen && quote.goesTo === 'materials');
  const pairs = new Map<string, UnitItem[]>();
  for (const item of UNIT_ITEMS) {
    const by = chosen.filter((quote) => holds(quote, item) && !isLacking(quote, item));
    const isNamed = by.some((quote) => offers(quote, item)) || takeoff.some((line) => line.item === item);
    if (by.length < 2 || !isNamed) continue;
    const names = by.map(({ id }) => id).join(' and ');
    pairs.set(names, [...(pairs.get(names) ?? []), item]);
  }
  return [...pairs].map(([names, items]) =>
    twice(
      'bid.quoted-twice',
      `Quotes ${names} are both chosen and both hold ${items.map(itemWord).join(', ')}: take the line out of one.`,
    ),
  );
}

function isLacking({ lines }: Quote, item: QuotedItem): boolean {
  return lines.some((line) => line.item === item && line.state === 'lacks');
}

/** What the owner furnishes is not bought, so a chosen quote or a sum that holds it would charge the owner for it. */
function ownersToo({ bid }: Judged): Finding[] {
  if (bid.ownerFurnished.length === 0) return [];
  const words = (items: readonly UnitItem[]) => items.map(itemWord).join(', ');
  const quoted = bid.quotes
    .filter(({ chosen, goesTo }) => chosen && goesTo === 'materials')
    .flatMap((quote) => {
      const items = bid.ownerFurnished.filter((item) => holds(quote, item));
      if (items.length === 0) return [];
      const message = `The owner furnishes ${words(items)}, and the chosen quote ${quote.id} of ${quote.supplier} holds them: have them taken out of it, and enter them as lacking.`;
      return [twice('bid.owner-furnished', message)];
    });
  if (bid.materials === null) return quoted;
  const sum = `The owner furnishes ${words(bid.ownerFurnished)}, and a sum for all material is entered: make sure that it holds none of them, or they are bought and taxed.`;
  return [...quoted, bidFinding('bid.owner-furnished', 'note', sum)];
}
