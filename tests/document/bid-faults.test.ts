import { describe, expect, test } from 'vitest';
import { parseJobDocument } from '../../src/document/job-document.ts';
import { changed } from './change.ts';
import { fullDocument } from './full-document.ts';

function faultsOf(...changes: readonly (readonly [path: string, value: unknown])[]) {
  const document = changes.reduce<unknown>((one, [path, value]) => changed(one, path, value), fullDocument());
  const parsed = parseJobDocument(document);
  return parsed.ok ? [] : parsed.faults;
}

const quote = fullDocument().bid?.quotes?.[0];

test('the bid of every key is sound, and consumables may be a sum in place of the percentage', () => {
  expect(faultsOf()).toEqual([]);
  expect(faultsOf(['bid.consumablesPercent', undefined], ['bid.consumables', 5])).toEqual([]);
});

describe('a bid that cannot be reckoned is refused with what to do', () => {
  test.each([
    [
      'a margin of 100 %',
      [['bid.profit', { kind: 'margin', percent: 100 }]],
      'bid.profit.percent',
      'A margin of 100 % cannot be reached at any price.',
      'Write "markup" if it is on cost, or a margin under 100 %.',
    ],
    [
      'a bond that leaves nothing',
      [
        ['bid.bond', { percent: 50, of: 'price' }],
        ['bid.profit', { kind: 'margin', percent: 50 }],
      ],
      'bid.bond.percent',
      'A bond of 50 % of the price and the profit together leave nothing for the cost.',
      'A premium is a few per cent: 1.2 % is 12 for each 1,000 of the price.',
    ],
    [
      'a step of a bond that leaves nothing',
      [
        ['bid.bond', { percent: 1, of: 'price', scale: [{ amount: 10, percent: 60 }] }],
        ['bid.profit', { kind: 'margin', percent: 50 }],
      ],
      'bid.bond.scale[0].percent',
      'A bond of 60 % of the price and the profit together leave nothing for the cost.',
      'A premium is a few per cent: 1.2 % is 12 for each 1,000 of the price.',
    ],
    [
      'a scale without a rate for what is above it',
      [['bid.bond', { of: 'cost', scale: [{ amount: 10_000_000, percent: 2.5 }] }]],
      'bid.bond.percent',
      'percent is missing.',
      'Give percent: the premium, %; with a scale that of what lies above its steps.',
    ],
    [
      'a quote in another currency',
      [['bid.quotes[0].currency', 'EUR']],
      'bid.quotes[0].currency',
      'Quote "A" of An invented sealer is in EUR and the job in USD: amounts of two currencies cannot be added.',
      'Enter its amounts in USD at a rate that you have agreed, put the rate in its note, and leave its currency out.',
    ],
    [
      'a quote that ran out before it was made',
      [['bid.quotes[0].validUntil', '2026-04-19']],
      'bid.quotes[0].validUntil',
      'Quote "A" of An invented sealer is of 2026-04-20 and valid until 2026-04-19, which is before it.',
      'Enter the last day that it holds as it stands in the quote.',
    ],
    [
      'two chosen quotes of a package',
      [['bid.quotes', [quote, { ...quote, id: 'B', supplier: 'Another' }]]],
      'bid.quotes[1].chosen',
      'Quote "A" of An invented sealer and Quote "B" of Another are both chosen for "Fire sealing", so it would be paid for twice.',
      'Choose one of them, or give the other a package of its own.',
    ],
    [
      'two quotes of one name',
      [['bid.quotes', [quote, { ...quote, chosen: false }]]],
      'bid.quotes[1].id',
      'Two quotes are called "A".',
      'Give each a name of its own.',
    ],
    [
      'a sum for all material beside a chosen quote for it',
      [['bid.quotes[0].goesTo', 'materials']],
      'bid.materials',
      'A sum for all material is entered, and Quote "A" of An invented sealer is chosen for material too.',
      'Take the sum out, or let no quote for material be chosen.',
    ],
    [
      'a line that is priced without an amount',
      [['bid.quotes[0].lines[0].amount', undefined]],
      'bid.quotes[0].lines[0].amount',
      'Line 1 of Quote "A" of An invented sealer is priced and has no amount.',
      'Enter it, or write that the line is included or lacks.',
    ],
    [
      'a line that is included and has an amount',
      [['bid.quotes[0].lines[2].amount', 5]],
      'bid.quotes[0].lines[2].amount',
      'Line 3 of Quote "A" of An invented sealer is included in another and has an amount of its own.',
      'Take the amount out, or write that the line is priced.',
    ],
    [
      'material that is taxed twice',
      [['bid.taxes[0].on', ['materials']]],
      'bid.taxes[0].on',
      'Material is taxed twice: by the sales tax of 7 % and by "Hire tax".',
      'Take material off this base, or leave the sales tax on material out and enter both taxes by category.',
    ],
    [
      'one tax under two spellings',
      [
        [
          'bid.taxes',
          [
            { name: 'State', percent: 6, on: ['freight'] },
            { name: ' state', percent: 6, on: ['freight'] },
          ],
        ],
      ],
      'bid.taxes[1].name',
      '" state" stands here twice.',
      'Keep one, or call the other something else.',
    ],
    [
      'consumables entered twice',
      [['bid.consumables', 5]],
      'bid.consumables',
      'Consumables are entered as a sum and as a percentage of labour.',
      'Keep one of the two.',
    ],
    [
      'a bid that runs out before its own day',
      [['bid.validUntil', '2026-05-11']],
      'bid.validUntil',
      'The bid is of 2026-05-12 and holds until 2026-05-11, which is before it.',
      'Enter the last day that it holds.',
    ],
    [
      'a day that is not in the calendar',
      [['bid.date', '2026-02-30']],
      'bid.date',
      'date is "2026-02-30", which is no day of the calendar.',
      'Write year, month and day like 2026-05-12.',
    ],
  ] as const)('%s', (_, changes, path, message, remedy) => {
    expect(faultsOf(...changes)).toEqual([{ path, message, remedy }]);
  });

  test('a profit that is neither markup nor margin (bad entry 38: markup 10 when margin was meant) asks which', () => {
    expect(faultsOf(['bid.profit', { percent: 10 }])).toEqual([
      {
        path: 'bid.profit',
        message: '10 % as a markup is 9.1 % of the price; 10 % as a margin is 11.1 % on cost.',
        remedy: 'Write "markup" or "margin", whichever is meant.',
      },
      { path: 'bid.profit.kind', message: 'kind is missing.', remedy: 'Write "markup" or "margin".' },
    ]);
  });

  test.each([
    ['bid.wastePercent', -1],
    ['bid.escalationPercent', -0.5],
    ['bid.bond.percent', -1],
    ['bid.bond.scale[0].amount', 0],
    ['bid.taxes[0].percent', -7],
    ['bid.profit.percent', -6],
    ['bid.overheadPercent', -10],
    ['bid.consumablesPercent', -2],
    ['bid.timed[0].number', 0],
    ['bid.timed[0].rate', -40_000],
    ['bid.freight', -1],
    ['bid.alternates[0].hours', -3],
    ['bid.quotes[0].lines[0].amount', -5],
  ])('%s of %d is below what makes sense, and the answer says what is taken', (path, value) => {
    const [fault, ...others] = faultsOf([path, value]);
    expect(others).toEqual([]);
    expect(fault?.path).toBe(path);
    expect(fault?.message).toContain(String(value).slice(0, 3));
    expect(fault?.remedy).not.toBe('');
  });

  test('a tax on overhead, a kind of work that is none and an unknown unit are told with what can stand there', () => {
    expect(faultsOf(['bid.taxes[0].on', ['overhead']])[0]?.message).toContain('it can be "materials", "freight"');
    expect(faultsOf(['bid.timed[0].per', 'hour'])[0]?.message).toContain('it can be "day", "week" or "month"');
    expect(faultsOf(['bid.unitPrices[0].item', 'bolt'])[0]?.message).toContain('it can be "section"');
    expect(faultsOf(['bid.estimateClass', 6])[0]).toMatchObject({ path: 'bid.estimateClass' });
  });

  test('labour units: below nought, and low above high', () => {
    expect(faultsOf(['labourBook.activities.section.low', -0.1])[0]).toMatchObject({
      path: 'labourBook.activities.section.low',
      message: expect.stringContaining('-0.1'),
      remedy: expect.stringMatching(/./),
    });
    expect(faultsOf(['labourBook.activities.section.low', 99])[0]).toMatchObject({
      path: 'labourBook.activities.section.low',
      message: expect.stringContaining('the low hours, 99, are more than the likely ones'),
      remedy: 'Let low be at most likely.',
    });
  });
});
