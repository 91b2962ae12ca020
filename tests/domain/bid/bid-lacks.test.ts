import { describe, expect, test } from 'vitest';
import type { Bid } from '../../../src/domain/model.ts';
import { aQuote, bidOf, quickT2 } from '../../support/bid.ts';

const job = quickT2();
const lacks = (changes: Partial<Bid>) => bidOf({ materials: 100_000, other: 0, ...changes }, job).incomplete;
const checks = (changes: Partial<Bid>) => bidOf({ other: 0, ...changes }, job).checks;

describe('what the price lacks is named with what to do, and never counted as nought without a word', () => {
  test('nothing, where everything is there', () => {
    expect(lacks({})).toEqual([]);
  });

  test('a chosen quote older than its validity', () => {
    const old = aQuote({ id: 'A', chosen: true, goesTo: 'subcontracts', validUntil: '2026-05-11' }, { amount: 5 });
    expect(lacks({ date: '2026-05-12', quotes: [old] })).toEqual([
      'The chosen quote A of Invented Supply was valid until 2026-05-11, and the bid is of 2026-05-12: have it confirmed and enter the new date, or choose another.',
    ]);
    expect(lacks({ date: '2026-05-11', quotes: [old] })).toEqual([]); // its last day
  });

  test('a lack that nothing stands in for', () => {
    const bare = aQuote(
      { chosen: true, goesTo: 'subcontracts' },
      { amount: 5 },
      { item: 'contact-set', state: 'lacks' },
    );
    expect(lacks({ quotes: [bare] })).toEqual([
      expect.stringMatching(/lacks contact sets, and nothing stands in for it: enter a plug/),
    ]);
  });

  test('freight that a chosen quote leaves out, unless the bid has its own', () => {
    const out = aQuote({ chosen: true, freight: 'out', goesTo: 'subcontracts' }, { amount: 5 });
    expect(lacks({ quotes: [out] })).toEqual([
      expect.stringMatching(/leaves the freight out, and none is entered: enter/),
    ]);
    expect(lacks({ quotes: [out], freight: 7 })).toEqual([]);
  });

  test('a package of which no quote is chosen, and one whose chosen quote has no amount', () => {
    expect(lacks({ quotes: [aQuote({}, { amount: 5 })] })).toEqual([
      expect.stringMatching(/No quote of "Busway" is chosen.*choose one/),
    ]);
    const empty = aQuote({ chosen: true, goesTo: 'subcontracts' }, { item: 'tests', state: 'included' });
    expect(lacks({ quotes: [empty] })).toEqual([expect.stringMatching(/has no amount: enter what it asks/)]);
  });

  test('a lift without a rate and a subcontract without an amount', () => {
    const timed = { item: 'Lift', goesTo: 'equipment', number: 2, time: 3, per: 'week', rate: null, once: 10 } as const;
    expect(lacks({ timed: [timed], subcontracts: [{ item: 'Survey', work: 'other', amount: null }] })).toEqual([
      'No rate for "Lift": enter what one costs a week (0 where others bring it).',
      'No amount for the subcontract "Survey": enter it (0 where others have it).',
    ]);
  });

  test('an alternate without a figure, and a unit price whose material nobody has priced alone', () => {
    const alternate = {
      name: 'Longer run',
      kind: 'add',
      materials: null,
      hours: null,
      subcontracts: null,
      other: null,
      note: null,
    } as const;
    const bid = bidOf(
      { materials: 1, other: 0, alternates: [alternate], unitPrices: [{ item: 'tap', material: null, offered: null }] },
      job,
    );
    expect(bid.incomplete).toEqual([
      'The alternate "Longer run" has no price, because it lacks any figure: enter its material, hours or other cost.',
      expect.stringMatching(/^No unit price for tap-offs: nobody has priced their material alone\. Enter/),
    ]);
    expect(bid.alternates[0]?.amount).toBeNull();
    expect(bid.unitPrices?.lines[0]).toMatchObject({ worked: null, extended: null });
    expect(bid.unitPrices?.remainder).toBe(bid.price);
  });

  test('a quote for a part of a joint kit that says nothing of the rest: the kit has one price, and is not whole', () => {
    const types = job.types.map((type) => ({ ...type, prices: { ...type.prices, jointKit: 18_000 } }));
    const own = { ...job, types };
    const clamps = (...lines: Parameters<typeof aQuote>[1][]) =>
      aQuote({ chosen: true, id: 'K', package: 'K' }, { item: 'clamp', amount: 1_000 }, ...lines);
    const said = (quotes: Bid['quotes']) =>
      bidOf({ other: 0, quotes }, own).incomplete.filter((sentence) => sentence.includes('joint kit'));
    expect(said([clamps()])).toEqual([
      'The chosen quote K of Invented Supply is for a part of the joint kit and says nothing of contact sets, and the kit has one price: enter them as included, as lacking with a plug amount, or as the kit.',
    ]);
    expect(said([clamps({ item: 'contact-set', state: 'included' })])).toEqual([]);
    const sets = aQuote({ chosen: true, id: 'S', package: 'S' }, { item: 'contact-set', amount: 900 });
    expect(said([clamps(), sets])).toEqual([]);
    expect(said([{ ...clamps(), chosen: false }])).toEqual([]);
  });

  test('a labour unit of 0 on work that is counted', () => {
    const book = job.labourBook!;
    const activities = book.activities.map((one) => (one.id === 'tap' ? { ...one, low: 0, likely: 0, high: 0 } : one));
    const bid = bidOf({ materials: 1, other: 0 }, { ...job, labourBook: { ...book, activities } });
    expect(bid.incomplete).toEqual([
      expect.stringMatching(/gives 0 h for tap, and 960 are counted.*Enter its hours, or take/),
    ]);
  });
});

describe('what is worth a second look', () => {
  const rules = (changes: Partial<Bid>) => checks(changes).map(({ rule, severity }) => `${severity} ${rule}`);

  test('a tax on labour, and one on something that the bid has none of', () => {
    const [labour] = checks({ materials: 1, taxes: [{ name: 'State', percent: 6, on: ['materials', 'labour'] }] });
    expect(labour?.message).toBe(
      '"State" takes 6 % of labour, which a sales tax seldom does: take it off the base unless the local law says so.',
    );
    const [nothing] = checks({ materials: 1, taxes: [{ name: 'Hire', percent: 1, on: ['equipment'] }] });
    expect(nothing?.message).toMatch(
      /on equipment, of which the bid has nothing: it taxes nothing\. Choose its base anew/,
    );
    expect(rules({ materials: 1, taxes: [{ name: 'State', percent: 6, on: ['materials'] }] })).toEqual([]);
  });

  test('two taxes on one base are told with what they come to together, once for all that they share', () => {
    const state = { name: 'State', percent: 6.25, on: ['materials', 'freight', 'equipment'] } as const;
    const county = { name: 'County', percent: 1.5, on: ['freight', 'materials'] } as const;
    const [told, ...more] = checks({ materials: 1_000, freight: 50, taxes: [state, county] });
    expect(more).toEqual([]);
    expect(told).toMatchObject({ rule: 'bid.tax-twice', severity: 'note' });
    expect(told?.message).toMatch(/^"State" and "County" are both on materials, freight, 7\.75 % together: right for/);
    expect(rules({ materials: 1_000, freight: 50, taxes: [state, { ...county, on: ['freight'] }] })).toHaveLength(1);
    expect(rules({ materials: 1_000, taxes: [state, { ...county, on: ['freight'] }] })).toEqual([
      'warning bid.tax-base',
    ]);
    const both = bidOf({ materials: 1_000, freight: 50, taxes: [state, county] }, job).lines.filter(
      ({ line }) => line === 'tax',
    );
    expect(both.map(({ amount }) => amount)).toEqual([Math.round(1_050 * 0.0625), Math.round(1_050 * 0.015)]);
  });

  test('a quote that does not say whether tax or freight is in it', () => {
    const silent = aQuote({ chosen: true, tax: null, freight: null, goesTo: 'subcontracts' }, { amount: 5 });
    expect(rules({ materials: 1, quotes: [silent] })).toEqual(['warning bid.tax-base', 'warning bid.freight']);
  });

  test('freight in a quote and in the bid, and two chosen quotes that both hold tap-offs', () => {
    const taps = (id: string) => aQuote({ id, package: id, chosen: true }, { item: 'tap', amount: 5 });
    expect(rules({ quotes: [taps('A')], freight: 9 })).toEqual(['warning bid.freight']);
    expect(checks({ quotes: [taps('A'), taps('B')] }).map(({ message }) => message)).toEqual([
      'Quotes A and B are both chosen and both hold tap-offs: take the line out of one.',
    ]);
    // One for the lot and one for a part of it, unless the lot says that it lacks the part.
    const lot = aQuote({ id: 'L', package: 'L', chosen: true }, { amount: 9 });
    const twice = (quote: typeof lot) =>
      checks({ quotes: [quote, taps('A')] })
        .filter(({ rule }) => rule === 'bid.quoted-twice')
        .map(({ message }) => message);
    expect(twice(lot)).toEqual(['Quotes L and A are both chosen and both hold tap-offs: take the line out of one.']);
    const without = {
      ...lot,
      lines: [...lot.lines, { item: 'tap', detail: null, state: 'lacks', amount: 0 } as const],
    };
    expect(twice(without)).toEqual([]);
  });

  test('a lot that says nothing of what is counted beside sections and fittings', () => {
    const lot = aQuote({ chosen: true }, { amount: 5 }, { item: 'end-cap', state: 'included' });
    expect(checks({ quotes: [lot] }).map(({ message }) => message)).toEqual([
      'Quote Q1 of Invented Supply says nothing of contact sets, clamps, end feeds, slot closure, hangers, tap-offs, drop cords: ask, and enter it as included or lacking. Until then the lot is taken to hold it; what it lacks without a plug stays at our own prices.',
    ]);
  });

  test('tests that the labour holds and an agency does too', () => {
    const agency = { item: 'Invented Testing', work: 'testing', amount: 5 } as const;
    const [twice] = checks({ materials: 1, subcontracts: [agency] });
    expect(twice).toMatchObject({ rule: 'bid.tests-twice', severity: 'warning' });
    expect(twice?.message).toMatch(/The labour holds \d+\.\d h of tests.*take out of the labour book/);
  });

  test('quotes that cannot be judged by date, and one not chosen that has run out', () => {
    const quote = aQuote({ id: 'A', goesTo: 'subcontracts', validUntil: '2026-05-01' }, { amount: 5 });
    expect(rules({ materials: 1, quotes: [quote] })).toEqual(['warning bid.no-date']);
    expect(rules({ materials: 1, quotes: [quote], date: '2026-05-02' })).toEqual(['warning bid.quote-stale']);
  });
});
