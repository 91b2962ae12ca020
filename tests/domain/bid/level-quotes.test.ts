import { describe, expect, test } from 'vitest';
import type { Quote } from '../../../src/domain/bid/bid-entries.ts';
import { levelQuotes } from '../../../src/domain/bid/level-quotes.ts';
import type { Job } from '../../../src/domain/model.ts';
import { amountsOf, aQuote, bidOf, quickT2 } from '../../support/bid.ts';
import { anOrdering, aSpareRule } from '../../support/ordering.ts';

// The trade's own mistake: the cheaper quote leaves out the contact sets. 100,000.00 for the lot without them, plugged at
// 12,000.00, and 3,000.00 of freight: 115,000.00 level. The other asks 113,000.00 with all of it in.
const cheap = aQuote(
  { id: 'A', supplier: 'Invented Supply', freight: 'out', freightAmount: 300_000, validUntil: '2026-05-01' },
  { amount: 10_000_000 },
  { item: 'contact-set', state: 'lacks', amount: 1_200_000 },
);
const dear = aQuote(
  { id: 'B', supplier: 'Made-up Electric', validUntil: '2026-06-30' },
  { amount: 11_300_000 },
  { item: 'contact-set', state: 'included' },
  { item: 'end-cap', state: 'included' },
);

describe('quotes side by side', () => {
  test('quoted, plugs and freight make the level total, and the lowest is not the one that asked least', () => {
    const [busway] = levelQuotes([cheap, dear]);
    expect(busway?.quotes.map(({ quoted, plugs, freight, total }) => [quoted, plugs, freight, total])).toEqual([
      [10_000_000, 1_200_000, 300_000, 11_500_000],
      [11_300_000, 0, 0, 11_300_000],
    ]);
    expect(busway?.lowest).toBe('B');
  });

  test('each row shows what every quote says of it, and what it says nothing of', () => {
    const [busway] = levelQuotes([cheap, dear]);
    expect(busway?.rows.map(({ item, cells }) => [item, ...cells.map((cell) => cell?.state ?? 'not said')])).toEqual([
      ['lot', 'priced', 'priced'],
      ['contact-set', 'lacks', 'included'],
      ['end-cap', 'not said', 'included'],
    ]);
    expect(busway?.quotes.map(({ unsaid }) => unsaid)).toEqual([['end caps'], []]);
  });

  test('a lack without a plug, freight or tax of unknown amount leave the total incomplete and out of the comparison', () => {
    const bare = aQuote(
      { id: 'C', freight: 'out', tax: 'in' },
      { amount: 1_000 },
      { item: 'slot-closure', state: 'lacks' },
    );
    const [busway] = levelQuotes([bare, dear]);
    expect(busway?.quotes[0]?.missing).toEqual(['slot closure', 'freight', 'the tax that is in it']);
    expect(busway?.lowest).toBe('B');
  });

  test('tax in a quote is taken out to compare: 107.00 with 7.00 of tax is 100.00 level', () => {
    const [busway] = levelQuotes([aQuote({ tax: 'in', taxAmount: 700 }, { amount: 10_700 })]);
    expect(busway?.quotes[0]?.total).toBe(10_000);
  });
});

describe('a chosen quote in the price', () => {
  const job = quickT2();
  const priced = {
    ...job,
    types: job.types.map((type) => ({
      ...type,
      prices: {
        ...type.prices,
        sectionPerM: 10_000,
        jointKit: 4_000,
        support: 3_000,
        endFeed: 50_000,
        endCap: 2_000,
        tap: 20_000,
        drop: 6_000,
      },
    })),
  };

  test('the lot takes the place of all material, and its freight has a line of its own', () => {
    const bid = bidOf({ quotes: [{ ...cheap, chosen: true }], other: 0 }, priced);
    expect(amountsOf(bid)).toMatchObject({ materials: 11_200_000, freight: 300_000 });
    expect(bid.materials).toEqual([]);
  });

  describe('what the lot lacks', () => {
    const lacking = (...items: readonly ('tap' | 'clamp' | 'contact-set' | 'joint-kit' | 'slot-closure')[]) =>
      aQuote(
        { id: 'L', chosen: true },
        { amount: 10_000_000 },
        ...items.map((item) => ({ item, state: 'lacks' as const })),
      );
    const lot = (quotes: readonly Quote[], of: Job = priced) => bidOf({ quotes, wastePercent: 10, other: 0 }, of);

    test('stays at our own prices: 100,000.00 and 960 tap-offs at 200.00 are 292,000.00, waste on the tap-offs alone', () => {
      const bid = lot([lacking('tap')]);
      expect(amountsOf(bid)).toMatchObject({ materials: 29_200_000, waste: 1_920_000 });
      expect(bid.materials.map(({ key, quantity }) => [key, quantity])).toEqual([['tap', 960]]);
      expect(bid.incomplete).toEqual([]);
      expect(bid.lines[0]?.working).toMatchObject({ takeoff: 19_200_000, parts: [{ amount: 10_000_000 }] });
      const [levelled] = bid.packages[0]?.quotes ?? [];
      expect(levelled).toMatchObject({ ours: [{ item: 'tap', amount: 19_200_000 }], total: 29_200_000, missing: [] });
    });

    test('is missing where no type prices it, named once and never nought', () => {
      const none = {
        ...priced,
        types: priced.types.map((type) => ({ ...type, prices: { ...type.prices, tap: null } })),
      };
      const bid = lot([lacking('tap')], none);
      expect(amountsOf(bid).materials).toBe(10_000_000);
      expect(bid.incomplete).toEqual([expect.stringMatching(/^No price for 960 × tap-off of /)]);
      expect(bid.packages[0]?.quotes[0]?.missing).toEqual(['tap-offs']);
      expect(lot([lacking('slot-closure')]).incomplete).toEqual([
        expect.stringMatching(/lacks slot closure, and nothing stands in for it/),
      ]);
    });

    test('is a joint kit only as a whole: contact sets alone cannot be taken out of a kit that is priced as one', () => {
      const one = lot([lacking('contact-set')]);
      expect(amountsOf(one).materials).toBe(10_000_000);
      expect(one.incomplete).toEqual([expect.stringMatching(/lacks contact sets, and nothing stands in for it/)]);
      for (const parts of [['joint-kit'], ['clamp', 'contact-set']] as const) {
        const whole = lot([lacking(...parts)]);
        const kits = whole.materials.find(({ key }) => key === 'joint-kit');
        expect(amountsOf(whole).materials).toBe(10_000_000 + (kits?.amount ?? Number.NaN));
        expect(whole.incomplete).toEqual([]);
      }
    });

    test('is not bought twice where another chosen quote holds it, and a plug stands in for it alone', () => {
      const taps = aQuote({ id: 'T', package: 'Tap-offs', chosen: true }, { item: 'tap', amount: 15_000_000 });
      const two = lot([lacking('tap'), taps]);
      expect(amountsOf(two).materials).toBe(25_000_000);
      expect(two.incomplete).toEqual([]);
      const plugged = aQuote({ chosen: true }, { amount: 10_000_000 }, { item: 'tap', state: 'lacks', amount: 1_000 });
      expect(amountsOf(lot([plugged])).materials).toBe(10_001_000);
    });
  });

  test('what a chosen quote takes the place of is shown, and whether it names it or holds it as part of the lot', () => {
    const some = aQuote({ id: 'L', chosen: true }, { amount: 10_000_000 }, { item: 'support', state: 'included' });
    const bid = bidOf({ quotes: [some], other: 0 }, priced);
    const whole = bidOf({ other: 0 }, priced);
    expect(bid.held.map(({ isNamed: _, quote: __, ...line }) => line)).toEqual(whole.materials);
    expect(bid.held.filter(({ isNamed }) => isNamed).map(({ key }) => key)).toEqual(['support']);
    const [told] = bid.checks.filter(({ rule }) => rule === 'bid.quote-scope');
    expect(told?.message).toMatch(/says nothing of .*tap-offs, drop cords.*Until then the lot is taken to hold it/);
    expect(told?.message).not.toContain('hangers');
  });

  describe('what the owner furnishes and we install', () => {
    const owned = { ownerFurnished: ['tap' as const, 'label' as const, 'slot-closure' as const] };

    test('is neither bought, taxed, wasted nor missing, and stays in the hours', () => {
      const entries = { taxPercent: 10, wastePercent: 5 };
      const [whole, bid] = [bidOf({ ...entries, other: 0 }, priced), bidOf({ ...entries, ...owned }, priced)];
      const less = 960 * 20_000;
      const [before, after] = [amountsOf(whole), amountsOf(bid)];
      expect(after.materials).toBe((before.materials ?? 0) - less);
      expect(after.waste).toBe((before.waste ?? 0) - less * 0.05);
      expect(after.tax).toBe((before.tax ?? 0) - less * 1.05 * 0.1);
      expect(after.labour).toBe(before.labour);
      expect(bid.incomplete).toEqual([]);
    });

    test('has a unit price of its work alone, and no spares that we price', () => {
      const unitPrices = [{ item: 'tap' as const, material: null, offered: null }];
      const [tap] = bidOf({ ...owned, unitPrices }, priced).unitPrices?.lines ?? [];
      expect(tap).toMatchObject({ material: 0 });
      expect(tap?.cost).toBeCloseTo((tap?.hours ?? 0) * (332 / 3.25) * 100, 6);
      const ordering = anOrdering({ spares: [aSpareRule('tap', { minimum: 5 })] });
      const spared: Job = { ...priced, project: { ...priced.project, ordering } };
      expect(bidOf({ other: 0 }, spared).spares.length).toBeGreaterThan(0);
      expect(bidOf(owned, spared).spares).toEqual([]);
    });

    test('is told where a chosen quote or a sum for all material may hold it', () => {
      const rules = (changes: object) =>
        bidOf({ ...owned, ...changes }, priced)
          .checks.filter(({ rule }) => rule === 'bid.owner-furnished')
          .map(({ severity, message }) => `${severity}: ${message}`);
      const lot = aQuote({ chosen: true }, { amount: 5 }, { item: 'label', state: 'lacks' });
      expect(rules({ quotes: [lot] })).toEqual([
        expect.stringMatching(
          /^warning: The owner furnishes tap-offs, slot closure, and the chosen quote Q1 of Invented Supply holds them/,
        ),
      ]);
      expect(rules({ materials: 5 })).toEqual([expect.stringMatching(/^note: .*make sure that it holds none of them/)]);
      expect(rules({})).toEqual([]);
    });
  });

  test('a quote for tap-offs alone leaves the rest at the prices of its types', () => {
    const without = amountsOf(bidOf({ other: 0 }, priced)).materials ?? 0;
    const taps = aQuote({ chosen: true }, { item: 'tap', amount: 15_000_000 });
    const bid = bidOf({ quotes: [taps], other: 0 }, priced);
    expect(amountsOf(bid).materials).toBe(without - 960 * 20_000 + 15_000_000);
    expect(bid.materials.some(({ key }) => key === 'tap')).toBe(false);
  });

  test('a quote that names contact sets is for the joint kits: they are not bought twice', () => {
    const kits = aQuote({ chosen: true }, { item: 'clamp', amount: 100 }, { item: 'contact-set', amount: 200 });
    expect(bidOf({ quotes: [kits], other: 0 }, priced).materials.some(({ key }) => key === 'joint-kit')).toBe(false);
  });

  test('waste leaves quotes alone, and escalation one that is firm', () => {
    const entries = { wastePercent: 10, escalationPercent: 5, other: 0 };
    const bid = bidOf({ ...entries, quotes: [aQuote({ chosen: true }, { amount: 1_000_000 })] });
    expect(amountsOf(bid)).toMatchObject({ waste: 0, escalation: 50_000 });
    const firm = bidOf({ ...entries, quotes: [aQuote({ chosen: true, firm: true }, { amount: 1_000_000 })] });
    expect(amountsOf(firm)).toMatchObject({ materials: 1_000_000, escalation: 0 });
  });

  test('what is quoted with the tax in it is not taxed again, and it is said so', () => {
    const inside = aQuote(
      { chosen: true, tax: 'in', taxAmount: 7_000 },
      { amount: 107_000 },
      { item: 'label', state: 'lacks', amount: 10_000 },
    );
    const bid = bidOf({ quotes: [inside], taxPercent: 7, other: 0 });
    expect(amountsOf(bid)).toMatchObject({ materials: 117_000, tax: 700 });
    expect(bid.checks).toContainEqual(
      expect.objectContaining({ rule: 'bid.tax-base', message: expect.stringContaining('left out of the base') }),
    );
  });

  test('a subcontract that is quoted goes to the subcontracts', () => {
    const seals = aQuote(
      { chosen: true, goesTo: 'subcontracts', package: 'Fire sealing' },
      { item: 'fire-seal', amount: 90_000 },
    );
    const bid = bidOf({
      materials: 1_000,
      quotes: [seals],
      subcontracts: [{ item: 'Survey', work: 'other', amount: 5_000 }],
    });
    expect(amountsOf(bid)).toMatchObject({ materials: 1_000, subcontracts: 95_000 });
  });
});

test('what a quote with the tax in it rises by until delivery carries its own tax: 107,000.00 and 5 % of it are taxed no more', () => {
  const lot = aQuote({ chosen: true, tax: 'in', taxAmount: 700_000, freight: 'in' }, { amount: 10_700_000 });
  const amounts = (quote: typeof lot) =>
    amountsOf(bidOf({ other: 0, escalationPercent: 5, taxPercent: 7, quotes: [quote] }));
  expect(amounts(lot)).toMatchObject({ materials: 10_700_000, escalation: 535_000, tax: 0 });
  expect(amounts({ ...lot, firm: true })).toMatchObject({ escalation: 0, tax: 0 });
  // Without the tax in it: 7 % of 107,000.00 and of what it rises by, 112,350.00.
  expect(amounts({ ...lot, tax: 'out', taxAmount: null })).toMatchObject({ escalation: 535_000, tax: 786_450 });
});
