import type { Length } from '../units/length.ts';
import type { Facing, RunLayout } from './result.ts';

/**
 * Which way tap-offs face at a distance from the feed; null where taps face up or down (a leg that lies on its side). A corner belongs to the leg
 * after it. For a run that turns north after 60 ft, `facingAt(layout, feet(70))` is the facing of leg 2.
 */
export function facingAt(layout: Pick<RunLayout, 'path' | 'facing'>, at: Length): Facing | null {
  const corners = layout.path.slice(1, -1);
  const leg = 1 + corners.filter((corner) => corner.at <= at).length;
  return layout.facing.find((facing) => facing.leg === leg) ?? null;
}
