import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Run } from '../../../src/domain/model.ts';
import { compareRevisions, isSameToFloor } from '../../../src/domain/revision/compare-revisions.ts';
import { aLayout, aRun, aTap, feet, supportsAt } from '../../support/job.ts';

const revised = (run: Run, lengths: readonly number[], changes: Parameters<typeof aLayout>[2] = {}, hours = 0) => ({
  run,
  layout: aLayout(run, lengths, changes),
  hours: hours === 0 ? [] : [{ activity: 'joint' as const, hours }],
});

describe('what two revisions of a run differ in', () => {
  it('a 20 ft section made of two 10 ft ones: one piece leaves, two come, one joint of four is new and two are made again', () => {
    const run = aRun();
    const before = revised(run, [20, 20, 20, 10], {}, 1.8);
    const after = revised(run, [20, 10, 10, 20, 10], {}, 2.4);
    const difference = compareRevisions(before, after, [run.id]);
    // Reckoned by hand: sections at 0, 20, 40, 60 ft become 0, 20, 30, 40, 60 ft; the second leaves.
    expect(difference.pieces.removed.map(({ piece }) => piece.from)).toEqual([feet(20)]);
    expect(difference.pieces.added.map(({ piece }) => piece.from)).toEqual([feet(20), feet(30)]);
    expect(difference.pieces).toMatchObject({ moved: [], replaced: [], same: 3 });
    expect(difference.joints.removed.map(({ at }) => at)).toEqual([feet(20), feet(40)]);
    expect(difference.joints.added.map(({ at }) => at)).toEqual([feet(20), feet(30), feet(40)]);
    expect(difference.reopened.insulationTests).toEqual([run.id]);
    expect(difference.reopened.hours).toEqual([{ activity: 'joint', before: 1.8, after: 2.4 }]);
  });

  it('a section put in at the feed moves every other, which stay the pieces they were', () => {
    const run = aRun();
    const { pieces, joints, length } = compareRevisions(revised(run, [20, 10]), revised(run, [5, 20, 10]), []);
    expect(pieces.added.map(({ index }) => index)).toEqual([0]);
    expect(pieces.moved.map(({ before, after }) => after.piece.from - before.piece.from)).toEqual([feet(5), feet(5)]);
    expect(joints.moved.map(({ after }) => after.at)).toEqual([feet(25)]);
    expect(length).toEqual({ before: feet(30), after: feet(35) });
  });

  it('an elbow of the other hand is replaced where it stands, and its joints are made again', () => {
    const run = aRun();
    const elbow = (hand: 'inside' | 'outside') => {
      const base = aLayout(run, [20, 2, 10]);
      return {
        ...base,
        pieces: base.pieces.map((piece, index) => (index === 1 ? { ...piece, kind: 'elbow' as const, hand } : piece)),
      };
    };
    const { pieces, joints } = compareRevisions(
      { run, layout: elbow('inside'), hours: [] },
      { run, layout: elbow('outside'), hours: [] },
      [],
    );
    expect(pieces.replaced.map(({ before, after }) => [before.piece.hand, after.piece.hand])).toEqual([
      ['inside', 'outside'],
    ]);
    expect([pieces.added, pieces.removed]).toEqual([[], []]);
    expect(joints.added).toHaveLength(2);
  });

  it('a tap-off that moves keeps its label; one that serves something else gets a new one; a longer cord is named', () => {
    const run = aRun({
      taps: [aTap(), aTap({ id: 'T2', place: { at: feet(6) } }), aTap({ id: 'T3', place: { at: feet(9) } })],
    });
    const other = aRun({
      taps: [
        aTap({ place: { at: feet(3) } }),
        aTap({ id: 'T2', place: { at: feet(6) }, serves: 'cabinet C9' }),
        aTap({ id: 'T4', place: { at: feet(12) }, drop: feet(7) }),
      ],
    });
    const { taps, reopened } = compareRevisions(revised(run, [20]), revised(other, [20]), [run.id, 'BR']);
    expect(taps.moved.map(({ after }) => [after.tap.id, after.at])).toEqual([['T1', feet(3)]]);
    expect([taps.added, taps.removed].map((list) => list.map(({ tap }) => tap.id))).toEqual([['T4'], ['T3']]);
    expect(reopened.labels.taps).toEqual(['T4', 'T2']);
    expect(reopened.drops).toEqual([
      { tap: 'T3', before: feet(4), after: null },
      { tap: 'T4', before: null, after: feet(7) },
    ]);
    expect(reopened.insulationTests).toEqual([run.id, 'BR']);
  });

  it('a longer cord alone reopens no test and no label', () => {
    const [run, other] = [aRun({ taps: [aTap()] }), aRun({ taps: [aTap({ drop: feet(9) })] })];
    const { reopened, taps } = compareRevisions(revised(run, [20]), revised(other, [20]), [run.id]);
    expect(taps.changed).toHaveLength(1);
    expect(reopened).toMatchObject({ insulationTests: [], labels: { taps: [], joints: [] } });
    expect(reopened.drops).toEqual([{ tap: 'T1', before: feet(4), after: feet(9) }]);
  });

  it('a hanger at another place leaves and comes; one that carries more is to be looked at', () => {
    const run = aRun();
    const heavier = supportsAt(2, 12).map((support) => ({ ...support, loadKg: 40 }));
    const { supports, reopened } = compareRevisions(
      revised(run, [20], { supports: supportsAt(2, 11) }),
      revised(run, [20], { supports: heavier }),
      [],
    );
    expect(supports.removed.map(({ at }) => at)).toEqual([feet(11)]);
    expect(supports.added.map(({ at }) => at)).toEqual([feet(12)]);
    expect(reopened.loads.map(({ after }) => [after.at, after.loadKg])).toEqual([[feet(2), 40]]);
    expect(reopened.insulationTests).toEqual([]);
  });

  it('a run that faces the other side is the same material and not the same hanging: every piece and joint is made again', () => {
    const facing = (relative: 'left' | 'right', compassDeg: number) => [{ leg: 1, compassDeg, relative }];
    const before = revised(aRun(), [20, 20], { supports: supportsAt(2), facing: facing('left', 90) });
    const after = revised(aRun({ conductorSide: 'right' }), [20, 20], {
      supports: supportsAt(2),
      facing: facing('right', 270),
    });
    const { facts, pieces, joints, supports, reopened } = compareRevisions(before, after, ['F1-R1-A']);
    expect(facts).toEqual([
      { fact: 'facing', before: { kind: 'heading', degrees: 90 }, after: { kind: 'heading', degrees: 270 } },
    ]);
    expect(pieces.replaced.map(({ before: { piece } }) => piece.from)).toEqual([0, feet(20)]);
    expect(joints.added).toHaveLength(1);
    expect([supports.same, reopened.rods]).toEqual([1, 0]);
    expect([reopened.turnedOver, reopened.insulationTests]).toEqual([true, ['F1-R1-A']]);
  });

  it('a longer rod changes no piece, and every hanger that stays is taken up again', () => {
    const hung = { supports: supportsAt(2, 11) };
    const before = revised(aRun({ drop: feet(6) }), [20], hung);
    const after = revised(aRun({ drop: feet(7) }), [20], hung);
    const difference = compareRevisions(before, after, []);
    expect(difference.facts).toEqual([
      {
        fact: 'rod-length',
        before: { kind: 'length', length: feet(6) },
        after: { kind: 'length', length: feet(7) },
      },
    ]);
    expect(difference.reopened).toMatchObject({ rods: 2, supports: [], insulationTests: [] });
    expect(isSameToFloor(difference)).toBe(false);
  });

  it('nothing differs between a revision and itself, and the other way round adds what was removed (any lengths)', () => {
    const lengths = fc.array(fc.constantFrom(5, 10, 20), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(lengths, lengths, (a, b) => {
        const run = aRun();
        const [one, two] = [revised(run, a), revised(run, b)];
        expect(isSameToFloor(compareRevisions(one, one, [run.id]))).toBe(true);
        const there = compareRevisions(one, two, []);
        const back = compareRevisions(two, one, []);
        expect(there.pieces.added).toHaveLength(back.pieces.removed.length);
        const { added, moved, replaced, same } = there.pieces;
        expect(added.length + moved.length + replaced.length + same).toBe(b.length);
        expect(isSameToFloor(there)).toBe(String(a) === String(b));
      }),
    );
  });
});
