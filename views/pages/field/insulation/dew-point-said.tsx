import type { JSX } from 'preact';
import { DEW_POINT_MARGIN_K } from '../../../../src/domain/quality/insulation/dew-point.ts';
import { Sign } from '../../../components/sign.tsx';
import { degrees } from '../../../words/quality/figures.ts';

export interface DewPoint {
  readonly dewPointC: number;
  readonly surfaceTempC: number | null;
}

/** The dew point of the air, and whether the surface is far enough above it to be tested. */
export function DewPointSaid({ dewPoint }: { dewPoint: DewPoint }): JSX.Element {
  const { dewPointC, surfaceTempC } = dewPoint;
  const leastC = dewPointC + DEW_POINT_MARGIN_K;
  const asked = `Dew point ${degrees(dewPointC)}; the surface must be at ${degrees(leastC)} at least`;
  if (surfaceTempC === null) return <p class="verdict">{asked}.</p>;
  if (surfaceTempC >= leastC)
    return (
      <p class="verdict">
        <Sign of="done" /> {asked}, and is at {degrees(surfaceTempC)}.
      </p>
    );
  return (
    <p class="verdict stop">
      <Sign of="stop" /> <strong>Hold.</strong> {asked}, and is at {degrees(surfaceTempC)}. Warm and dry the room, wait,
      and test then.
    </p>
  );
}
