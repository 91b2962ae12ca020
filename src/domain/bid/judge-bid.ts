import type { Finding } from '../finding.ts';
import type { Labour } from '../labour/result.ts';
import type { Bid } from '../model.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import { type QuotedItem, type Taxable, UNIT_ITEMS } from './bid-entries.ts';
import { isStale } from './bid-lacks.ts';
import { holds } from './bought.ts';
import { itemWord } from './item-words.ts';
import type { LevelledPackage } from './level-quotes.ts';
import type { BidLine, UnitPrices } from './result.ts';

interface Judged {
  readonly bid: Bid;
  readonly lines: readonly BidLine[];
  readonly labour: Labour | null;
  readonly takeoff: readonly TakeoffLine[];
  readonly packages: readonly LevelledPackage[];
  readonly unitPrices: UnitPrices | null;
}

/**
 * What in a bid is worth a second look though it can be reckoned: taxes on a base that is unusual or empty, freight, tests
 * or seals in it twice, quotes that cannot be judged or do not say what they hold, unit prices below cost.
 */
export function judgeBid(of: Judged): readonly Finding[] {
  return [...judgeTaxes(of), ...judgeQuotes(of), ...judgeTwice(of), ...judgeUnits(of)];
}

function finding(rule: string, severity: Finding['severity'], message: string, source = 'entries of the bid'): Finding {
  return { rule, severity, run: null, at: null, message, source };
}

const UNUSUAL: readonly Taxable[] = ['labour', 'supervision', 'permit'];

function judgeTaxes({ bid, lines }: Judged): Finding[] {
  const has = (line: Taxable) => lines.some((own) => own.line === line && own.amount !== 0);
  const taxes = bid.taxes.flatMap(({ name, percent, on }) => {
    const empty = on.filter((line) => !has(line));
    const unusual = on.filter((line) => UNUSUAL.includes(line) && has(line));
    const base = (message: string) => finding('bid.tax-base', 'warning', message, 'local tax law, which decides');
    return [
      ...unusual.map((line) =>
        base(
          `"${name}" takes ${percent} % of ${line}, which a sales tax seldom does: take it off the base unless the local law says so.`,
        ),
      ),
      ...(empty.length === on.length
        ? [
            base(
              `"${name}" is on ${empty.join(', ')}, of which the bid has nothing: it taxes nothing. Choose its base anew.`,
            ),
          ]
        : []),
    ];
  });
  const isTaxed = (line: 'materials' | 'subcontracts') =>
    (line === 'materials' && bid.taxPercent !== null) || bid.taxes.some(({ on }) => on.includes(line));
  const chosen = bid.quotes.filter((quote) => quote.chosen);
  const inside = chosen
    .filter(({ tax, goesTo }) => tax === 'in' && isTaxed(goesTo))
    .map(({ id, supplier }) =>
      finding(
        'bid.tax-base',
        'note',
        `Quote ${id} of ${supplier} has the tax in it, so its amounts are left out of the base: check that it is the same tax.`,
      ),
    );
  const unsaid = chosen
    .filter(({ tax }) => tax === null)
    .map(({ id, supplier }) =>
      finding(
        'bid.tax-base',
        'warning',
        `Quote ${id} of ${supplier} does not say whether tax is in it, and is taxed as if it were not: ask.`,
      ),
    );
  return [...taxes, ...inside, ...unsaid];
}

function judgeQuotes({ bid, takeoff, packages }: Judged): Finding[] {
  const stale = bid.quotes
    .filter((quote) => !quote.chosen && isStale(quote, bid))
    .map(({ id, supplier, validUntil }) =>
      finding(
        'bid.quote-stale',
        'warning',
        `Quote ${id} of ${supplier} was valid until ${validUntil}, and the bid is of ${bid.date}: have it confirmed before it is chosen.`,
      ),
    );
  const undated =
    bid.date === null && bid.quotes.some(({ validUntil }) => validUntil !== null)
      ? [
          finding(
            'bid.no-date',
            'warning',
            'The bid has no date, so no quote can be judged by how long it is valid: enter it.',
          ),
        ]
      : [];
  const freight = bid.quotes
    .filter((quote) => quote.chosen && quote.freight === null)
    .map(({ id, supplier }) =>
      finding(
        'bid.freight',
        'warning',
        `Quote ${id} of ${supplier} does not say whether freight is in it: ask, and enter it.`,
      ),
    );
  const unsaid = packages.flatMap(({ quotes }) =>
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
          finding(
            'bid.quote-scope',
            'warning',
            `Quote ${quote.id} of ${quote.supplier} says nothing of ${silent.join(', ')}: ask, and enter it as included or lacking.`,
          ),
        ];
      }),
  );
  return [...stale, ...undated, ...freight, ...unsaid];
}

/** Parts that a lot leaves out most readily. */
const OFTEN_LEFT_OUT: readonly QuotedItem[] = ['contact-set', 'clamp', 'end-cap', 'slot-closure'];

function silentOf(said: readonly QuotedItem[], goesTo: string, takeoff: readonly TakeoffLine[]): string[] {
  if (goesTo !== 'materials' || !said.includes('lot')) return [];
  const isCounted = (item: QuotedItem) => takeoff.some((line) => line.item === item && line.quantity > 0);
  return OFTEN_LEFT_OUT.filter((item) => !said.includes(item) && isCounted(item)).map(itemWord);
}

function judgeTwice({ bid, labour }: Judged): Finding[] {
  const chosen = bid.quotes.filter((quote) => quote.chosen);
  const hours = (isIt: (activity: string) => boolean) =>
    (labour?.byActivity ?? []).reduce((sum, line) => sum + (isIt(line.activity) ? line.hours : 0), 0);
  const tests = hours((activity) => activity.startsWith('test-'));
  const seals = hours((activity) => activity === 'fire-seal');
  const does = (work: 'testing' | 'fire-sealing', item: QuotedItem) =>
    bid.subcontracts.some((entry) => entry.work === work) ||
    chosen.some(({ goesTo, lines }) => goesTo === 'subcontracts' && lines.some((line) => line.item === item));
  const twice = (rule: string, message: string) => finding(rule, 'warning', message);
  return [
    ...(bid.freight === null
      ? []
      : chosen
          .filter(({ freight }) => freight === 'in')
          .map(({ id, supplier }) =>
            twice(
              'bid.freight',
              `Quote ${id} of ${supplier} has the freight in it, and the bid has freight of its own: make sure that it is for other goods.`,
            ),
          )),
    ...(tests > 0 && does('testing', 'tests')
      ? [
          twice(
            'bid.tests-twice',
            `The labour holds ${tests.toFixed(1)} h of tests, and a subcontract is for tests as well: take out of the labour book what the agency does.`,
          ),
        ]
      : []),
    ...(seals > 0 && does('fire-sealing', 'fire-seal')
      ? [
          twice(
            'bid.seals-twice',
            `The labour holds ${seals.toFixed(1)} h of fire seals, and a subcontract is for them as well: take one of the two out.`,
          ),
        ]
      : []),
    ...UNIT_ITEMS.flatMap((item) => {
      const by = chosen.filter(
        (quote) =>
          quote.goesTo === 'materials' &&
          holds(quote, item) &&
          quote.lines.some((line) => line.item === item && line.state !== 'lacks'),
      );
      if (by.length < 2) return [];
      return [
        twice(
          'bid.quoted-twice',
          `Quotes ${by.map(({ id }) => id).join(' and ')} are both chosen and both hold ${itemWord(item)}: take the line out of one.`,
        ),
      ];
    }),
  ];
}

function judgeUnits({ unitPrices }: Judged): Finding[] {
  return (unitPrices?.lines ?? []).flatMap(({ item, offered, worked, cost }) => {
    if (offered === null || cost === null || worked === null) return [];
    if (offered < Math.round(cost))
      return [
        finding(
          'bid.unit-price',
          'warning',
          `The unit price offered for ${itemWord(item)} is below their own cost before overhead: raise it, or work out why.`,
        ),
      ];
    return offered < worked
      ? [
          finding(
            'bid.unit-price',
            'note',
            `The unit price offered for ${itemWord(item)} is below what the build-up gives: each one more earns less than the bid does.`,
          ),
        ]
      : [];
  });
}
