import type { PathPoint } from '../../../src/domain/layout/result.ts';
import type { Length } from '../../../src/domain/units/length.ts';

/** A straight bit of a run in plan, from one point to another. */
export interface PathPart {
  readonly from: { readonly x: Length; readonly y: Length };
  readonly to: { readonly x: Length; readonly y: Length };
}

/** The straight bits of the run between two distances; a vertical leg shows as a bit without length. */
export function pathParts(path: readonly PathPoint[], from: Length, to: Length): PathPart[] {
  const parts: PathPart[] = [];
  for (let index = 1; index < path.length; index++) {
    const start = path[index - 1]!;
    const end = path[index]!;
    const first = Math.max(from, start.at);
    const last = Math.min(to, end.at);
    if (first < last) parts.push({ from: between(start, end, first), to: between(start, end, last) });
  }
  return parts;
}

/** Where a distance is in plan, and which way the run heads there (radians, anticlockwise from +x); null on a vertical leg. */
export function placeOnPath(path: readonly PathPoint[], at: Length) {
  for (let index = 1; index < path.length; index++) {
    const start = path[index - 1]!;
    const end = path[index]!;
    if (at > end.at && index < path.length - 1) continue;
    const level = start.x !== end.x || start.y !== end.y;
    return { ...between(start, end, at), heading: level ? Math.atan2(end.y - start.y, end.x - start.x) : null };
  }
  return null;
}

function between(start: PathPoint, end: PathPoint, at: Length) {
  const part = end.at === start.at ? 0 : (at - start.at) / (end.at - start.at);
  return { x: start.x + (end.x - start.x) * part, y: start.y + (end.y - start.y) * part };
}
