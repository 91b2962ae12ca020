import { describe, expect, it } from 'vitest';
import { FEED, piecesAtJoints } from '../../../src/domain/layout/pieces-at-joints.ts';
import { feet } from '../../support/job.ts';

const piece = (from: number, to: number) => ({ from: feet(from), to: feet(to) });
const joint = (at: number) => ({ at: feet(at) });

describe('the pieces that a joint joins', () => {
  it('at the feed one, elsewhere the two that meet', () => {
    expect(piecesAtJoints([piece(0, 20), piece(20, 30)], [joint(0), joint(20)])).toEqual([
      { left: FEED, right: 0 },
      { left: 0, right: 1 },
    ]);
  });

  it('of the two joints of a centre feed the first joins what lies before it, the second what lies after', () => {
    const pieces = [piece(0, 20), piece(20, 40), piece(40, 60)];
    expect(piecesAtJoints(pieces, [joint(20), joint(20), joint(40)])).toEqual([
      { left: 0, right: FEED },
      { left: FEED, right: 1 },
      { left: 1, right: 2 },
    ]);
  });
});
