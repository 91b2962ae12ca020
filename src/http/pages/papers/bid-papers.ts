import { activityWord } from '../../../../views/words/activities.ts';
import { ESTIMATE_CLASSES } from '../../../domain/bid/estimate-class.ts';
import type { BidResult } from '../../../domain/bid/result.ts';
import { formatHours } from '../../../domain/units/quantities.ts';
import type { PaperPart, PaperSheet } from '../../../paper/estimate/paper.ts';
import {
  alternatesTable,
  checksPart,
  dateFacts,
  lackingPart,
  linesTable,
  type Money,
  materialTable,
  priceFacts,
  quotesTable,
  termParts,
  timedTable,
  unitPricesTable,
} from './bid-parts.ts';

export interface BidPaperInput {
  readonly bid: BidResult;
  readonly money: Money;
  /** What is said of an invented labour book; empty for anybody's own. */
  readonly invented: string;
  readonly client: string | undefined;
  readonly site: string | undefined;
  readonly levels: readonly string[];
  /** Likely hours by activity; the last figure of a row belongs to no level. */
  readonly hours: readonly {
    readonly activity: Parameters<typeof activityWord>[0];
    readonly hours: readonly number[];
  }[];
}

const OWN = 'for the office alone';

/** One sheet for whoever signs: the lines without their working, what is missing, what goes with it. */
export function summarySheets({ bid, money, invented }: BidPaperInput): PaperSheet[] {
  return [
    {
      title: 'Bid summary',
      beside: OWN,
      parts: [
        priceFacts(bid, money),
        ...said(invented),
        ...lackingPart(bid),
        linesTable(bid, money, 'without'),
        ...alternatesTable(bid, money, 'without'),
        ...classPart(bid),
        ...termParts(bid, 'stated'),
        { kind: 'signatures', under: ['Estimated by, date', 'Checked by, date', 'Released to the client by, date'] },
      ],
    },
  ];
}

/** Everything that made the price, for the office. */
export function buildUpSheets(input: BidPaperInput): PaperSheet[] {
  const { bid, money, invented } = input;
  const sheet = (title: string, parts: readonly PaperPart[]): PaperSheet[] =>
    parts.length === 0 ? [] : [{ title, beside: OWN, parts }];
  return [
    ...sheet('Build-up of the bid', [
      priceFacts(bid, money),
      ...said(invented),
      ...lackingPart(bid),
      ...checksPart(bid),
      linesTable(bid, money, 'with'),
      ...classPart(bid),
    ]),
    ...sheet(
      'Quotes levelled',
      bid.packages.map((one) => quotesTable(one, money)),
    ),
    ...sheet('Lifts, tools and supervision', timedTable(bid, money)),
    ...sheet('Alternates and unit prices', [
      ...alternatesTable(bid, money, 'with'),
      ...unitPricesTable(bid, money, 'with'),
    ]),
    ...sheet('Material', materialTable(bid, money)),
    ...sheet('Labour hours', hoursTable(input)),
    ...sheet('What goes with the price', termParts(bid, 'all')),
  ];
}

/** What the client sees: the price and what it is for, without a single cost. */
export function clientSheets({ bid, money, invented, client, site }: BidPaperInput): PaperSheet[] {
  const isWhole = bid.incomplete.length === 0;
  return [
    {
      title: isWhole ? 'Bid' : 'Bid: a draft, the price is not complete',
      beside: client === undefined ? '' : `to ${client}`,
      parts: [
        {
          kind: 'facts',
          across: 4,
          facts: [
            ['Price', isWhole ? money(bid.price) : `${money(bid.price)}, not complete: do not sign`],
            ...dateFacts(bid),
            ...(site === undefined ? [] : [['Place of the work', site] as const]),
          ],
        },
        ...said(invented),
        ...alternatesTable(bid, money, 'without'),
        ...unitPricesTable(bid, money, 'without'),
        ...termParts(bid, 'all'),
        {
          kind: 'text',
          text: 'The work is done to the sheets of the busway’s maker, the local codes and the judgement of licensed people; nothing in this bid permits anybody to energise anything.',
        },
        {
          kind: 'signatures',
          under: ['For the bidder: name, signature, date', 'For the client: name, signature, date'],
        },
      ],
    },
  ];
}

function said(invented: string): PaperPart[] {
  return invented === '' ? [] : [{ kind: 'text', text: invented }];
}

function classPart({ terms }: BidResult): PaperPart[] {
  if (terms.estimateClass === null) return [];
  const { maturity, use, low, high } = ESTIMATE_CLASSES[terms.estimateClass];
  return [
    {
      kind: 'text',
      heading: `Estimate of class ${terms.estimateClass}`,
      text: `Usual for ${use}, with ${maturity} of the design done. Such estimates usually end between ${low[0]} to ${low[1]} % and +${high[0]} to +${high[1]} % of their figure (AACE International 56R-08, for buildings; the values stand here from memory and are to be checked with the practice itself).`,
    },
  ];
}

/** More levels than this make a table whose columns are too narrow to print. */
const SIDE_BY_SIDE = 7;

function hoursTable({ hours, levels }: BidPaperInput): PaperPart[] {
  if (hours.length === 0) return [];
  const totals = hours[0]!.hours.map((_, column) => sum(hours.map((row) => row.hours[column] ?? 0)));
  if (levels.length > SIDE_BY_SIDE) return oneByOne(hours, [...levels, 'No level'], totals);
  const cells = (figures: readonly number[]) => [...figures, sum(figures)].map((figure) => formatHours(figure));
  const columns = [...levels, 'No level', 'Job'].map((title) => numbers(title, 72 / (levels.length + 2)));
  const rows = hours.map((row) => [activityWord(row.activity), ...cells(row.hours)]);
  return [
    {
      kind: 'table',
      table: {
        title: 'Likely labour hours by activity and level',
        columns: [{ title: 'Activity', share: 28 }, ...columns],
        rows: [...rows, ['All activities', ...cells(totals)]],
        none: '',
      },
    },
  ];
}

/** By activity, then by level: the workbook has both at once. */
function oneByOne(hours: BidPaperInput['hours'], places: readonly string[], totals: readonly number[]): PaperPart[] {
  const table = (of: string, rows: readonly (readonly [string, number])[], all: string): PaperPart => ({
    kind: 'table',
    table: {
      title: `Likely labour hours by ${of.toLowerCase()}`,
      columns: [{ title: of, share: 70 }, numbers('Job', 30)],
      rows: [...rows, [all, sum(totals)] as const].map(([name, figure]) => [name, formatHours(figure)]),
      none: '',
    },
  });
  const byActivity = hours.map((row) => [activityWord(row.activity), sum(row.hours)] as const);
  const byLevel = places.map((place, column) => [place, totals[column] ?? 0] as const);
  return [
    table('Activity', byActivity, 'All activities'),
    table(
      'Level',
      byLevel.filter(([, figure]) => figure > 0),
      'All levels',
    ),
    { kind: 'text', text: 'Each activity on each level stands in the workbook of the build-up, sheet Hours.' },
  ];
}

function numbers(title: string, share: number) {
  return { title, share, align: 'right' as const };
}

function sum(figures: readonly number[]): number {
  return figures.reduce((total, figure) => total + figure, 0);
}
