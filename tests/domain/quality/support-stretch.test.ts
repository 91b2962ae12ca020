import { describe, expect, it } from 'vitest';
import type { PlacedPiece } from '../../../src/domain/layout/result.ts';
import { supportStretch } from '../../../src/domain/quality/support-stretch.ts';
import type { SupportSurroundings } from '../../../src/domain/quality/support-surroundings.ts';
import { judgeSupportPlace } from '../../../src/domain/quality/support-window.ts';
import { feet } from '../../support/job.ts';

// 20 ft along, a riser of 12 ft, 20 ft along again; elbow arms of 1 ft. Invented.
const path = [
  { at: 0, x: 0, y: 0, z: 0 },
  { at: feet(20), x: feet(20), y: 0, z: 0 },
  { at: feet(32), x: feet(20), y: 0, z: feet(12) },
  { at: feet(52), x: feet(40), y: 0, z: feet(12) },
];
const elbow = (from: number, to: number): PlacedPiece => ({
  from: feet(from),
  to: feet(to),
  kind: 'elbow',
  hand: 'slot-inside',
});
const pieces = [elbow(19, 21), elbow(31, 33)];
const around = (planned: number): SupportSurroundings => {
  const stretch = supportStretch(feet(planned), path, pieces, feet(52));
  return {
    stretchStart: stretch.from,
    runLength: stretch.to,
    planned: feet(planned),
    others: [],
    joints: [],
    fittings: [],
    crossings: [],
    noSupport: [],
    structure: { kind: 'continuous' },
    limits: {
      maxSpacing: feet(10),
      maxEndOverhang: feet(2),
      jointClear: null,
      fittingWithin: null,
      crossingClear: null,
    },
  };
};

describe('the stretch that a hanger belongs to', () => {
  it('ends at the face of a riser’s elbow, and begins at the other one’s', () => {
    expect(supportStretch(feet(10), path, pieces, feet(52))).toEqual({ from: 0, to: feet(19) });
    expect(supportStretch(feet(40), path, pieces, feet(52))).toEqual({ from: feet(33), to: feet(52) });
  });

  it('a run without a riser is one stretch', () => {
    expect(supportStretch(feet(10), path.slice(0, 2), [], feet(20))).toEqual({ from: 0, to: feet(20) });
  });

  it('the first hanger past a riser answers for the overhang from its elbow, not from the feed', () => {
    const [start, end] = [feet(33), feet(52)];
    const { broken } = judgeSupportPlace(feet(36), around(35));
    expect(broken).toMatchObject([
      { rule: 'overhang-start', from: start, distance: feet(3), limit: feet(2) },
      { rule: 'overhang-end', from: end, distance: feet(16) },
    ]);
  });
});
