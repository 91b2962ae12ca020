import type { Length } from '../units/length.ts';
import { pointAt, type RunGeometry } from './geometry.ts';
import type { PathPoint } from './result.ts';

/** The centre line as points in the building: the start, each corner and the end, rounded once to 1/80 mm. */
export function pathPoints(geometry: RunGeometry, length: Length): readonly PathPoint[] {
  const corners = geometry.legs
    .filter((leg) => leg.turn !== 'none' && leg.to > 0 && leg.to < length)
    .map((leg) => leg.to);
  return [0, ...corners, length].map((at) => {
    const { x, y, z } = pointAt(geometry, at);
    return { at, x: whole(x), y: whole(y), z: whole(z) };
  });
}

/** Rounded, without the minus sign of a rounded nought. */
function whole(value: number): Length {
  return Math.round(value) + 0;
}
