import type { Length } from '../units/length.ts';
import type { Facing, PathPoint, RunLayout } from './result.ts';

/**
 * Which way tap-offs face at a distance from the feed; null where taps face up or down (a leg that lies on its side). A corner
 * belongs to the leg after it. For a run that turns north after 60 ft, `facingAt(layout, feet(70))` is the facing of leg 2.
 */
export function facingAt(layout: Pick<RunLayout, 'path' | 'facing'>, at: Length): Facing | null {
  const { path, facing } = layout;
  const corners = path.slice(1, -1).filter((corner) => corner.at <= at).length;
  let place: LegPlace = { leg: 0, facing: null };
  for (let stretch = 0; stretch <= corners; stretch++) {
    const [from, to] = [path[stretch], path[stretch + 1]];
    if (from !== undefined && to !== undefined) place = legAfter(place.leg, facing, from, to);
  }
  return place.facing;
}

interface LegPlace {
  readonly leg: number;
  readonly facing: Facing | null;
}

/** Legs that go straight on have no corner between them: the next stretch is the next leg whose taps face square to it. */
function legAfter(before: number, facing: readonly Facing[], from: PathPoint, to: PathPoint): LegPlace {
  for (let leg = before + 1; ; leg++) {
    const own = facing.find((one) => one.leg === leg) ?? null;
    if (own === null || before === 0 || isSquare(own, from, to)) return { leg, facing: own };
  }
}

/** Degrees: far above what rounding the path's points makes, far below a quarter turn. */
const NEARLY = 10;

/** Taps face square to a level stretch, and any way on a riser. */
function isSquare({ compassDeg }: Facing, from: PathPoint, to: PathPoint): boolean {
  const [x, y] = [to.x - from.x, to.y - from.y];
  if (Math.hypot(x, y) < 1) return true;
  const turn = Math.abs(compassDeg - (Math.atan2(y, x) * 180) / Math.PI) % 180;
  return Math.abs(turn - 90) < NEARLY;
}
