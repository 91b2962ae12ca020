import type { Side, Turn } from '../model.ts';

export type Vector = readonly [number, number, number];

/** How a piece lies: its heading along increasing distance, and `up`, away from the slot. Both along the run's own axes. */
export interface Frame {
  readonly heading: Vector;
  readonly up: Vector;
}

/** A run starts level, slot down, along its own first axis; the second axis is to the left, the third up. */
export const LEVEL: Frame = { heading: [1, 0, 0], up: [0, 0, 1] };

/**
 * The frame after a turn: left h'=u×h, right h'=h×u, up h'=u and u'=−h, down h'=−u and u'=h.
 * `turned(LEVEL, 'left').heading` is `[0, 1, 0]`.
 */
export function turned(frame: Frame, turn: Turn): Frame {
  const { heading, up } = frame;
  switch (turn) {
    case 'none':
      return frame;
    case 'left':
      return { heading: cross(up, heading), up };
    case 'right':
      return { heading: cross(heading, up), up };
    case 'up':
      return { heading: up, up: opposite(heading) };
    case 'down':
      return { heading: opposite(up), up: heading };
  }
}

/** The way that taps face: the heading turned 90° to the conductor side. `tapDirection(LEVEL, 'left')` is `[0, 1, 0]`. */
export function tapDirection(frame: Frame, conductorSide: Side): Vector {
  return turned(frame, conductorSide).heading;
}

export function isVertical(direction: Vector): boolean {
  return direction[2] !== 0;
}

// The noughts added keep a minus sign from standing before a nought.
function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1] + 0, a[2] * b[0] - a[0] * b[2] + 0, a[0] * b[1] - a[1] * b[0] + 0];
}

function opposite(a: Vector): Vector {
  return [0 - a[0], 0 - a[1], 0 - a[2]];
}
