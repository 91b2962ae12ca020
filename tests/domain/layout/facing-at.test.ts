import { describe, expect, it } from 'vitest';
import { facingAt } from '../../../src/domain/layout/facing-at.ts';
import { aRun, feet } from '../../support/job.ts';
import { laidOut } from './l-run.ts';

/** An L: 60 ft east, then north; taps on the left, so they face north and then west. */
const layout = {
  path: [
    { at: 0, x: 0, y: 0, z: 0 },
    { at: feet(60), x: feet(60), y: 0, z: 0 },
    { at: feet(90), x: feet(60), y: feet(30), z: 0 },
  ],
  facing: [
    { leg: 1, compassDeg: 90, relative: 'left' as const },
    { leg: 2, compassDeg: 180, relative: 'left' as const },
  ],
};

describe('which way tap-offs face at a place', () => {
  it('before the corner they face north, after it west', () => {
    expect(facingAt(layout, feet(59))?.compassDeg).toBe(90);
    expect(facingAt(layout, feet(61))?.compassDeg).toBe(180);
  });

  it('legs that go straight on count as legs: past the corner they face as the leg there does', () => {
    const leg = (length: number, turn: 'none' | 'left') => ({ length: feet(length), turn, tapsMustFace: null });
    const run = aRun({ legs: [leg(20, 'none'), leg(21, 'left'), leg(20, 'none'), leg(22, 'left'), leg(21, 'none')] });
    const laid = laidOut(run);
    // East, north, west: with the conductors on the left taps face north, west, south.
    expect([10, 30, 50, 75, 90].map((at) => facingAt(laid, feet(at))?.compassDeg)).toEqual([90, 90, 180, 180, 270]);
  });

  it('on a riser they face as on the legs below and above it', () => {
    const leg = (length: number, turn: 'none' | 'up' | 'down') => ({ length: feet(length), turn, tapsMustFace: null });
    const laid = laidOut(aRun({ legs: [leg(10, 'none'), leg(11, 'up'), leg(12, 'down'), leg(21, 'none')] }));
    expect([5, 15, 28, 40].map((at) => facingAt(laid, feet(at))?.compassDeg)).toEqual([90, 90, 90, 90]);
  });

  it('a leg that lies on its side faces no compass point', () => {
    expect(facingAt({ ...layout, facing: layout.facing.slice(0, 1) }, feet(80))).toBeNull();
  });
});
