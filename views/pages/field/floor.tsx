import type { JSX } from 'preact';
import type { RunStatus } from '../../../src/domain/quality/run-status.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { EmptyState } from '../../components/empty-state.tsx';
import { SelectField } from '../../components/field.tsx';
import { Filter } from '../../components/filter.tsx';
import { Live } from '../../components/live.tsx';
import { Meter } from '../../components/meter.tsx';
import { Pager, type PagerProps } from '../../components/pager.tsx';
import { Sign } from '../../components/sign.tsx';
import { StatusWord } from '../../components/status-word.tsx';
import { Time } from '../../components/time.tsx';
import type { Speech } from '../../words/quality.ts';
import { RunBar, type RunBarProps } from './run-bar.tsx';

interface Count {
  readonly done: number;
  readonly of: number;
}

export interface FloorTally {
  readonly supports: Count;
  readonly pieces: Count;
  readonly joints: Count;
  readonly taps: Count;
}

export interface FloorStopLine {
  readonly key: string;
  readonly href: string;
  /** "F2-R02-A-P03 in quarantine". */
  readonly what: string;
  readonly reason: string | null;
  readonly by: string | null;
  readonly at: Date | null;
}

export interface FloorRunLine extends RunBarProps {
  readonly id: string;
  readonly key: string;
  readonly href: string;
  readonly length: Length;
  readonly isReleased: boolean;
  readonly status: RunStatus;
  readonly tally: FloorTally;
  readonly next: { readonly words: string; readonly href: string } | null;
  readonly alsoReady: number;
}

export interface FloorPageProps {
  readonly say: Speech;
  readonly levelName: string;
  readonly path: string;
  readonly areas: readonly string[];
  readonly area: string | null;
  readonly whole: FloorTally;
  readonly stops: readonly FloorStopLine[];
  readonly runs: readonly FloorRunLine[];
  readonly pager: PagerProps | null;
  readonly liveHref: string;
}

/** A floor on the phone: what stops the work, the runs in order, and what is next on each. */
export function FloorPage(props: FloorPageProps): JSX.Element {
  const { areas, area, path } = props;
  return (
    <>
      {areas.length > 1 && (
        <Filter action={path} clear={area === null ? null : path} label="Room or area">
          <SelectField
            name="area"
            label="Room or area"
            value={area ?? ''}
            options={[{ value: '', word: 'all of the floor' }, ...areas.map((one) => ({ value: one, word: one }))]}
          />
        </Filter>
      )}
      <FloorLive {...props} />
    </>
  );
}

/** What changes with the work. */
export function FloorLive(props: FloorPageProps): JSX.Element {
  const { whole, runs, pager, liveHref } = props;
  return (
    <Live id="floor" href={liveHref}>
      <div class="stack">
        <Stops {...props} />
        <p class="meters">
          <Meter done={whole.supports.done} planned={whole.supports.of} of="hangers set" />
          <Meter done={whole.pieces.done} planned={whole.pieces.of} of="pieces hung" />
          <Meter done={whole.joints.done} planned={whole.joints.of} of="joints accepted" />
          <Meter done={whole.taps.done} planned={whole.taps.of} of="tap-offs checked" />
        </p>
        {runs.length === 0 ? (
          <EmptyState text="No run hangs here yet." />
        ) : (
          <ul class="floor-runs" aria-label="Runs in order">
            {runs.map((run) => (
              <RunRow key={run.id} run={run} />
            ))}
          </ul>
        )}
        {pager !== null && <Pager {...pager} />}
      </div>
    </Live>
  );
}

function Stops({ stops, say }: FloorPageProps) {
  if (stops.length === 0) return null;
  return (
    <section class="floor-stops" aria-label="What stops the work">
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

function RunRow({ run }: { run: FloorRunLine }) {
  const { key, href, isReleased, status, tally, next, alsoReady } = run;
  return (
    <li>
      <a class="floor-run" href={href}>
        <strong>{key}</strong>
        {isReleased ? <StatusWord status={status} /> : <span>not released</span>}
      </a>
      {isReleased && <RunBar {...run} />}
      {isReleased && <p class="hint">{sayTally(tally)}</p>}
      {next !== null && (
        <a class="floor-next" href={next.href}>
          <span>
            <strong>next:</strong> {next.words}
            {alsoReady > 0 && <span class="hint"> (and {alsoReady} more can begin)</span>}
          </span>
          <span aria-hidden="true">▸</span>
        </a>
      )}
    </li>
  );
}

function sayTally({ supports, pieces, joints, taps }: FloorTally): string {
  const part = (word: string, { done, of }: Count) => `${word} ${done} of ${of}`;
  return [part('hangers', supports), part('pieces', pieces), part('joints', joints), part('tap-offs', taps)].join(
    ' · ',
  );
}
