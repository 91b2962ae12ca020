import { UNITS_PER_MM } from '../units/length.ts';
import type { PathPoint } from './result.ts';

/** Closer than this two centre lines are one: 1 mm. */
const NEAR = UNITS_PER_MM;

/**
 * Whether two centre lines lie in one another for more than 1 mm of level way: at one height, on one straight line. Runs
 * that only cross, touch end to end or pass at another height do not. Geometry alone; a clearance is another question.
 */
export function liesInOneAnother(a: readonly PathPoint[], b: readonly PathPoint[]): boolean {
  return stretches(a).some((one) => stretches(b).some((other) => overlap(one, other)));
}

interface Stretch {
  readonly from: PathPoint;
  readonly to: PathPoint;
}

function stretches(path: readonly PathPoint[]): readonly Stretch[] {
  return path.slice(1).map((to, index) => ({ from: path[index] ?? to, to }));
}

function overlap(one: Stretch, other: Stretch): boolean {
  const [dx, dy] = [one.to.x - one.from.x, one.to.y - one.from.y];
  const length = Math.hypot(dx, dy);
  if (length <= NEAR) return false;
  const ends = [other.from, other.to].map((point) => {
    const [x, y] = [point.x - one.from.x, point.y - one.from.y];
    return { along: (x * dx + y * dy) / length, aside: (y * dx - x * dy) / length, up: point.z - one.from.z };
  });
  if (ends.some(({ aside, up }) => Math.abs(aside) > NEAR || Math.abs(up) > NEAR)) return false;
  const along = ends.map((end) => end.along);
  return Math.min(length, Math.max(...along)) - Math.max(0, Math.min(...along)) > NEAR;
}
