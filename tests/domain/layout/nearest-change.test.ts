import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contextFor } from '../../../src/domain/layout/context-for.ts';
import { feedShifts } from '../../../src/domain/layout/feed-shift.ts';
import { layoutRun } from '../../../src/domain/layout/layout-run.ts';
import type { RunLayout } from '../../../src/domain/layout/result.ts';
import { sectionShop } from '../../../src/domain/layout/section-shop.ts';
import type { BuswayType, Run, UnitSystem, Zone } from '../../../src/domain/model.ts';
import { fromMm, type Length } from '../../../src/domain/units/length.ts';
import { aJob, aTap, aType, feet } from '../../support/job.ts';
import { bestByEnumeration } from './brute-covering.ts';
import { layoutType, lengthsOf, lRun, messages, straightRun } from './l-run.ts';

// A run that cannot be built is told the nearest change that makes it one. Each is read, and then done: it has to work.

const laid = (run: Run, units: UnitSystem, type: BuswayType = layoutType()): RunLayout => {
  const job = aJob({ project: { ...aJob().project, units }, types: [type], runs: [run] });
  return layoutRun(run, contextFor(job, run));
};
const noCover = (run: Run, units: UnitSystem, type?: BuswayType) =>
  messages(laid(run, units, type), 'section.no-cover');

/**
 * The feed shifted along the heading with the building left where it is: the first leg is so much shorter, and whatever is
 * measured from the feed so much nearer. Negative: against the heading.
 */
function withFeedShifted(run: Run, by: Length): Run {
  const zones = (list: readonly Zone[]) => list.map((zone) => ({ ...zone, from: zone.from - by, to: zone.to - by }));
  const [first, ...rest] = run.legs;
  return {
    ...run,
    start: { ...run.start, x: run.start.x + by },
    legs: [{ ...first!, length: first!.length - by }, ...rest],
    crossings: run.crossings.map((crossing) => ({ ...crossing, at: crossing.at - by })),
    noJoint: zones(run.noJoint),
    noSupport: zones(run.noSupport),
    taps: run.taps.map((tap) => ('at' in tap.place ? { ...tap, place: { at: tap.place.at - by } } : tap)),
  };
}

describe('shift the feed', () => {
  // A corner 62 ft from the feed leaves 61 ft to cover out of 5, 10 and 20 ft; the fire wall stands 40 ft from the feed.
  const drawn = lRun({
    legs: [{ ...lRun().legs[0]!, length: feet(62) }, lRun().legs[1]!],
    crossings: [{ at: feet(40), thickness: feet(1), kind: 'fire-wall', fireRatingMin: 120 }],
    noSupport: [{ from: feet(44), to: feet(48), reason: 'duct' }],
  });

  it('1 ft, in feet and inches', () => {
    expect(noCover(drawn, 'ft-in')[0]).toContain(
      `Shift the feed 1'-0" along the heading (60'-0" left to cover) or 4'-0" against it (65'-0"), or shorten the part`,
    );
  });

  it('305 mm, in a metric job', () => {
    expect(noCover(drawn, 'metric')[0]).toContain(
      'Shift the feed ≈0.305 m along the heading (18.288 m left to cover) or ≈1.219 m against it (19.812 m), or',
    );
  });

  it('and the run can be built, its corner and its wall where they were', () => {
    const shifted = withFeedShifted(drawn, feet(1));
    const layout = laid(shifted, 'ft-in');
    expect(layout.ok).toBe(true);
    expect(lengthsOf(layout.pieces)).toEqual([20, 10, 20, 10, 2, 20, 10, 5]);
    const corner = ({ path }: RunLayout) => ({ x: path[1]?.x, y: path[1]?.y });
    expect(corner(layout)).toEqual({ x: feet(62), y: 0 });
    expect(shifted.start.x + shifted.crossings[0]!.at).toBe(feet(40));
    const longer = laid(withFeedShifted(drawn, -feet(4)), 'ft-in');
    expect([longer.ok, corner(longer)]).toEqual([true, { x: feet(62), y: 0 }]);
  });

  it('is told for the part at the feed alone', () => {
    const legs = [
      { length: feet(61), turn: 'left' as const, tapsMustFace: null },
      { length: feet(24), turn: 'none' as const, tapsMustFace: null },
    ];
    const [message] = noCover(lRun({ legs, end: null, crossings: [], noSupport: [] }), 'ft-in');
    // The first part is 60 ft and covered; past the corner there are 23 ft.
    expect(message).toMatch(/^The straight part from 62'-0" to 85'-0"/);
    expect(message).not.toContain('feed');
  });

  it('is not told of a branch, whose feed is its tee, nor of a centre feed', () => {
    for (const kind of ['tee', 'centre'] as const) {
      const parent = straightRun(72, { id: 'P' });
      const run = straightRun(62, { id: 'B' });
      const fed = { ...run, feed: { ...run.feed, kind, fromRun: 'P', at: feet(31), branchSide: 'left' as const } };
      const job = aJob({ types: [layoutType()], runs: [parent, fed] });
      const [message] = messages(layoutRun(fed, contextFor(job, fed)), 'section.no-cover');
      expect(message).toContain('cannot be covered');
      expect(message).not.toContain('hift the feed');
    }
  });

  it('is not told past the first wall or tap', () => {
    const type = layoutType({ stockLengths: [feet(20)] });
    const [message] = noCover(straightRun(39, { taps: [aTap({ place: { at: feet(10) } })] }), 'ft-in', type);
    // 19 ft along the heading would leave 20 ft, but pass the tap.
    expect(message).toContain(`Shift the feed 1'-0" against the heading (40'-0"), or shorten`);
  });

  it('is the least that trying every shift finds, with everything else left where it is', () => {
    fc.assert(
      fc.property(cramped, ({ stock, bars, length, joins, range, wall }) => {
        const shop = sectionShop({ stockLengths: stock, factoryCut: null, prices: aType().prices, jointCost: 1 }, 90);
        const zones = bars.map(([from, to]) => ({ kind: 'zone' as const, from, to, name: 'zone', tap: null }));
        const part = { from: 0, reach: length, hardStop: length, nominal: length, towardsFeed: 'from' as const };
        const found = feedShifts(shop, part, zones, { joins, mostAlong: wall });
        /** Does the part from `at` to its end have a covering, by writing out all of them. */
        const works = (at: number) =>
          !(joins && bars.some(([from, to]) => from < at && at < to)) &&
          bestByEnumeration({ ...blank, stock, bars, from: at, reach: length, hardStop: length, nominal: length }) !==
            null;
        const along = Array.from({ length: length - 1 }, (_, i) => i + 1).find(works);
        expect(found.along?.by ?? null).toBe(along === undefined || along > wall ? null : along);
        const against = Array.from({ length: range }, (_, i) => i + 1).find((by) => works(-by));
        if (against !== undefined) expect(found.against).toEqual({ by: against, length: length + against });
        else expect(found.against === null || found.against.by > range).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});

const blank = { feedFirst: true, cut: null, listed: new Map(), perUnit: 0, surcharge: 0, joint: 0 } as const;
const cramped = fc.record({
  stock: fc.uniqueArray(fc.integer({ min: 3, max: 12 }), { minLength: 1, maxLength: 3 }),
  bars: fc.array(
    fc
      .tuple(fc.integer({ min: -5, max: 25 }), fc.integer({ min: 1, max: 6 }))
      .map(([from, wide]) => [from, from + wide] as const),
    { maxLength: 3 },
  ),
  length: fc.integer({ min: 2, max: 24 }),
  joins: fc.boolean(),
  range: fc.constant(12),
  wall: fc.integer({ min: 0, max: 24 }),
});

describe('nudge a tap', () => {
  const type = layoutType({ stockLengths: [feet(20)] });
  const run = (at: Length) => straightRun(40, { taps: [aTap({ id: '7', fixed: true, place: { at } })] });

  it('by 9 in, in feet and inches, and the run can be built', () => {
    expect(noCover(run(feet(19.5)), 'ft-in', type)[0]).toContain(`Move tap 7 (fixed) by 9" to 18'-9"`);
    expect(laid(run(feet(18.75)), 'ft-in', type).ok).toBe(true);
    // An inch less is not enough.
    expect(laid(run(feet(18.75 + 1 / 12)), 'ft-in', type).ok).toBe(false);
  });

  it('to 11 786 mm in a metric job, and the run can be built', () => {
    // Two sections of 12 192 mm meet at 12 192; a tap needs 406 mm: it may stand at 11 786 and not a millimetre nearer.
    const metric = layoutType({ stockLengths: [fromMm(12_192)], tap: { ...type.tap, jointClear: fromMm(406) } });
    const drawn = (at: number) =>
      straightRun(80, { taps: [aTap({ id: '7', fixed: true, place: { at: fromMm(at) } })] });
    expect(noCover(drawn(12_000), 'metric', metric)[0]).toContain('Move tap 7 (fixed) by 0.214 m to 11.786 m');
    expect(laid(drawn(11_786), 'metric', metric).ok).toBe(true);
    expect(laid(drawn(11_787), 'metric', metric).ok).toBe(false);
  });
});

describe('allow a cut', () => {
  const cut = (length: Length) => layoutType({ factoryCut: { min: length, max: length, step: 127 } });

  it('of 11 ft, in feet and inches, and the run can be built with it', () => {
    expect(noCover(straightRun(61), 'ft-in')[0]).toContain(
      `have a factory cut of 11'-0" allowed (the sheet states none)`,
    );
    const layout = laid(straightRun(61), 'ft-in', cut(feet(11)));
    expect(layout.pieces.filter(({ kind }) => kind === 'cut').map(({ from, to }) => to - from)).toEqual([feet(11)]);
  });

  it('of 3 353 mm in a metric job, and the run can be built with it', () => {
    const run = straightRun(0, { legs: [{ length: fromMm(18_593), turn: 'none', tapsMustFace: null }] });
    expect(noCover(run, 'metric')[0]).toContain('have a factory cut of 3.353 m allowed (the sheet states none)');
    expect(laid(run, 'metric', cut(fromMm(3_353))).ok).toBe(true);
  });
});

describe('bridge with a trapeze', () => {
  const drawn = (type: BuswayType, zone: Zone, units: UnitSystem) =>
    laid(straightRun(80, { noSupport: [zone] }), units, type);
  /** The trapeze carries a hanger in between, so one place in the middle of the zone is free again. */
  const bridged = ({ from, to, reason }: Zone): readonly Zone[] => {
    const middle = Math.round((from + to) / 2);
    const half = feet(0.25);
    return [
      { from, to: middle - half, reason },
      { from: middle + half, to, reason },
    ];
  };

  it('from 41 ft to 51 ft 6 in, in feet and inches, and the run can be hung', () => {
    const zone = { from: feet(41), to: feet(51.5), reason: 'duct' };
    expect(messages(drawn(layoutType(), zone, 'ft-in'), 'support.blocked')[0]).toContain(
      `Bridge it with a trapeze or strut from 41'-0" to 51'-6"`,
    );
    const hung = laid(straightRun(80, { noSupport: bridged(zone) }), 'ft-in');
    expect(messages(hung, 'support.blocked')).toEqual([]);
    expect(hung.supports.length).toBeGreaterThan(0);
  });

  it('from 12 497 to 15 697 mm in a metric job, and the run can be hung', () => {
    const zone = { from: fromMm(12_497), to: fromMm(15_697), reason: 'duct' };
    // Hanger places on every millimetre, so that the zone's own edges are places.
    const type = layoutType({ support: { ...layoutType().support, step: fromMm(1) } });
    expect(messages(drawn(type, zone, 'metric'), 'support.blocked')[0]).toContain(
      'Bridge it with a trapeze or strut from 12.497 m to 15.697 m',
    );
    const hung = laid(straightRun(80, { noSupport: bridged(zone) }), 'metric', type);
    expect(messages(hung, 'support.blocked')).toEqual([]);
    expect(hung.supports.some(({ at }) => at > zone.from && at < zone.to)).toBe(true);
  });
});
