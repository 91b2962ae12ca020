import type { LabourActivity, ThreePoint } from '../model.ts';
import type { Length } from '../units/length.ts';

/**
 * The base hours of one unit of an activity: of the band for the busway's rated current and the piece's length, or the
 * activity's own where no band is for such a piece. The first band that a current or a length does not pass serves it, and
 * the last one also serves anything greater. `length` null: work that has none.
 *
 * Source: the company's labour book (domain rules §4, "base hours by activity and rating band").
 * Example: bands up to 250 A and up to 800 A give a joint of a 400 A busway the hours of the second.
 */
export function baseHours(activity: LabourActivity, length: Length | null, ratedCurrentA: number): ThreePoint {
  const ofRating = bandsFor(activity.bands, ratedCurrentA);
  const plain = ofRating.find((band) => band.upTo === null);
  const byLength = ofRating.filter((band) => band.upTo !== null);
  const band =
    length === null || byLength.length === 0
      ? plain
      : (byLength.find(({ upTo }) => upTo !== null && upTo >= length) ?? plain ?? byLength.at(-1));
  const { low, likely, high } = band ?? activity;
  return { low, likely, high };
}

type Bands = LabourActivity['bands'];

/** All bands where none names a current. */
function bandsFor(bands: Bands, ratedCurrentA: number): Bands {
  const currents = bands.flatMap(({ upToA }) => (upToA === null ? [] : [upToA]));
  if (currents.length === 0) return bands;
  const chosen = currents.find((upToA) => upToA >= ratedCurrentA) ?? currents.at(-1);
  return bands.filter(({ upToA }) => upToA === chosen);
}
