import { type Length, UNITS_PER_MM } from '../../../src/domain/units/length.ts';
import type { PlanRun } from './props.ts';

/** How far apart the nearest two parallel lines of runs hang (legs along x or y); infinite where there is only one. */
export function narrowestGap(runs: readonly PlanRun[]): Length {
  const xs = new Set<number>();
  const ys = new Set<number>();
  for (const { path } of runs) {
    for (let index = 1; index < path.length; index++) {
      const [from, to] = [path[index - 1]!, path[index]!];
      if (from.x !== to.x && from.y === to.y) ys.add(from.y);
      if (from.x === to.x && from.y !== to.y) xs.add(from.x);
    }
  }
  return Math.min(narrowest(xs), narrowest(ys));
}

function narrowest(places: ReadonlySet<number>): number {
  const sorted = [...places].sort((a, b) => a - b);
  let least = Number.POSITIVE_INFINITY;
  for (let index = 1; index < sorted.length; index++) {
    const gap = sorted[index]! - sorted[index - 1]!;
    if (gap > UNITS_PER_MM) least = Math.min(least, gap);
  }
  return least;
}
