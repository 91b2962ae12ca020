import type { Length } from '../../../src/domain/units/length.ts';
import type { PlanRun, Window } from './props.ts';

/** The smallest part of the level that holds these runs; null when none has a course. */
export function extentOf(runs: readonly PlanRun[]): Window | null {
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let [low, high] = [left, right];
  for (const run of runs) {
    for (const point of run.path) {
      left = Math.min(left, point.x);
      right = Math.max(right, point.x);
      low = Math.min(low, point.y);
      high = Math.max(high, point.y);
    }
  }
  return left > right ? null : { left, right, low, high };
}

/** The same with so much more on each side. */
export function widened(window: Window, by: Length): Window {
  return { left: window.left - by, right: window.right + by, low: window.low - by, high: window.high + by };
}

export const QUARTERS = ['north-west', 'north-east', 'south-west', 'south-east'] as const;
export type Quarter = (typeof QUARTERS)[number];

/** A quarter of the level, and a tenth over its edges so that nothing at a seam is missed. */
export function quarterOf(whole: Window, quarter: Quarter): Window {
  const [width, height] = [whole.right - whole.left, whole.high - whole.low];
  const [over, above] = [width * 0.05, height * 0.05];
  const west = quarter.endsWith('west');
  const south = quarter.startsWith('south');
  return {
    left: west ? whole.left : whole.left + width / 2 - over,
    right: west ? whole.left + width / 2 + over : whole.right,
    low: south ? whole.low : whole.low + height / 2 - above,
    high: south ? whole.low + height / 2 + above : whole.high,
  };
}
