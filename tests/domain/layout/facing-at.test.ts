import { describe, expect, it } from 'vitest';
import { facingAt } from '../../../src/domain/layout/facing-at.ts';
import { feet } from '../../support/job.ts';

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

  it('a leg that lies on its side faces no compass point', () => {
    expect(facingAt({ ...layout, facing: layout.facing.slice(0, 1) }, feet(80))).toBeNull();
  });
});
