import type { Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { RunGeometry } from './geometry.ts';
import type { TapPlace } from './joint-bars.ts';
import { nearestDistance } from './nearest-distance.ts';

/** Where each tap of a run stands, in document order: as stated, or at the run's nearest point to what it serves. */
export function tapPlaces(run: Run, geometry: RunGeometry, length: Length): readonly TapPlace[] {
  return run.taps.map((tap) => {
    if ('at' in tap.place) return { tap, at: tap.place.at };
    return { tap, at: nearestDistance(geometry, length, tap.place.near) };
  });
}
