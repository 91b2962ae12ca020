import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LEVEL, tapDirection, turned } from '../../../src/domain/layout/frame.ts';
import { elbowHand, teeHand } from '../../../src/domain/layout/hands.ts';
import type { Run, Side, Turn } from '../../../src/domain/model.ts';
import { aJob, aRun, feet } from '../../support/job.ts';
import { inFeet, laidOut, layoutType, lRun, messages, rulesOf, straightRun } from './l-run.ts';

const TURNS: readonly Exclude<Turn, 'none'>[] = ['left', 'right', 'up', 'down'];
const flipped = (side: Side): Side => (side === 'left' ? 'right' : 'left');
const mirrored = (turn: Turn): Turn => (turn === 'left' ? 'right' : turn === 'right' ? 'left' : turn);

// Frame and hands: job document, "Meaning" (left h'=u×h, right h'=h×u, up h'=u and u'=−h, down h'=−u and u'=h).
describe('the frame of a run', () => {
  it.each([
    ['left', [0, 1, 0], [0, 0, 1]],
    ['right', [0, -1, 0], [0, 0, 1]],
    ['up', [0, 0, 1], [-1, 0, 0]],
    ['down', [0, 0, -1], [1, 0, 0]],
  ] as const)('turns %s', (turn, heading, up) => {
    expect(turned(LEVEL, turn)).toEqual({ heading, up });
  });

  it('comes back to itself after four turns the same way', () => {
    for (const turn of TURNS) expect(turned(turned(turned(turned(LEVEL, turn), turn), turn), turn)).toEqual(LEVEL);
  });

  it('has taps face the heading turned to the conductor side', () => {
    expect(tapDirection(LEVEL, 'left')).toEqual([0, 1, 0]);
    expect(tapDirection(LEVEL, 'right')).toEqual([0, -1, 0]);
  });
});

describe('the hand of a fitting', () => {
  it.each([
    ['left', 'left', 'inside'],
    ['right', 'right', 'inside'],
    ['left', 'right', 'outside'],
    ['right', 'left', 'outside'],
    ['up', 'left', 'slot-outside'],
    ['down', 'right', 'slot-inside'],
  ] as const)('of an elbow turning %s with the conductors on the %s is %s', (turn, side, hand) => {
    expect(elbowHand(turn, side)).toBe(hand);
  });

  it.each([
    ['left', 'left', 'left', 'near-left'],
    ['left', 'left', 'right', 'near-right'],
    ['left', 'right', 'left', 'far-left'],
    ['right', 'left', 'right', 'far-right'],
  ] as const)('of a tee: parent %s, leaves %s, branch %s is %s', (parent, leaves, branch, hand) => {
    expect(teeHand(parent, leaves, branch)).toBe(hand);
  });

  it('stays what it is when the run is walked the other way, where left is right and so is the conductor side', () => {
    for (const turn of ['left', 'right'] as const) {
      for (const side of ['left', 'right'] as const) {
        expect(elbowHand(turn === 'left' ? 'right' : 'left', flipped(side))).toBe(elbowHand(turn, side));
      }
    }
  });

  it('of a jog, left then right, is one of each kind', () => {
    const legs = [leg(20, 'left'), leg(12, 'right'), leg(20, 'none')];
    const hands = laidOut(aRun({ legs }), layoutType({ factoryCut: cuts })).pieces.flatMap((piece) => piece.hand ?? []);
    expect(hands).toEqual(['inside', 'outside']);
  });

  it('is left open where the sheet says that the fitting is not handed', () => {
    const type = layoutType({ elbow: { leg: feet(1), weightKg: 4, handed: false } });
    expect(laidOut(lRun(), type).pieces.find((piece) => piece.kind === 'elbow')?.hand).toBeNull();
  });
});

describe('a run in the building', () => {
  it('mirrored left to right, mirrors its path and keeps every kind of elbow', () => {
    fc.assert(
      fc.property(runs, (run) => {
        const type = layoutType({ factoryCut: cuts });
        const other: Run = {
          ...run,
          conductorSide: flipped(run.conductorSide),
          legs: run.legs.map((one) => ({ ...one, turn: mirrored(one.turn) })),
        };
        const [here, there] = [laidOut(run, type), laidOut(other, type)];
        expect(there.pieces).toEqual(here.pieces);
        expect(there.joints).toEqual(here.joints);
        expect(there.supports).toEqual(here.supports);
        expect(there.path.map((point) => point.y + 0)).toEqual(here.path.map((point) => 0 - point.y));
      }),
      { numRuns: 150 },
    );
  });

  it('walked the other way, from its end to its feed, orders the same elbows in the other order', () => {
    fc.assert(
      fc.property(runs, (run) => {
        const type = layoutType({ factoryCut: cuts });
        const lengths = run.legs.map((one) => one.length).reverse();
        const turns = [
          ...run.legs
            .slice(0, -1)
            .map((one) => mirrored(one.turn))
            .reverse(),
          'none' as const,
        ];
        const legs = lengths.map((length, i) => ({ length, turn: turns[i]!, tapsMustFace: null }));
        const back = laidOut({ ...run, conductorSide: flipped(run.conductorSide), legs }, type);
        const there = laidOut(run, type);
        expect(back.ok).toBe(there.ok);
        expect(back.pieces.flatMap((piece) => piece.hand ?? []).reverse()).toEqual(
          there.pieces.flatMap((piece) => piece.hand ?? []),
        );
      }),
      { numRuns: 100 },
    );
  });

  it('flipped to the other conductor side, changes every horizontal elbow and turns its taps round', () => {
    const [here, there] = [laidOut(lRun()), laidOut(lRun({ conductorSide: 'right' }))];
    const turn = there.facing.map((facing, i) => (facing.compassDeg - here.facing[i]!.compassDeg + 360) % 360);
    expect(turn).toEqual([180, 180]);
  });

  it.each([
    [-90, 0],
    [360, 90],
    [37.5, 127.5],
    [300, 30],
  ])('heading %d° has its taps face %d°', (headingDeg, compassDeg) => {
    expect(laidOut(straightRun(20, { headingDeg })).facing).toEqual([{ leg: 1, compassDeg, relative: 'left' }]);
  });

  it('goes up a riser and on: its taps face as before, and taps turned on their side are warned of', () => {
    const legs = [leg(22, 'up'), leg(12, 'down'), leg(21, 'none')];
    const layout = laidOut(aRun({ legs, start: { x: 0, y: 0, z: feet(10) } }), layoutType({ factoryCut: cuts }));
    expect(layout.facing.map((facing) => [facing.leg, facing.compassDeg])).toEqual([
      [1, 90],
      [2, 90],
      [3, 90],
    ]);
    expect(layout.path.map((point) => inFeet(point.z))).toEqual([10, 10, 22, 22]);
    expect(layout.pieces.flatMap((piece) => piece.hand ?? [])).toEqual(['slot-outside', 'slot-inside']);
    const rolled = laidOut(
      aRun({ legs: [leg(22, 'up'), leg(12, 'left'), leg(21, 'none')] }),
      layoutType({ factoryCut: cuts }),
    );
    expect(rolled.facing.map((facing) => facing.leg)).toEqual([1, 2]);
    expect(messages(rolled, 'tap.facing')[0]).toContain('Leg 3 lies on its side');
  });

  it('leaves the riser to its own supports', () => {
    const legs = [leg(22, 'up'), leg(12, 'down'), leg(21, 'none')];
    const layout = laidOut(aRun({ legs }), layoutType({ factoryCut: cuts }));
    expect(rulesOf(layout)).toContain('support.riser');
    const places = layout.supports.map((support) => inFeet(support.at));
    expect(places.filter((place) => place > 21 && place < 35)).toEqual([]);
    expect(places.some((place) => place <= 21) && places.some((place) => place >= 35)).toBe(true);
  });

  // By hand, 10 kg/m and elbows of 4 kg: half an elbow hangs on each level part, 2 kg; past the riser 2 + 6.096 x 10 kg in all.
  it('has the hangers past it carry all that is level there, and no more', () => {
    const type = layoutType();
    const elbow = { ...type.elbow!, weightKg: 4 };
    const legs = [leg(21, 'up'), leg(12, 'down'), leg(21, 'none')];
    const { supports } = laidOut(aRun({ legs }), { ...type, weightKgPerM: 10, elbow });
    const past = supports.filter((support) => inFeet(support.at) > 33);
    expect(past.length).toBeGreaterThan(1);
    for (const load of ['loadKg', 'continuousLoadKg'] as const)
      expect(past.reduce((sum, support) => sum + support[load], 0)).toBeCloseTo(62.96, 6);
    // The first has the half elbow, the way to it from the elbow's face at 34 ft, and half of the span after it.
    const [first, second] = past.map((support) => inFeet(support.at) * 0.3048);
    expect(past[0]!.loadKg).toBeCloseTo(2 + 10 * (first! - 34 * 0.3048) + 5 * (second! - first!), 6);
  });
});

describe('a branch', () => {
  const parent = straightRun(70, { id: 'P' });
  const branch = (changes: Partial<Run['feed']> = {}, rest: Partial<Run> = {}) =>
    aRun(
      { id: 'B', legs: [leg(21, 'none')], ...rest },
      { kind: 'tee', fromRun: 'P', at: feet(26), branchSide: 'right', ...changes },
    );
  const job = (one: Run) => ({ runs: [parent, one] });

  it('takes a tee out of its parent, with both its faces as joints', () => {
    const layout = laidOut(parent, layoutType({ factoryCut: cuts }), job(branch()));
    expect(layout.pieces.find((piece) => piece.kind === 'tee')).toEqual({
      from: feet(25),
      to: feet(27),
      kind: 'tee',
      hand: 'far-left',
    });
    expect(layout.joints.map((joint) => joint.at)).toEqual(expect.arrayContaining([feet(25), feet(27)]));
  });

  it('begins at the face of the branch arm, at a right angle to the parent, and owns the joint there', () => {
    const layout = laidOut(branch(), layoutType(), job(branch()));
    expect(layout.path.map((point) => [inFeet(point.x), inFeet(point.y)])).toEqual([
      [26, -1],
      [26, -21],
    ]);
    expect(inFeet(layout.length)).toBe(20);
    expect(layout.joints).toEqual([{ at: 0 }]);
    expect(layout.facing[0]?.compassDeg).toBe(0);
  });

  it('of a branch follows its own parent round a corner', () => {
    const cornered = { ...lRun({ id: 'P' }), crossings: [] };
    const first = branch({ at: feet(70), branchSide: 'left' }, { id: 'B' });
    const second = aRun(
      { id: 'C', legs: [leg(11, 'none')] },
      { kind: 'tee', fromRun: 'B', at: feet(6), branchSide: 'left' },
    );
    const layout = laidOut(second, layoutType({ factoryCut: cuts }), { runs: [cornered, first, second] });
    expect(layout.path.map((point) => [inFeet(point.x), inFeet(point.y)])).toEqual([
      [54, 8],
      [54, -2],
    ]);
  });

  it('keeps a support within reach of its tee, and none is asked for beyond', () => {
    const layout = laidOut(branch(), layoutType(), job(branch()));
    expect(inFeet(layout.supports[0]!.at)).toBeLessThanOrEqual(2);
  });

  it('of a run that is not there, or to no side, is a stop', () => {
    expect(messages(laidOut(branch({ fromRun: 'X' })), 'section.no-cover')[0]).toContain(
      'teed off run X, which is not there',
    );
    const open = branch({ branchSide: null });
    expect(messages(laidOut(open, layoutType(), job(open)), 'section.no-cover')[0]).toContain('not said to which side');
  });

  it('of a parent whose type lists no tee is a stop on both', () => {
    const type = layoutType({ tee: null });
    expect(laidOut(parent, type, job(branch())).ok).toBe(false);
    expect(laidOut(branch(), type, job(branch())).ok).toBe(false);
  });

  it('in a ring of tees ends in a stop, not in a loop', () => {
    const [a, b] = [branch({ fromRun: 'B2' }, { id: 'B1' }), branch({ fromRun: 'B1' }, { id: 'B2' })];
    const layout = laidOut(a, layoutType({ factoryCut: cuts }), aJob({ runs: [a, b] }));
    expect(layout.ok).toBe(false);
    expect(messages(layout, 'section.no-cover')[0]).toContain('itself teed off this one');
  });
});

const cuts = { min: feet(2), max: feet(10), step: feet(0.25) };

function leg(length: number, turn: Turn): Run['legs'][number] {
  return { length: feet(length), turn, tapsMustFace: null };
}

const runs = fc
  .record({
    side: fc.constantFrom('left' as const, 'right' as const),
    legs: fc.array(
      fc.record({
        quarters: fc.integer({ min: 20, max: 120 }),
        turn: fc.constantFrom('left' as const, 'right' as const),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  })
  .map(({ side, legs }) =>
    aRun({ conductorSide: side, legs: [...legs.map((one) => leg(one.quarters / 4, one.turn)), leg(20, 'none')] }),
  );
