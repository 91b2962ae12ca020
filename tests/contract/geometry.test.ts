import { describe, expect, test } from 'vitest';
import {
  aBranch,
  aJob,
  aRun,
  aTap,
  aType,
  checksOf,
  firstRun,
  type JsonObject,
  jobOf,
  jointsOf,
  leg,
  piecesOf,
  printed,
  rulesOf,
} from './job-text.ts';

const layoutOf = (...legs: JsonObject[]) => firstRun(jobOf(aType(), aRun({ legs }))).layout;
const handsOf = (run: JsonObject, type: JsonObject = {}) =>
  firstRun(jobOf(aType(type), aRun(run)))
    .layout.sections.filter(({ kind }) => kind === 'elbow' || kind === 'tee')
    .map(({ hand }) => hand);
const facingOf = (run: JsonObject) =>
  firstRun(jobOf(aType(), aRun(run))).layout.facing.map(({ compassDeg }) => compassDeg);

describe('"Legs are centre line to centre line; a turn takes the elbow\'s legMm off the legs on both sides"', () => {
  test('legs of 3300 and 3300 with an elbow of 300 leave 3000 and 3000, 6600 along the centre line', () => {
    const run = firstRun(jobOf(aType(), aRun({ legs: [leg(3300, 'left'), leg(3300)] })));
    expect(run.lengthMm).toBe(6600);
    expect(run.layout.sections).toEqual([
      { fromMm: 0, toMm: 3000, kind: 'stock', hand: null },
      { fromMm: 3000, toMm: 3600, kind: 'elbow', hand: 'inside' },
      { fromMm: 3600, toMm: 6600, kind: 'stock', hand: null },
    ]);
    expect(jointsOf(run)).toEqual([3000, 3600]);
  });
  test('a leg between two corners gives a leg of the elbow at each end', () => {
    expect(layoutOf(leg(3300, 'left'), leg(3600, 'right'), leg(3300)).sections.map(({ fromMm }) => fromMm)).toEqual([
      0, 3000, 3600, 6600, 7200,
    ]);
  });
  test('elbows may stand face to face: a leg of two elbow legs has no straight part', () => {
    const run = firstRun(jobOf(aType(), aRun({ legs: [leg(3300, 'left'), leg(600, 'right'), leg(3300)] })));
    expect(piecesOf(run)).toEqual([3000, 'elbow', 'elbow', 3000]);
    expect(jointsOf(run)).toEqual([3000, 3600, 4200]);
  });
  test('a leg shorter than its elbows is a stop', () => {
    const figures = printed(jobOf(aType(), aRun({ legs: [leg(3300, 'left'), leg(599, 'right'), leg(3300)] })));
    expect(figures.runs[0]!.layout.ok).toBe(false);
    expect(figures.checks.filter(({ severity }) => severity === 'stop')).not.toEqual([]);
  });
  test('an elbow may be the first and the last piece', () => {
    const run = firstRun(jobOf(aType(), aRun({ legs: [leg(300, 'left'), leg(300)] })));
    expect(piecesOf(run)).toEqual(['elbow']);
    expect(jointsOf(run)).toEqual([]);
  });
  test('two legs in line, turn "none" between them, have no fitting and are one straight part', () => {
    expect(piecesOf(firstRun(jobOf(aType(), aRun({ legs: [leg(1000), leg(2000)] }))))).toEqual([3000]);
  });
});

describe('"elbow inside (turns towards the conductor side) or outside; vertical elbow slot-outside (up) or slot-inside (down)"', () => {
  test.each([
    ['left', 'left', 'inside'],
    ['left', 'right', 'outside'],
    ['right', 'left', 'outside'],
    ['right', 'right', 'inside'],
    ['left', 'up', 'slot-outside'],
    ['left', 'down', 'slot-inside'],
    ['right', 'up', 'slot-outside'],
    ['right', 'down', 'slot-inside'],
  ])('conductors %s, turn %s: %s', (conductorSide, turn, hand) => {
    expect(handsOf({ conductorSide, legs: [leg(3300, turn), leg(3300)] })).toEqual([hand]);
  });
  test('a jog needs one of each', () => {
    expect(handsOf({ legs: [leg(3300, 'left'), leg(3600, 'right'), leg(3300)] })).toEqual(['inside', 'outside']);
  });
  test('a fitting whose sheet says that it is not handed has no hand', () => {
    const type = { fittings: { elbow: { legMm: 300, weightKg: 0, handed: false } } };
    expect(handsOf({ legs: [leg(3300, 'left'), leg(3600, 'right'), leg(3300)] }, type)).toEqual([null, null]);
  });
});

describe("\"taps face the heading turned 90° to the conductor side\"; frames: left h'=u×h, right h'=h×u, up h'=u u'=−h, down h'=−u u'=h", () => {
  test.each([
    [0, 'left', 90],
    [0, 'right', 270],
    [90, 'left', 180],
    [30, 'left', 120],
    [350, 'left', 80],
    [-90, 'right', 180],
    [-360, 'left', 90],
    [45.5, 'right', 315.5],
  ])('heading %d°, conductors %s: taps face %d°', (headingDeg, conductorSide, compassDeg) => {
    const { facing } = firstRun(jobOf(aType(), aRun({ headingDeg, conductorSide }))).layout;
    expect(facing).toEqual([{ leg: 1, compassDeg, relative: conductorSide }]);
  });
  // h = x, u = z; the face is u×h for the left, h×u for the right.
  test('a left turn turns the face with it: 90 then 180', () => {
    expect(facingOf({ legs: [leg(3300, 'left'), leg(3300)] })).toEqual([90, 180]);
  });
  test('up (h = z, u = −x) and on over (down: h = x, u = z): the face stays 90', () => {
    expect(facingOf({ legs: [leg(3300, 'up'), leg(3600, 'down'), leg(3300)] })).toEqual([90, 90, 90]);
  });
  test('up twice (h = −x, u = −z) goes back upside down, and the face is still 90', () => {
    expect(facingOf({ legs: [leg(3300, 'up'), leg(3600, 'up'), leg(3300)] })).toEqual([90, 90, 90]);
  });
  test('after a turn in plan the riser keeps that face: left, up, down gives 90, 180, 180, 180', () => {
    expect(facingOf({ legs: [leg(3300, 'left'), leg(3600, 'up'), leg(3600, 'down'), leg(3300)] })).toEqual([
      90, 180, 180, 180,
    ]);
  });
  // up: h = z, u = −x; left: h = u×h = (−x)×z = y, u = −x: conductors face u×h = (−x)×y = −z, so plainly down.
  // down from there: h = −u = x, u = y: face u×h = y×x = −z, still down; left: h = u×h = −z, u = y: face y×(−z) = −x.
  test('turned aside on the riser, later legs follow the frame, not the plan', () => {
    const legs = [leg(3300, 'up'), leg(3600, 'left'), leg(3600, 'down'), leg(3600, 'left'), leg(3300)];
    expect(layoutOf(...legs).facing.map((facing) => [facing.leg, facing.compassDeg])).toEqual([
      [1, 90],
      [2, 90],
      [5, 180],
    ]);
  });
});

describe('"A tee stands in its parent run with its centre at the branch\'s feed.atMm"', () => {
  const tee = (parent: JsonObject, branch: JsonObject, atMm = 3300, side = 'left') =>
    printed(jobOf(aType(), aRun({ id: 'P', legs: [leg(6600)], ...parent }), aBranch('B', 'P', atMm, side, branch)));

  test('it takes legMm on each side in the parent, and in the branch, whose 0 is the face of the branch arm', () => {
    const { runs } = tee({}, { legs: [leg(3300)] });
    expect(piecesOf(runs[0]!)).toEqual([3000, 'tee', 3000]);
    expect(jointsOf(runs[0]!)).toEqual([3000, 3600]);
    expect(runs[1]!.lengthMm).toBe(3000);
    expect(piecesOf(runs[1]!)).toEqual([3000]);
    expect(jointsOf(runs[1]!)).toEqual([0]);
  });
  test.each([
    ['left', 'left', 'left', 'near-left'],
    ['left', 'left', 'right', 'near-right'],
    ['left', 'right', 'left', 'far-left'],
    ['left', 'right', 'right', 'far-right'],
    ['right', 'left', 'left', 'far-left'],
    ['right', 'left', 'right', 'far-right'],
    ['right', 'right', 'left', 'near-left'],
    ['right', 'right', 'right', 'near-right'],
  ])('parent conductors %s, branch to the %s with conductors %s: %s', (parentSide, side, branchSide, hand) => {
    const { runs } = tee({ conductorSide: parentSide }, { legs: [leg(3300)], conductorSide: branchSide }, 3300, side);
    expect(runs[0]!.layout.sections[1]).toMatchObject({ kind: 'tee', hand });
  });
  test('the branch heads to its side of the parent: from 0° left to 90°, where conductors on the right face 0°', () => {
    const { runs } = tee({}, { legs: [leg(3300)], conductorSide: 'right' });
    expect(runs[1]!.layout.facing).toEqual([{ leg: 1, compassDeg: 0, relative: 'right' }]);
  });
  test('a branch of a branch, listed before its parent: 0° left to 90°, right to 0°, faces 90°', () => {
    const figures = printed(
      jobOf(
        aType(),
        aBranch('C', 'B', 3300, 'right', { legs: [leg(1800)] }),
        aBranch('B', 'P', 3300, 'left', { legs: [leg(300 + 6600)] }),
        aRun({ id: 'P', legs: [leg(6600)] }),
      ),
    );
    expect(figures.runs.map((run) => piecesOf(run))).toEqual([[1500], [3000, 'tee', 3000], [3000, 'tee', 3000]]);
    expect(figures.runs[0]!.layout.facing[0]!.compassDeg).toBe(90);
    expect(figures.runs[1]!.layout.sections[1]).toMatchObject({ hand: 'far-left' });
  });
  test('a tee beside an elbow shares its joint; overlapping it is a stop', () => {
    const parent = { legs: [leg(3900, 'left'), leg(3300)] };
    const beside = tee(parent, { legs: [leg(3300)] });
    expect(piecesOf(beside.runs[0]!)).toEqual([3000, 'tee', 'elbow', 3000]);
    expect(jointsOf(beside.runs[0]!)).toEqual([3000, 3600, 4200]);
    const over = tee(parent, { legs: [leg(3300)] }, 3301);
    expect(over.runs[0]!.layout.ok).toBe(false);
    expect(rulesOf(over).filter((rule) => rule.startsWith('stop'))).not.toEqual([]);
  });
  test('a tee on the second leg of a parent that turns stands by the distance along the centre line', () => {
    const { runs } = tee({ legs: [leg(3300, 'left'), leg(6900)] }, { legs: [leg(3300)] }, 6900);
    expect(piecesOf(runs[0]!)).toEqual([3000, 'elbow', 3000, 'tee', 3000]);
    expect(runs[1]!.layout.facing[0]!.compassDeg).toBe(270);
  });
  test('a tee may be the first or the last piece of its parent, and not hang over its end', () => {
    expect(piecesOf(tee({ legs: [leg(3600)] }, { legs: [leg(3300)] }, 300).runs[0]!)).toEqual(['tee', 3000]);
    expect(piecesOf(tee({ legs: [leg(3600)] }, { legs: [leg(3300)] }, 3300).runs[0]!)).toEqual([3000, 'tee']);
    expect(tee({ legs: [leg(3600)] }, { legs: [leg(3300)] }, 3301).runs[0]!.layout.ok).toBe(false);
    expect(tee({ legs: [leg(3600)] }, { legs: [leg(3300)] }, 299).runs[0]!.layout.ok).toBe(false);
  });
  test('both arms of two tees in one parent, out of document order', () => {
    const figures = printed(
      jobOf(
        aType(),
        aRun({ id: 'P', legs: [leg(7200)] }),
        aBranch('B', 'P', 5400, 'left', { legs: [leg(1800)] }),
        aBranch('C', 'P', 1800, 'right', { legs: [leg(1800)] }),
      ),
    );
    expect(figures.runs[0]!.layout.sections.map(({ hand, kind }) => (kind === 'tee' ? hand : kind))).toEqual([
      'stock',
      'far-left',
      'stock',
      'near-left',
      'stock',
    ]);
  });
  test('tees of opposite branches cannot stand in one place', () => {
    const figures = printed(
      jobOf(
        aType(),
        aRun({ id: 'P', legs: [leg(6600)] }),
        aBranch('B', 'P', 3300, 'left', { legs: [leg(3300)] }),
        aBranch('C', 'P', 3300, 'right', { legs: [leg(3300)] }),
      ),
    );
    expect(figures.runs[0]!.layout.ok).toBe(false);
  });
  test('a tee that is not handed has no hand, and its weight and legs stay', () => {
    const type = aType({ fittings: { tee: { legMm: 300, weightKg: 0, handed: false } } });
    const figures = printed(
      jobOf(type, aRun({ id: 'P', legs: [leg(6600)] }), aBranch('B', 'P', 3300, 'left', { legs: [leg(3300)] })),
    );
    expect(figures.runs[0]!.layout.sections[1]).toEqual({ fromMm: 3000, toMm: 3600, kind: 'tee', hand: null });
  });
  test('a crossing bars the face joints of a tee: joint.in-crossing', () => {
    const figures = tee({ crossings: [{ atMm: 3600, thicknessMm: 100, kind: 'wall' }] }, { legs: [leg(3300)] });
    expect(checksOf(figures, 'joint.in-crossing')).toMatchObject([{ severity: 'stop', run: 'P', atMm: 3600 }]);
  });
  test('the window of a one-leg branch is measured from the tee, like its leg', () => {
    const { runs } = tee({}, { legs: [leg(4000)], end: { reachMm: 3300, hardStopMm: 3300 } });
    expect(piecesOf(runs[1]!)).toEqual([3000]);
  });
});

describe('centre feeds', () => {
  const centre = (type: JsonObject, run: JsonObject) =>
    printed(jobOf(aType(type), aRun({ feed: { kind: 'centre', atMm: 3000 }, ...run })));
  test('"a centre feed has two" joints where the feed joins, both where it stands', () => {
    const figures = centre({ feed: { joins: true, weightKg: 0 } }, {});
    expect(jointsOf(figures.runs[0]!)).toEqual([3000, 3000]);
  });
  test('pieces meet at the centre feed', () => {
    const figures = centre({}, { feed: { kind: 'centre', atMm: 1500 } });
    expect(piecesOf(figures.runs[0]!)[0]).toBe(1500);
  });
});

describe('"tapsMustFace" against the conductor side', () => {
  test('a leg whose taps must face the other side is a stop tap.facing with its source', () => {
    const figures = printed(
      aJob({
        runs: [
          aRun({
            legs: [leg(3300, 'left', { tapsMustFace: 'left' }), leg(3300, 'none', { tapsMustFace: 'right' })],
            taps: [aTap('A', 1500)],
          }),
        ],
      }),
    );
    expect(checksOf(figures, 'tap.facing')).toMatchObject([{ severity: 'stop', run: 'R' }]);
  });
});
