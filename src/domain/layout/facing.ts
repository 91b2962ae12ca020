import type { Run } from '../model.ts';
import { isVertical, tapDirection } from './frame.ts';
import type { RunGeometry } from './geometry.ts';
import type { Facing } from './result.ts';

/**
 * Which way taps face on each leg: the heading turned 90° to the conductor side, in the leg's own frame, so that the taps of
 * a riser face a compass direction too. Left out is a leg that lies on its side after a riser, where they face up or down.
 */
export function facingOf(run: Run, geometry: RunGeometry): readonly Facing[] {
  return geometry.legs.flatMap((leg, index) => {
    const direction = tapDirection(leg.frame, run.conductorSide);
    if (isVertical(direction)) return [];
    const compassDeg = compass(geometry.axisDeg + quarterTurns(direction[0], direction[1]) * 90);
    return [{ leg: index + 1, compassDeg, relative: run.conductorSide }];
  });
}

/** Degrees from east to north, in [0, 360). `compass(-90)` is 270. */
export function compass(degrees: number): number {
  const within = degrees % 360;
  return within < 0 ? (within + 360) % 360 : within + 0;
}

/** Quarter turns from the run's first axis to a direction along its axes. */
function quarterTurns(ahead: number, left: number): number {
  if (left === 0) return ahead > 0 ? 0 : 2;
  return left > 0 ? 1 : 3;
}
