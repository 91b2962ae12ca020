import type { JSX } from 'preact';
import { EmptyState } from '../../components/empty-state.tsx';
import { SelectField } from '../../components/field.tsx';
import { Filter } from '../../components/filter.tsx';
import { Live } from '../../components/live.tsx';
import { Meter } from '../../components/meter.tsx';
import { Pager, type PagerProps } from '../../components/pager.tsx';
import type { Speech } from '../../words/quality.ts';
import { type FloorRunLine, type FloorTally, RunRow } from './floor/run-row.tsx';
import { type FloorStopLine, Stops } from './floor/stops.tsx';

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
      <p>
        <a class="reach" href={`${path}/plan`}>
          Plan of this floor
        </a>
      </p>
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
