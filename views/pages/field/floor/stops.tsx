import { Sign } from '../../../components/sign.tsx';
import { Time } from '../../../components/time.tsx';
import type { FloorPageProps } from '../floor.tsx';

export interface FloorStopLine {
  readonly key: string;
  readonly href: string;
  /** "F2-R02-A-P03 in quarantine". */
  readonly what: string;
  readonly reason: string | null;
  readonly by: string | null;
  readonly at: Date | null;
}

export function Stops({ stops, say }: FloorPageProps) {
  if (stops.length === 0) return null;
  return (
    <section class="faults" aria-label="What stops the work">
      <h2>
        <Sign of="stop" /> What stops the work
      </h2>
      <StopList stops={stops.slice(0, STOPS_SHOWN)} say={say} />
      {stops.length > STOPS_SHOWN && (
        <details>
          <summary>and {stops.length - STOPS_SHOWN} more</summary>
          <StopList stops={stops.slice(STOPS_SHOWN)} say={say} />
        </details>
      )}
    </section>
  );
}

const STOPS_SHOWN = 6;

function StopList({ stops, say }: Pick<FloorPageProps, 'stops' | 'say'>) {
  return (
    <ul class="plain">
      {stops.map((stop) => (
        <li key={stop.key}>
          <a class="reach" href={stop.href}>
            {stop.what}
          </a>
          {stop.reason !== null && <div>{stop.reason}</div>}
          {stop.at !== null && (
            <div class="hint">
              {stop.by}, <Time at={stop.at} zone={say.zone} />
            </div>
          )}
        </li>
      ))}
    </ul>
  );
}
