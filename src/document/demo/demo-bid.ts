import type { BidDocument } from '../schema/bid.ts';

type Quotes = NonNullable<BidDocument['quotes']>;

/** The demo's bid, all invented, in cents. */
export function demoBid(): BidDocument {
  return {
    date: '2026-05-12',
    validUntil: '2026-07-11',
    estimateClass: 2,
    freight: 1_850_000,
    taxPercent: 7,
    quotes: demoQuotes(),
    timed: [
      { item: 'Scissor lift', goesTo: 'equipment', number: 4, time: 14, per: 'week', rate: 38_500, once: 60_000 },
      { item: 'Material hoist', goesTo: 'equipment', number: 1, time: 10, per: 'week', rate: 95_000, once: 120_000 },
    ],
    subcontracts: [{ item: 'Witness of the thermal scans', work: 'other', amount: 980_000 }],
    other: 3_150_000,
    supervision: 7_232_000,
    permit: 464_000,
    overheadPercent: 10,
    profit: { kind: 'margin', percent: 6 },
    contingencyP: 80,
    alternates: [
      { name: 'Tap-offs with meters, 240 of them', kind: 'add', materials: 5_400_000, hours: 36, note: 'Invented' },
      { name: 'No drop cords on floor 4', kind: 'deduct', materials: 4_900_000, hours: 72, note: 'Invented' },
    ],
    unitPrices: [{ item: 'tap' }, { item: 'drop' }, { item: 'support' }],
    inclusions: ['Busway with joints, hangers, rod and anchors', 'Tap-offs and drop cords', 'Tests and their papers'],
    exclusions: ['Feeder cable up to the end feeds', 'Painting and patching', 'Work above ceilings of others'],
    qualifications: ['Each floor is handed over free of other trades', 'Hoist and dock are free two mornings a week'],
    addenda: [{ number: '1', date: '2026-04-28', note: 'Feeds moved to the north wall; invented' }],
  };
}

/** The cheaper one lacks the slot closure: with a plug and its freight it is the dearer. */
function demoQuotes(): Quotes {
  return [
    {
      id: 'A',
      package: 'Labels and slot closure',
      supplier: 'First invented supplier',
      date: '2026-04-21',
      validUntil: '2026-06-30',
      freight: 'in',
      tax: 'in',
      taxAmount: 98_000,
      firm: true,
      chosen: true,
      lines: [
        { item: 'label', state: 'priced', amount: 520_000 },
        { item: 'slot-closure', state: 'priced', amount: 980_000 },
        { item: 'drawings', state: 'included' },
      ],
    },
    {
      id: 'B',
      package: 'Labels and slot closure',
      supplier: 'Second invented supplier',
      date: '2026-03-30',
      validUntil: '2026-04-30',
      freight: 'out',
      freightAmount: 45_000,
      tax: 'out',
      lines: [
        { item: 'label', state: 'priced', amount: 455_000 },
        { item: 'slot-closure', state: 'lacks', amount: 1_010_000 },
        { item: 'drawings', state: 'included' },
      ],
    },
  ];
}
