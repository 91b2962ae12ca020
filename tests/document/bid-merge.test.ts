import { describe, expect, test } from 'vitest';
import { mergeBidForm } from '../../src/document/bid-form/merge-bid-form.ts';
import { readBidForm } from '../../src/document/bid-form/read-bid-form.ts';
import { BID_SECTIONS, type BidSection } from '../../src/document/bid-form/sections.ts';
import { writeBidForm } from '../../src/document/bid-form/write-bid-form.ts';
import type { BidDocument } from '../../src/document/job-document.ts';
import { fullDocument } from './full-document.ts';

const { project, bid: full = {} } = fullDocument();
const form = (bid: BidDocument, section: BidSection) => writeBidForm(bid, project, section);

/** Two people open the same bid; theirs is saved, and then mine with it. */
function merge(section: BidSection, was: BidDocument, mine: BidDocument | Record<string, string>, theirs: BidDocument) {
  const own = Object.values(mine).every((value) => typeof value === 'string')
    ? (mine as Record<string, string>)
    : form(mine, section);
  const merged = mergeBidForm(section, { was: form(was, section), mine: own, theirs: form(theirs, section) });
  return { ...readBidForm(merged.fields, project, section, theirs), conflicts: merged.conflicts };
}

test.each(Object.keys(BID_SECTIONS) as BidSection[])(
  'the form "%s": what only one of the two changed is taken from that one',
  (section) => {
    expect(merge(section, full, full, full)).toMatchObject({ bid: full, conflicts: [] });
    expect(form(merge(section, {}, full, {}).bid, section)).toEqual(form(full, section));
    expect(merge(section, {}, {}, full)).toMatchObject({ bid: full, conflicts: [] });
  },
);

describe('rows', () => {
  const [testing, sealing, crane] = ['Testing', 'Sealing', 'Crane'].map((item, i) => ({
    item,
    work: 'other' as const,
    amount: 100_000 * (i + 1),
  }));
  const of = (...subcontracts: NonNullable<BidDocument['subcontracts']>) => ({ subcontracts });

  test('that either added are kept, by whichever name', () => {
    const { bid, conflicts } = merge('cost', of(testing!), of(testing!, crane!), of(sealing!, testing!));
    expect(bid.subcontracts).toEqual([sealing, testing, crane]);
    expect(conflicts).toEqual([]);
  });

  test('that both added under one name are one row, and what they disagree on is told', () => {
    const { bid, conflicts } = merge(
      'cost',
      of(testing!),
      of(testing!, { ...crane!, amount: 5 }),
      of(testing!, crane!),
    );
    expect(bid.subcontracts).toEqual([testing, { ...crane!, amount: 5 }]);
    expect(conflicts).toEqual([{ field: 'subcontracts[1].amount', mine: '0.05', theirs: '3000.00' }]);
  });

  test('in which each changed another entry hold both, also where one of them changed the name', () => {
    const mine = { ...testing!, item: 'Testing agency' };
    const theirs = { ...testing!, amount: 7 };
    expect(merge('cost', of(testing!), of(mine), of(theirs))).toMatchObject({
      bid: of({ ...testing!, item: 'Testing agency', amount: 7 }),
      conflicts: [],
    });
  });

  test('that one took out are out, unless the other changed them: then it is told', () => {
    expect(merge('cost', of(testing!, crane!), of(testing!, crane!), of(crane!))).toMatchObject({
      bid: of(crane!),
      conflicts: [],
    });
    const gone = {
      ...form(of(testing!, crane!), 'cost'),
      ...{ 'subcontracts[0].item': '', 'subcontracts[0].amount': '' },
    };
    expect(merge('cost', of(testing!, crane!), gone, of(testing!, crane!))).toMatchObject({
      bid: of(crane!),
      conflicts: [],
    });
    const changed = { ...testing!, amount: 7 };
    expect(merge('cost', of(testing!), of(changed), of(crane!))).toMatchObject({
      bid: of(crane!, changed),
      conflicts: [{ field: 'subcontracts[1].item', mine: 'Testing', theirs: '' }],
    });
    expect(merge('cost', of(testing!, crane!), gone, of(changed, crane!))).toMatchObject({
      bid: of(crane!),
      conflicts: [{ field: 'subcontracts[0].item', mine: '', theirs: 'Testing' }],
    });
  });

  test('a choice that the record leaves open and the form shows is no change of one’s own', () => {
    const open = of({ item: 'Testing', amount: 5 });
    const shown = { ...form(open, 'cost'), 'subcontracts[0].work': 'other' };
    expect(merge('cost', open, shown, of({ item: 'Testing', work: 'testing', amount: 5 })).bid).toEqual(
      of({ item: 'Testing', work: 'testing', amount: 5 }),
    );
    const chosen = { ...shown, 'subcontracts[0].work': 'fire-sealing' };
    expect(merge('cost', open, chosen, of({ item: 'Testing', amount: 9 })).bid).toEqual(
      of({ item: 'Testing', work: 'fire-sealing', amount: 9 }),
    );
  });

  test('lines of a quote are merged within the quote', () => {
    const quote = full.quotes![0]!;
    const [first, ...others] = quote.lines;
    const added = { item: 'tests' as const, state: 'included' as const };
    const mine = { quotes: [{ ...quote, lines: [...quote.lines, added] }] };
    const theirs = { quotes: [{ ...quote, firm: false, lines: [{ ...first!, amount: 1_000 }, ...others] }] };
    const { bid, conflicts } = merge('quotes', { quotes: [quote] }, mine, theirs);
    expect(bid.quotes?.[0]?.lines).toEqual([{ ...first!, amount: 1_000 }, ...others, added]);
    expect(conflicts).toEqual([]);
  });
});

test('what says something only together is taken together: a percentage is never put to the other one’s kind', () => {
  const profit = (kind: 'markup' | 'margin', percent: number) => ({ profit: { kind, percent } });
  const { bid, conflicts } = merge('price', profit('markup', 6), profit('markup', 8), profit('margin', 6));
  expect(bid).toEqual(profit('markup', 8));
  expect(conflicts.map(({ field }) => field)).toEqual(['profit.kind', 'profit.percent']);
});

test('sentences that either added are kept, and those that one took out are out', () => {
  const was = { exclusions: ['Painting', 'Cutting'] };
  const { bid, conflicts } = merge(
    'offer',
    was,
    { exclusions: ['Painting', 'Cutting', 'Scaffold'] },
    { exclusions: ['Painting', 'Permits'] },
  );
  expect(bid.exclusions).toEqual(['Painting', 'Scaffold', 'Permits']);
  expect(conflicts).toEqual([]);
});
