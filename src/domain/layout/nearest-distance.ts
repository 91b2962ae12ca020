import type { Length } from '../units/length.ts';
import { type Point, pointAt, type RunGeometry } from './geometry.ts';

/** Two places of the run count as equally near within this (1/80 mm): far below what is kept, far above rounding noise. */
const SAME = 1e-6;

/**
 * Distance along the run of its nearest point in plan to a place in the building, rounded once to 1/80 mm;
 * of places equally near, the one closer to the feed.
 */
export function nearestDistance(
  geometry: RunGeometry,
  length: Length,
  place: { readonly x: Length; readonly y: Length },
): Length {
  let best = { at: 0, away: Number.POSITIVE_INFINITY };
  for (const leg of geometry.legs) {
    if (leg.from > length || leg.to < leg.from) continue;
    const to = leg === geometry.legs.at(-1) ? length : Math.min(leg.to, length);
    const found = nearestOnLeg(pointAt(geometry, leg.from), pointAt(geometry, to), place);
    if (found.away < best.away - SAME) best = { at: leg.from + found.share * (to - leg.from), away: found.away };
  }
  return Math.round(best.at);
}

function nearestOnLeg(from: Point, to: Point, place: { readonly x: number; readonly y: number }) {
  const along = { x: to.x - from.x, y: to.y - from.y };
  const square = along.x * along.x + along.y * along.y;
  const dot = (place.x - from.x) * along.x + (place.y - from.y) * along.y;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, dot / square));
  return { share, away: Math.hypot(from.x + share * along.x - place.x, from.y + share * along.y - place.y) };
}
