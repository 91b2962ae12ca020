import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverHeldPart } from '../../../src/domain/layout/cover-held-part.ts';
import { coverLastPart } from '../../../src/domain/layout/cover-last-part.ts';
import { coverPart } from '../../../src/domain/layout/cover-part.ts';
import { nearestCoverable } from '../../../src/domain/layout/nearest-coverable.ts';
import { partWays } from '../../../src/domain/layout/part-ways.ts';
import { sectionShop } from '../../../src/domain/layout/section-shop.ts';
import { aType } from '../../support/job.ts';
import { allStandings, bestByEnumeration, bestFewByEnumeration, bestThrough, type Instance } from './brute-covering.ts';

const lengths = fc.uniqueArray(fc.integer({ min: 2, max: 9 }), { minLength: 1, maxLength: 3 });
const bar = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 9 })).map(([half, width]) => {
  const from = half / 2;
  return [from, from + width / 2] as const;
});
const cut = fc.record({
  min: fc.integer({ min: 1, max: 4 }),
  spread: fc.integer({ min: 0, max: 5 }),
  step: fc.integer({ min: 1, max: 3 }),
});

const instances: fc.Arbitrary<Instance> = fc
  .record({
    from: fc.integer({ min: 0, max: 3 }),
    length: fc.integer({ min: 1, max: 14 }),
    range: fc.integer({ min: 0, max: 6 }),
    nominal: fc.integer({ min: -2, max: 8 }),
    feedFirst: fc.boolean(),
    stock: lengths,
    cut: fc.option(cut),
    listed: fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 5 })), { maxLength: 3 }),
    perUnit: fc.constantFrom(0, 20_000, 80_000, 130_000),
    surcharge: fc.constantFrom(0, 0, 2),
    joint: fc.constantFrom(0, 1, 3),
    bars: fc.array(bar, { maxLength: 4 }),
  })
  .map(({ length, range, ...rest }) => ({
    ...rest,
    reach: rest.from + length,
    hardStop: rest.from + length + range,
    nominal: rest.from + length + rest.nominal,
    stock: [...rest.stock].sort((a, b) => b - a),
    cut: rest.cut && { min: rest.cut.min, max: rest.cut.min + rest.cut.spread, step: rest.cut.step },
    listed: new Map(rest.listed),
  }));

describe('the covering of a straight part', () => {
  it('is the one that writing out every covering finds, for a part of fixed length', () => {
    fc.assert(
      fc.property(instances, (drawn) => {
        const instance = { ...drawn, hardStop: drawn.reach, nominal: drawn.reach };
        const part = { from: instance.from, to: instance.reach, towardsFeed: towardsFeed(instance) };
        expect(plain(coverPart(shopOf(instance), part, barredBy(instance)))).toEqual(
          plain(bestByEnumeration(instance)),
        );
      }),
      { numRuns: 1500 },
    );
  });

  it('is the one that writing out every covering finds, for a last part that may end anywhere in a range', () => {
    fc.assert(
      fc.property(instances, (instance) => {
        const last = { ...instance, towardsFeed: towardsFeed(instance) };
        const found = coverLastPart(shopOf(instance), last, barredBy(instance));
        const best = bestByEnumeration(instance);
        expect(plain(found)).toEqual(plain(best));
        expect(found?.to).toBe(best?.to);
      }),
      { numRuns: 1500 },
    );
  });

  it('through sections that are held is the best of all that have them in their places, however the part may end', () => {
    fc.assert(
      fc.property(instances, fc.boolean(), fc.nat(), fc.nat(), fc.boolean(), (drawn, free, which, first, two) => {
        const instance = { ...drawn, ...(free ? {} : { hardStop: drawn.reach, nominal: drawn.reach }) };
        const all = allStandings(instance).filter((standing) => standing.length > 0);
        fc.pre(all.length > 0);
        const standing = all[which % all.length]!;
        const place = first % standing.length;
        const held = standing.slice(place, place + (two ? 2 : 1));
        const ends = free ? { ...instance } : { from: instance.from, to: instance.reach };
        const sections = held.map(({ from, to, cut }) => ({
          from,
          to,
          kind: cut ? ('cut' as const) : ('stock' as const),
        }));
        const found = coverHeldPart(shopOf(instance), { ...ends, towardsFeed: towardsFeed(instance) }, sections, {
          type: { ...aType(), stockLengths: instance.stock, factoryCut: instance.cut },
          isBarred: barredBy(instance),
          say: String,
        });
        const best = bestThrough(instance, held);
        expect(found.ok && found.covering.pieces).toEqual(best?.pieces);
      }),
      { numRuns: 1000 },
    );
  });

  it('comes with the next two that writing out every covering finds, however the part may end', () => {
    fc.assert(
      fc.property(instances, fc.boolean(), (drawn, free) => {
        const exact = { hardStop: drawn.reach, nominal: drawn.reach };
        const instance = { ...drawn, feedFirst: true, ...(free ? {} : exact) };
        const ways = partWays(shopOf(instance), { ...instance, towardsFeed: 'from' }, barredBy(instance), 3);
        const expected = bestFewByEnumeration(instance, 3);
        expect(ways?.map(({ pieces, cost }) => ({ pieces, cost }))).toEqual(expected.map((one) => plain(one)));
        expect(ways?.map(({ away }) => away)).toEqual(expected.map(({ to }) => Math.abs(to - instance.nominal)));
      }),
      { numRuns: 2500 },
    );
  });

  it('that cannot be had is told the nearest lengths that can, as trying every length finds them', () => {
    fc.assert(
      fc.property(instances, (instance) => {
        const needed = instance.reach - instance.from;
        const part = { from: instance.from, to: instance.reach, towardsFeed: towardsFeed(instance) };
        const bars = instance.bars.map(([from, to]) => ({ kind: 'zone' as const, from, to, name: 'zone', tap: null }));
        const shop = shopOf({ ...instance, hardStop: instance.reach + 18 });
        const canBe = (length: number) => {
          const to = instance.from + length;
          return bestByEnumeration({ ...instance, reach: to, hardStop: to, nominal: to }) !== null;
        };
        const shorter =
          lengthsFrom(1, needed - 1)
            .filter(canBe)
            .at(-1) ?? null;
        expect(nearestCoverable(shop, part, needed, bars, 'shorter')).toBe(shorter);
        const longer = lengthsFrom(needed + 1, needed + 6).find(canBe);
        const found = nearestCoverable(shop, part, needed, bars, 'longer');
        expect(found !== null && found <= needed + 6 ? found : undefined).toBe(longer);
      }),
      { numRuns: 1000 },
    );
  });
});

function lengthsFrom(first: number, last: number): number[] {
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
}

function plain(covering: ReturnType<typeof bestByEnumeration> | ReturnType<typeof coverPart>) {
  return covering && { pieces: covering.pieces, cost: covering.cost };
}

function towardsFeed({ feedFirst }: Instance): 'from' | 'to' {
  return feedFirst ? 'from' : 'to';
}

function barredBy({ bars }: Instance) {
  return (at: number) => bars.some(([from, to]) => from < at && at < to);
}

function shopOf(instance: Instance) {
  const prices = {
    ...aType().prices,
    sections: [...instance.listed].map(([length, price]) => ({ length, price })),
    sectionPerM: instance.perUnit === 0 ? null : instance.perUnit,
    cutSurcharge: instance.surcharge,
  };
  const list = { stockLengths: instance.stock, factoryCut: instance.cut, prices, jointCost: instance.joint };
  return sectionShop(list, instance.hardStop - instance.from);
}
