import { describe, expect, it } from 'vitest';
import { layoutJob } from '../../../src/domain/layout/layout-job.ts';
import { handSeen, sideRemedy } from '../../../src/domain/quality/piece-side.ts';
import { aJob, aLevel, aRun, aTap, feet } from '../../support/job.ts';
import { laidOut, layoutType, lRun, messages, straightRun } from './l-run.ts';

// The job map's bad entries 1 to 15, as far as messages.test.ts does not have them (4 to 8, 11 to 13 stand there).
describe('what else is said of a bad entry', () => {
  it('3: a run that hangs above its structure', () => {
    const level = aLevel({ structureHeight: feet(16) });
    const high = straightRun(70, { start: { x: 0, y: 0, z: feet(17.25) } });
    expect(messages(laidOut(high, layoutType(), { levels: [level] }), 'run.above-structure')).toEqual([
      `The centre of the run is 17'-3" above the floor from 0" on, and the structure of Floor 1 is at 16'-0": 1'-3" too high. ` +
        `Lower the run, or correct the structure's height.`,
    ]);
    const under = straightRun(70, { start: { x: 0, y: 0, z: feet(16) } });
    expect(messages(laidOut(under, layoutType(), { levels: [level] }), 'run.above-structure')).toEqual([]);
    expect(messages(laidOut(high), 'run.above-structure')).toEqual([]);
  });

  it('3: nor is a run that has passed through the floor above too high for it', () => {
    const level = aLevel({ structureHeight: feet(16) });
    const riser = aRun({
      start: { x: 0, y: 0, z: feet(10) },
      legs: [
        { length: feet(11), turn: 'up', tapsMustFace: null },
        { length: feet(17), turn: 'right', tapsMustFace: null },
        { length: feet(11), turn: 'none', tapsMustFace: null },
      ],
      crossings: [{ at: feet(19), thickness: feet(1), kind: 'floor', fireRatingMin: 120 }],
    });
    expect(messages(laidOut(riser, layoutType(), { levels: [level] }), 'run.above-structure')).toEqual([]);
  });

  it('9: a jog takes one elbow inside and one outside, whatever was listed', () => {
    // An elbow takes 1 ft of each leg: 20 ft are left to cover of every one.
    const leg = (length: number, turn: 'left' | 'right' | 'none') => ({
      length: feet(length),
      turn,
      tapsMustFace: null,
    });
    const jog = laidOut(aRun({ legs: [leg(21, 'left'), leg(22, 'right'), leg(21, 'none')] }));
    const elbows = jog.pieces.filter((piece) => piece.kind === 'elbow');
    expect(elbows.map((piece) => piece.hand)).toEqual(['inside', 'outside']);
    // The second elbow that came as inside again: seen the other way round it is no part of this jog.
    expect(handSeen('outside', 'left', 'right')).toBe('inside');
    expect(sideRemedy(elbows[1]!)).toBe('reorder');
  });

  it('10: a straight section on the other side is turned end for end', () => {
    const [piece] = laidOut(straightRun(20)).pieces;
    expect(sideRemedy(piece!)).toBe('turn');
  });

  it('15: a hanger capacity that nobody entered is unknown, not passed', () => {
    const run = straightRun(20, { supportCapacityKg: null });
    const found = laidOut(run).findings.filter((finding) => finding.message.startsWith('What one hanger may carry'));
    expect(found).toMatchObject([
      {
        rule: 'limit.unknown',
        severity: 'warning',
        message:
          'What one hanger may carry is not stated: no load was held to it. Enter it; until then this is unknown, not a pass.',
      },
    ]);
  });
});

describe('a tap anchored to what it serves', () => {
  const rack = { near: { x: feet(30), y: feet(-4) } };

  it('keeps its plan position when the route moves, and its distance follows', () => {
    const run = straightRun(70, { taps: [aTap({ place: rack })] });
    const moved = { ...run, start: { ...run.start, x: feet(5) } };
    expect(laidOut(run).taps.map(({ at }) => at)).toEqual([feet(30)]);
    expect(laidOut(moved).taps.map(({ at }) => at)).toEqual([feet(25)]);
    expect(moved.taps[0]?.place).toEqual(rack);
  });

  it('follows a branch when the tee that feeds it moves along its parent', () => {
    const at = (tee: number) => {
      const parent = straightRun(70);
      const branch = aRun(
        {
          id: 'BR',
          legs: [{ length: feet(31), turn: 'none', tapsMustFace: null }],
          taps: [aTap({ place: { near: { x: feet(40), y: feet(20) } } })],
        },
        { kind: 'tee', fromRun: parent.id, at: feet(tee), branchSide: 'left' },
      );
      return layoutJob(aJob({ types: [layoutType()], runs: [parent, branch] }))[1]!.taps[0]!.at;
    };
    // The branch begins at the face of the tee's arm, 1 ft from the parent's centre line, and runs north.
    expect([at(31), at(41)]).toEqual([feet(19), feet(19)]);
  });

  it('moves to the other leg when the corner passes it', () => {
    const place = { near: { x: feet(70), y: feet(20) } };
    const long = lRun({ taps: [aTap({ place })] });
    expect(laidOut(long).taps[0]?.at).toBe(feet(61 + 20));
  });
});
