import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkTaps } from '../../../src/domain/layout/check-taps.ts';
import { sayIn } from '../../../src/domain/layout/say.ts';
import { aRun, aTap, feet } from '../../support/job.ts';
import { inFeet, laidOut, layoutType, lRun, messages, rulesOf, straightRun } from './l-run.ts';

const one = (at: number, id = 'T1') => [aTap({ id, place: { at: feet(at) } })];

describe('where a tap stands', () => {
  it('is the nearest point of the run to what it serves', () => {
    const near = (x: number, y: number) => aTap({ id: `${x},${y}`, place: { near: { x: feet(x), y: feet(y) } } });
    const layout = laidOut(lRun({ taps: [near(15, -9), near(70, 25), near(80, -3), near(-4, 6), near(61, 90)] }));
    expect(layout.taps.map((tap) => inFeet(tap.at))).toEqual([15, 86, 61, 0, 97]);
  });

  it('is the one nearer the feed when two points are equally near', () => {
    const place = { near: { x: feet(51), y: feet(10) } };
    expect(laidOut(lRun({ taps: [aTap({ place })] })).taps.map((tap) => inFeet(tap.at))).toEqual([51]);
  });

  it('is rounded to 1/80 mm on a slanting run', () => {
    const place = { near: { x: 1000, y: 0 } };
    const layout = laidOut(straightRun(70, { headingDeg: 30, taps: [aTap({ place })] }));
    expect(layout.taps[0]?.at).toBe(Math.round(1000 * Math.cos(Math.PI / 6)));
  });

  it('stays known when the sections cannot be laid', () => {
    expect(laidOut(straightRun(61, { taps: one(30) })).taps).toEqual([{ id: 'T1', at: feet(30), nearestLegal: null }]);
  });
});

describe('a tap in a place where it may not stand', () => {
  it('too near the end', () => {
    expect(messages(laidOut(straightRun(40, { taps: one(39.5) })), 'tap.end-clear')).toEqual([
      `Tap T1 at 39'-6": it is 6" from the end of the run at 40'-0" and needs 1'-0". Nearest legal place: 39'-0" (6" back).`,
    ]);
  });

  it('beyond the end', () => {
    expect(messages(laidOut(straightRun(40, { taps: one(43) })), 'tap.end-clear')).toEqual([
      `Tap T1 at 43'-0": it is 3'-0" beyond the end of the run at 40'-0". Nearest legal place: 39'-0" (4'-0" back).`,
    ]);
  });

  it('on an elbow', () => {
    const layout = laidOut(lRun({ taps: one(61) }));
    expect(messages(layout, 'tap.on-fitting')[0]).toBe(
      `Tap T1 at 61'-0": it stands on the elbow. Nearest legal places: 58'-9" (2'-3" back) or 63'-3" (2'-3" on).`,
    );
    expect(layout.taps[0]?.nearestLegal).toBe(feet(58.75));
  });

  it('inside a wall', () => {
    expect(messages(laidOut(lRun({ taps: one(39.25) })), 'tap.in-crossing')[0]).toContain('inside the fire-wall at 39');
  });

  it('too near its neighbour, said once and offered a place clear of every other tap', () => {
    const type = layoutType({ tap: { jointClear: 0, endClear: 0, minSpacing: feet(2), boxLength: feet(1) } });
    const taps = [...one(5, 'T1'), ...one(6.5, 'T2'), ...one(8.5, 'T3')];
    const layout = laidOut(straightRun(20, { taps }), type);
    expect(messages(layout, 'tap.spacing')).toEqual([
      `Tap T2 at 6'-6": it is 1'-6" from tap T1 at 5'-0", centre to centre, and needs 2'-0". Nearest legal places: 3'-0" (3'-6" back) or 10'-6" (4'-0" on).`,
    ]);
    expect(layout.taps.map((tap) => tap.nearestLegal)).toEqual([feet(4.5), feet(3), null]);
  });

  it('passes exactly at every limit', () => {
    const taps = [...one(1.25, 'T1'), ...one(2.25, 'T2'), ...one(18.75, 'T3'), ...one(39, 'T4')];
    const layout = laidOut(straightRun(40, { taps }));
    expect(rulesOf(layout).filter((rule) => rule.startsWith('tap.'))).toEqual([]);
  });

  it('says that no place is legal where none is', () => {
    const type = layoutType({ tap: { jointClear: feet(6), endClear: feet(1), minSpacing: null, boxLength: null } });
    const layout = laidOut(straightRun(5, { taps: one(2) }), type);
    expect(messages(layout, 'tap.joint-clear')[0]).toContain('No place on this run is legal for it');
    expect(layout.taps[0]?.nearestLegal).toBeNull();
  });

  it('is offered the nearest place that trying every place finds', () => {
    fc.assert(
      fc.property(crowds, ({ joints, walls, places, minSpacing, boxLength }) => {
        const type = layoutType({ tap: { jointClear: 2, endClear: 1, minSpacing, boxLength } });
        const crossings = walls.map(([at, thickness]) => ({ at, thickness, kind: 'wall' as const, fireRatingMin: 0 }));
        const setting = {
          run: aRun({ crossings }),
          type,
          length: 40,
          pieces: [],
          joints: joints.map((at) => ({ at })),
        };
        const taps = places.map((at, i) => ({ tap: aTap({ id: `T${i}` }), at }));
        const found = checkTaps(setting, taps, sayIn('metric')).taps.map((tap) => tap.nearestLegal);
        const isLegal = (at: number, index: number) =>
          at >= 1 &&
          at <= 39 &&
          joints.every((joint) => Math.abs(joint - at) >= 2) &&
          walls.every(([wall, thickness]) => Math.abs(wall - at) >= thickness / 2) &&
          places.every((other, i) => i === index || Math.abs(other - at) >= Math.max(minSpacing ?? 0, boxLength ?? 0));
        const expected = places.map((at, index) => {
          if (isLegal(at, index)) return null;
          const legal = Array.from({ length: 41 }, (_, place) => place).filter((place) => isLegal(place, index));
          return legal.sort((a, b) => Math.abs(a - at) - Math.abs(b - at) || a - b)[0] ?? null;
        });
        expect(found).toEqual(expected);
      }),
      { numRuns: 1000 },
    );
  });

  it('at a branch’s tee is held to the joint there, not to an end', () => {
    const type = layoutType({ tap: { jointClear: feet(0.5), endClear: feet(1), minSpacing: null, boxLength: null } });
    const parent = straightRun(72, { id: 'P' });
    const feed = { kind: 'tee' as const, fromRun: 'P', at: feet(41), branchSide: 'left' as const };
    const branch = aRun(
      { id: 'B', legs: [{ length: feet(21), turn: 'none', tapsMustFace: null }], taps: one(0.5) },
      feed,
    );
    expect(rulesOf(laidOut(branch, type, { runs: [parent, branch] }))).not.toContain('tap.end-clear');
  });
});

const crowds = fc.record({
  joints: fc.array(fc.integer({ min: 0, max: 40 }), { maxLength: 4 }),
  walls: fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 5 })), { maxLength: 2 }),
  places: fc.array(fc.integer({ min: 0, max: 44 }), { minLength: 1, maxLength: 7 }),
  minSpacing: fc.option(fc.integer({ min: 0, max: 6 })),
  boxLength: fc.option(fc.integer({ min: 1, max: 4 })),
});
