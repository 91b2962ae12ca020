import type { JSX } from 'preact';
import type { RunLayout } from '../../../src/domain/layout/result.ts';
import { compassWord } from '../../drawings/compass.ts';

/** Which way tap-offs face, leg by leg, before anything is hung. */
export function FacingWords({ layout }: { layout: Pick<RunLayout, 'facing'> }): JSX.Element | null {
  const { facing } = layout;
  if (facing.length === 0) return null;
  const same = facing.every((leg) => leg.compassDeg === facing[0]?.compassDeg);
  const first = facing[0];
  if (same && first !== undefined)
    return (
      <p>
        <strong>Tap-offs face {compassWord(first.compassDeg)}</strong>, {first.relative} of the way from the feed.
      </p>
    );
  return (
    <p>
      <strong>
        Tap-offs face {facing.map((leg) => `${compassWord(leg.compassDeg)} on leg ${leg.leg}`).join(', ')}
      </strong>
      , {first?.relative} of the way from the feed.
    </p>
  );
}
