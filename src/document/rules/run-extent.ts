import type { Salvaged } from '../parsing/salvaged.ts';
import type { RunDocument } from '../schema/run.ts';

/**
 * The farthest that a run can reach from its feed, mm, along the centre line: its legs, with the last one at its hard
 * stop where that is farther. Undefined while a length is missing. A branch gives a tee's leg of it away to the tee.
 */
export function greatestLengthMm(run: Salvaged<RunDocument> | undefined): number | undefined {
  const legs = run?.legs;
  if (!legs || legs.length === 0) return undefined;
  let total = 0;
  for (const leg of legs) {
    if (leg?.lengthMm === undefined) return undefined;
    total += leg.lengthMm;
  }
  const last = legs.at(-1)?.lengthMm ?? 0;
  return total - last + Math.max(last, run.end?.hardStopMm ?? 0);
}
