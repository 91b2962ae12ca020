import type { Length } from '../units/length.ts';

/** A direction in plan, of length 1. */
export interface Direction {
  readonly x: number;
  readonly y: number;
}

/**
 * A box or a stretch of housing: an upright block over a rectangle in plan. Centre and half sizes in 1/80 mm; `halfUp` null
 * is a height that nobody has stated.
 */
export interface Solid {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly along: Direction;
  readonly out: Direction;
  readonly halfAlong: number;
  readonly halfOut: number;
  readonly halfUp: number | null;
}

/** Shifts, or distances along a run, between two ends that are themselves free. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/** Closer than this (1/80 mm) to a limit is at the limit: far above rounding noise, far below what is kept. */
const SAME = 1e-3;
/** Directions whose product is less than this are square to each other. */
const SQUARE = 1e-9;

/**
 * By how much the first solid may be shifted along its run and stand in the second: an open interval, null for never. In plan
 * alone; heights are another question (`heightsMeet`). Two convex shapes meet when no line parallel to a side of either
 * parts them (separating axes), and each such line lets through one interval of shifts.
 *
 * @example shiftsThatMeet(box, facing) // { from: -200, to: 600 }
 */
export function shiftsThatMeet(a: Solid, b: Solid): Interval | null {
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let side = 0; side < 4; side++) {
    const axis = axisOf(a, b, side);
    const reach = radius(a, axis) + radius(b, axis);
    const away = (b.x - a.x) * axis.x + (b.y - a.y) * axis.y;
    const speed = dot(a.along, axis);
    if (Math.abs(speed) < SQUARE) {
      if (Math.abs(away) > reach - SAME) return null;
      continue;
    }
    const [one, other] = [(away - reach) / speed, (away + reach) / speed];
    from = Math.max(from, Math.min(one, other));
    to = Math.min(to, Math.max(one, other));
  }
  return to - from > SAME ? { from: cleaned(from), to: cleaned(to) } : null;
}

/** Whether two solids stand in one another in plan. */
export function meets(a: Solid, b: Solid): boolean {
  for (let side = 0; side < 4; side++) {
    const axis = axisOf(a, b, side);
    const away = (b.x - a.x) * axis.x + (b.y - a.y) * axis.y;
    if (Math.abs(away) > radius(a, axis) + radius(b, axis) - SAME) return false;
  }
  return true;
}

/** Whether two solids overlap in height; at one height they do, however high they are. */
export function heightsMeet(a: Solid, b: Solid): 'yes' | 'no' | 'unknown' {
  const away = Math.abs(a.z - b.z);
  if (away < SAME) return 'yes';
  if (away < (a.halfUp ?? 0) + (b.halfUp ?? 0) - SAME) return 'yes';
  return a.halfUp === null || b.halfUp === null ? 'unknown' : 'no';
}

/** The same solid standing out so much further. Written out, since it is asked for hundreds of thousands of times. */
export function deeper(solid: Solid, by: Length): Solid {
  const { x, y, z, along, out, halfAlong, halfOut, halfUp } = solid;
  const half = by / 2;
  return { x: x + out.x * half, y: y + out.y * half, z, along, out, halfAlong, halfOut: halfOut + half, halfUp };
}

/** The same solid so much longer at both ends, its middle shifted along. */
export function longer(solid: Solid, shift: number, by: number): Solid {
  const { x, y, z, along, out, halfAlong, halfOut, halfUp } = solid;
  return { x: x + along.x * shift, y: y + along.y * shift, z, along, out, halfAlong: halfAlong + by, halfOut, halfUp };
}

/**
 * The room before a solid until another stands in it, up to what is needed: whole 1/80 mm. Where the two lie square it is
 * read off; where they lie askew, found by halving.
 */
export function roomBefore(solid: Solid, other: Solid, needed: Length): Length {
  if (needed === 0 || !meets(deeper(solid, needed), other)) return needed;
  const turn = Math.abs(dot(solid.along, other.along));
  if (turn < SQUARE || turn > 1 - SQUARE) {
    const away = (other.x - solid.x) * solid.out.x + (other.y - solid.y) * solid.out.y;
    return Math.max(0, Math.floor(away - solid.halfOut - radius(other, solid.out) + SAME));
  }
  let [free, taken] = [0, needed];
  while (taken - free > 1) {
    const middle = (free + taken) >> 1;
    if (meets(deeper(solid, middle), other)) taken = middle;
    else free = middle;
  }
  return free;
}

export function dot(a: Direction, b: Direction): number {
  return a.x * b.x + a.y * b.y;
}

function axisOf(a: Solid, b: Solid, side: number): Direction {
  return side === 0 ? a.along : side === 1 ? a.out : side === 2 ? b.along : b.out;
}

/** Half of what a solid takes along an axis. `radius(box, box.out)` is `box.halfOut`. */
export function radius(solid: Solid, axis: Direction): number {
  return solid.halfAlong * Math.abs(dot(solid.along, axis)) + solid.halfOut * Math.abs(dot(solid.out, axis));
}

/** Without the noise of a whole or a half unit. */
function cleaned(value: number): number {
  const near = Math.round(value * 2) / 2;
  return Math.abs(value - near) < SAME ? near : value;
}
