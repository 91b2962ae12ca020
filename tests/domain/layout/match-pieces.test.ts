import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matchJoints, matchPieces, matchSupports } from '../../../src/domain/layout/match-pieces.ts';
import { aLayout, aRun, feet, supportsAt } from '../../support/job.ts';
import { laidOut, lRun } from './l-run.ts';

const layout = (...lengths: number[]) => aLayout(aRun(), lengths);
const match = (before: number[], after: number[]) => matchPieces(layout(...before).pieces, layout(...after).pieces);

describe('pieces from one revision to the next', () => {
  it('stay themselves where nothing changed', () => {
    expect(match([20, 10, 5], [20, 10, 5])).toEqual({
      kept: [
        [0, 0],
        [1, 1],
        [2, 2],
      ],
      removed: [],
      added: [],
    });
  });

  it('stay themselves around one that was put in', () => {
    expect(match([20, 10], [20, 5, 10])).toEqual({
      kept: [
        [0, 0],
        [1, 2],
      ],
      removed: [],
      added: [1],
    });
  });

  it('of several equally long matches take the one that moves least', () => {
    expect(match([20, 20, 20], [20]).kept).toEqual([[0, 0]]);
    expect(match([20], [5, 20, 20]).kept).toEqual([[0, 1]]);
    expect(match([5, 20], [20, 5, 20]).kept).toEqual([
      [0, 1],
      [1, 2],
    ]);
  });

  it('never match across kind or hand', () => {
    const [before, after] = [laidOut(lRun()).pieces, laidOut(lRun({ conductorSide: 'right' })).pieces];
    expect(matchPieces(before, after)).toMatchObject({ removed: [4], added: [4] });
  });

  it('match as many as an exhaustive search, in order, equal to equal', () => {
    const lists = fc.array(fc.constantFrom(5, 10, 20), { maxLength: 6 });
    fc.assert(
      fc.property(lists, lists, (before, after) => {
        const { kept, removed, added } = match(before, after);
        const best = bestMatch(before, after);
        expect(kept).toHaveLength(best.count);
        expect(kept.reduce((sum, [i, j]) => sum + Math.abs(start(before, i) - start(after, j)), 0)).toBe(best.moved);
        for (const [i, j] of kept) expect(before[i]).toBe(after[j]);
        expect([kept.length + removed.length, kept.length + added.length]).toEqual([before.length, after.length]);
      }),
      { numRuns: 400 },
    );
  });
});

describe('joints from one revision to the next', () => {
  const joints = (before: number[], after: number[]) =>
    matchJoints(layout(...before), layout(...after), match(before, after));

  it('stay while both their pieces stay and still meet', () => {
    expect(joints([20, 10, 5, 20], [20, 10, 10, 5, 20])).toEqual({
      kept: [
        [0, 0],
        [2, 3],
      ],
      removed: [1],
      added: [1, 2],
    });
  });

  it('at the feed stay with the first piece', () => {
    const [before, after] = [
      laidOut(lRun()),
      laidOut(lRun({ end: null, legs: [lRun().legs[0]!, { ...lRun().legs[1]!, length: feet(41) }] })),
    ];
    const kept = matchJoints(before, after, matchPieces(before.pieces, after.pieces)).kept;
    expect(kept[0]).toEqual([0, 0]);
  });

  it('of a centre feed are told apart', () => {
    const centre = laidOut(
      aRun({ legs: [{ length: feet(40), turn: 'none', tapsMustFace: null }] }, { kind: 'centre' }),
    );
    const same = matchPieces(centre.pieces, centre.pieces);
    expect(matchJoints(centre, centre, same).kept).toEqual([
      [0, 0],
      [1, 1],
    ]);
  });
});

describe('supports from one revision to the next', () => {
  it('stay where their distance is equal', () => {
    expect(matchSupports(supportsAt(2, 11, 20), supportsAt(2, 12, 20, 29))).toEqual({
      kept: [
        [0, 0],
        [2, 2],
      ],
      removed: [1],
      added: [1, 3],
    });
  });
});

const start = (lengths: readonly number[], index: number) =>
  lengths.slice(0, index).reduce((sum, one) => sum + feet(one), 0);

/** Every way to pair in order, by recursion. */
function bestMatch(
  before: readonly number[],
  after: readonly number[],
  i = 0,
  j = 0,
): { count: number; moved: number } {
  if (i === before.length || j === after.length) return { count: 0, moved: 0 };
  const options = [bestMatch(before, after, i + 1, j), bestMatch(before, after, i, j + 1)];
  if (before[i] === after[j]) {
    const rest = bestMatch(before, after, i + 1, j + 1);
    options.push({ count: rest.count + 1, moved: rest.moved + Math.abs(start(before, i) - start(after, j)) });
  }
  return options.sort((a, b) => b.count - a.count || a.moved - b.moved)[0]!;
}
