import type { Finding } from '../../finding.ts';
import type { TakeoffLine } from '../../takeoff/result.ts';
import type { Quote, QuotedItem } from '../bid-entries.ts';
import { isStale } from '../bid-lacks.ts';
import { isFor } from '../held.ts';
import { itemWord } from '../item-words.ts';
import { bidFinding, type Judged } from './judged.ts';

/** Quotes that have run out or cannot be judged by their date, and what a chosen one says nothing about. */
export function judgeQuotes({ bid, takeoff: counted, packages }: Judged): readonly Finding[] {
  const takeoff = counted.filter(({ item }) => !bid.ownerFurnished.some((owners) => isFor(item, owners)));
  const stale = bid.quotes
    .filter((quote) => !quote.chosen && isStale(quote, bid))
    .map(({ id, supplier, validUntil }) =>
      bidFinding(
        'bid.quote-stale',
        'warning',
        `Quote ${id} of ${supplier} was valid until ${validUntil}, and the bid is of ${bid.date}: have it confirmed before it is chosen.`,
      ),
    );
  const undated =
    bid.date === null && bid.quotes.some(({ validUntil }) => validUntil !== null)
      ? [
          bidFinding(
            'bid.no-date',
            'warning',
            'The bid has no date, so no quote can be judged by how long it is valid: enter it.',
          ),
        ]
      : [];
  const freight = bid.quotes
    .filter((quote) => quote.chosen && quote.freight === null)
    .map(({ id, supplier }) =>
      bidFinding(
        'bid.freight',
        'warning',
        `Quote ${id} of ${supplier} does not say whether freight is in it: ask, and enter it.`,
      ),
    );
  return [...stale, ...undated, ...freight, ...silentQuotes({ takeoff, packages })];
}

function silentQuotes({ takeoff, packages }: Pick<Judged, 'takeoff' | 'packages'>): Finding[] {
  return packages.flatMap(({ quotes }) =>
    quotes
      .filter(({ quote }) => quote.chosen)
      .flatMap(({ quote, unsaid: rows }) => {
        const silent = [
          ...new Set([
            ...rows,
            ...silentOf(
              quote.lines.map(({ item }) => item),
              quote.goesTo,
              takeoff,
            ),
          ]),
        ];
        if (silent.length === 0) return [];
        return [
          bidFinding(
            'bid.quote-scope',
            'warning',
            `Quote ${quote.id} of ${quote.supplier} says nothing of ${silent.join(', ')}: ask, and enter it as included or lacking.${isLot(quote) ? TAKEN : ''}`,
          ),
        ];
      }),
  );
}

const TAKEN = ' Until then the lot is taken to hold it; what it lacks without a plug stays at our own prices.';

function isLot({ lines, goesTo }: Quote): boolean {
  return goesTo === 'materials' && lines.some(({ item }) => item === 'lot');
}

/** Parts that a lot leaves out most readily; hangers, tap-offs and cords are often another's to bring. */
const OFTEN_LEFT_OUT: readonly QuotedItem[] = [
  ...(['contact-set', 'clamp', 'end-feed', 'end-cap', 'slot-closure', 'support', 'tap', 'drop'] as const),
];

function silentOf(said: readonly QuotedItem[], goesTo: string, takeoff: readonly TakeoffLine[]): string[] {
  if (goesTo !== 'materials' || !said.includes('lot')) return [];
  const isCounted = (item: QuotedItem) => takeoff.some((line) => line.item === item && line.quantity > 0);
  return OFTEN_LEFT_OUT.filter((item) => !said.includes(item) && isCounted(item)).map(itemWord);
}
