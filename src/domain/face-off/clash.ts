import type { Length } from '../units/length.ts';
import {
  deeper,
  dot,
  heightsMeet,
  type Interval,
  longer,
  meets,
  roomBefore,
  type Solid,
  shiftsThatMeet,
} from './solid.ts';
import { boxAt, type Obstacle, type StandingRun, type Stretch } from './standing.ts';

/** A tap's box and what it has too little room from. */
export interface Clash {
  readonly other: Obstacle;
  /** `overlap`: in the same space; `height`: in plan so, and whether in height is not known; `room`: too near before a box. */
  readonly kind: 'overlap' | 'height' | 'room';
  /** Room there is before the box, and room needed. */
  readonly there: Length;
  readonly needed: Length;
  /** How far the two reach into each other along the way the box faces; 0 where they do not. */
  readonly overlap: Length;
  /** How much farther apart there would be room. */
  readonly apart: Length;
  /** They face each other, or the box faces the housing of a parallel run. */
  readonly isSquare: boolean;
  /** The room belongs to the other box alone: this one stands in it. */
  readonly isOthersRoom: boolean;
  readonly isHeightKnown: boolean;
}

/** Along a run, where a tap's centre would clash with one obstacle. */
export type ClashBar = Interval;

/** Whether a tap's box has too little room from an obstacle, where it stands; null when there is enough. */
export function clashOf(box: Solid, clear: Length, other: Obstacle): Clash | null {
  const height = heightsMeet(box, other.solid);
  if (height === 'no') return null;
  const isHeightKnown = height === 'yes';
  const isSquare = other.tap === null ? isParallel(box, other.solid) : dot(box.out, other.solid.out) < -PARALLEL;
  const common = { other, isSquare, isHeightKnown };
  const othersClear = other.tap?.clear ?? 0;
  if (meets(box, other.solid)) {
    const kind = isHeightKnown ? 'overlap' : 'height';
    const [overlap, needed] = [overlapOf(box, other.solid), Math.max(clear, othersClear)];
    return { ...common, kind, there: 0, needed, overlap, apart: overlap + needed, isOthersRoom: false };
  }
  const own = { there: roomBefore(box, other.solid, clear), needed: clear };
  const others = { there: roomBefore(other.solid, box, othersClear), needed: othersClear };
  const isOthersRoom = others.needed - others.there > own.needed - own.there;
  const { there, needed } = isOthersRoom ? others : own;
  if (there >= needed) return null;
  return { ...common, kind: 'room', there, needed, overlap: 0, apart: needed - there, isOthersRoom };
}

/** Distances on a stretch where the box of one of the run's taps would clash with an obstacle; none for one out of its height. */
export function barsOn(run: StandingRun, stretch: Stretch, other: Obstacle): readonly ClashBar[] {
  const box = boxAt(run, stretch, stretch.from);
  if (box === null || heightsMeet(box, other.solid) === 'no') return [];
  const clear = run.type.tapFront.clearRoom ?? 0;
  const pairs: (readonly [Solid, Solid])[] = [[deeper(box, clear), other.solid]];
  if (other.tap !== null) pairs.push([box, deeper(other.solid, other.tap.clear)]);
  return pairs.flatMap(([one, two]) => {
    const shifts = shiftsThatMeet(one, two);
    if (shifts === null) return [];
    // The stretch's own ends are barred with the rest, and nothing of the next leg.
    const from = Math.max(stretch.from - 0.5, stretch.from + shifts.from);
    const to = Math.min(stretch.to + 0.5, stretch.from + shifts.to);
    return from < to ? [{ from, to }] : [];
  });
}

/** The box of a tap with the room before it: what has to be looked around for. */
export function withRoom(box: Solid, clear: Length): Solid {
  return deeper(box, clear);
}

/** The solid that every box of a run's stretch stands in with its room, wherever along it. */
export function sweptBox(run: StandingRun, stretch: Stretch): Solid | null {
  const box = boxAt(run, stretch, stretch.from);
  if (box === null) return null;
  const half = (stretch.to - stretch.from) / 2;
  return withRoom(longer(box, half, half), run.type.tapFront.clearRoom ?? 0);
}

/** Directions whose product is more than this are one. */
const PARALLEL = 1 - 1e-9;

function isParallel(a: Solid, b: Solid): boolean {
  return Math.abs(dot(a.along, b.along)) > PARALLEL;
}

function overlapOf(box: Solid, other: Solid): Length {
  const away = (other.x - box.x) * box.out.x + (other.y - box.y) * box.out.y;
  return Math.max(0, Math.round(box.halfOut + other.halfOut - away));
}
