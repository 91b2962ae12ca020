import { describe, expect, test } from 'vitest';
import type { Bid, Job } from '../../../src/domain/model.ts';
import type { SpareRule } from '../../../src/domain/ordering/ordering.ts';
import { amountsOf, bidOf, quickT2 } from '../../support/bid.ts';
import { anOrdering, aSpareRule } from '../../support/ordering.ts';

// 48 runs of eight hangers and twenty tap-offs, L1, L2 and L3 by turns: 384 hangers; 336, 336 and 288 tap-offs, each kind a
// thing of its own. Prices are invented, in cents.
const job = quickT2();
const types = job.types.map((type) => ({ ...type, prices: { ...type.prices, support: 6_800, tap: 62_000 } }));
const HANGERS = aSpareRule('support', { percent: 5, minimum: 10, ownerSpares: 4, wastePercent: 2 });
const TAPS = aSpareRule('tap', { percent: 1 });

const ruled = (rules: readonly SpareRule[]): Job => ({
  ...job,
  types,
  project: { ...job.project, ordering: anOrdering({ spares: rules }) },
});
const both = ruled([HANGERS, TAPS]);
const plain: Partial<Bid> = { materials: 10_000_000, other: 0 };

describe('spares by rule are in the price', () => {
  test('by hand: 5 % of 384 hangers are 20, the owner’s 4, 2 % waste 8, at 68.00; 1 % of the tap-offs 4, 4 and 3 at 620.00', () => {
    const bid = bidOf(plain, both);
    expect(bid.spares.map(({ item, quantity, price, amount }) => [item, quantity, price, amount])).toEqual([
      ['hanger', 32, 6_800, 217_600],
      ['tap-off', 4, 62_000, 248_000],
      ['tap-off', 4, 62_000, 248_000],
      ['tap-off', 3, 62_000, 186_000],
    ]);
    expect(amountsOf(bid).spares).toBe(899_600);
    expect(bid.incomplete).toEqual([]);
  });

  test('tax and escalation are on them as on the material: 7 % of (100,000.00 + 8,996.00) × 1.04', () => {
    const amounts = amountsOf(bidOf({ ...plain, escalationPercent: 4, taxPercent: 7 }, both));
    expect(amounts.escalation).toBe(435_984);
    expect(amounts.tax).toBe(Math.round((10_000_000 + 899_600 + 435_984) * 0.07));
  });

  test('waste stated in percent stands for the pieces of the rules, and the bid says so', () => {
    const bid = bidOf({ ...plain, wastePercent: 3 }, both);
    expect(bid.spares[0]).toMatchObject({ quantity: 24, amount: 163_200 });
    expect(bid.checks.map(({ rule, message }) => [rule, message])).toEqual([
      ['bid.waste-twice', expect.stringMatching(/3 % waste on material, and .* waste to 1 thing: the percentage is/)],
    ]);
    expect(bidOf({ ...plain, wastePercent: 3 }, ruled([TAPS])).checks).toEqual([]);
  });

  test('a sum stands for all of them, nought too: the material holds them', () => {
    expect(amountsOf(bidOf({ ...plain, spares: 500_000 }, both)).spares).toBe(500_000);
    const held = bidOf({ ...plain, spares: 0 }, ruled([aSpareRule('clamp', { minimum: 6 })]));
    expect(amountsOf(held).spares).toBe(0);
    expect(held.incomplete).toEqual([]);
    expect(amountsOf(bidOf({ ...plain, spares: 9 }, job)).spares).toBe(9);
  });

  test('a thing without a price is named and never costs nothing', () => {
    const bid = bidOf(plain, ruled([HANGERS, aSpareRule('clamp', { minimum: 6 })]));
    expect(amountsOf(bid).spares).toBe(217_600);
    expect(bid.incomplete).toEqual([
      'No price for spares by the rules for ordering: 20 × clamp. Enter prices in the type, or one sum for all spares (0 where the material holds them).'.replace(
        '20',
        String(bid.spares.find(({ item }) => item === 'clamp')?.quantity),
      ),
    ]);
  });

  test('a job without rules has no such line, and its other lines are as ever', () => {
    expect(amountsOf(bidOf(plain, job))).not.toHaveProperty('spares');
    expect(bidOf(plain, job).spares).toEqual([]);
  });
});
