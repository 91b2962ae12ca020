import type { JSX } from 'preact';
import type { RunLayout } from '../../../src/domain/layout/result.ts';
import type { Run } from '../../../src/domain/model.ts';
import type { RunStatus } from '../../../src/domain/quality/run-status.ts';
import { Live } from '../../components/live.tsx';
import { RunStrip } from '../../components/run-strip.tsx';
import { StatusWord } from '../../components/status-word.tsx';
import type { StripRecord } from '../../drawings/strip.tsx';
import type { Speech } from '../../words/quality.ts';
import type { BesideLink } from './beside.tsx';
import type { FieldTrouble } from './entries.ts';
import type { FloorTally } from './floor/run-row.tsx';
import { NextUp, type NextUpProps } from './next-up.tsx';
import { Group, type GroupOf } from './run/group.tsx';
import { WalkForm, type WalkItem } from './run/walk-form.tsx';
import { RunBar, type RunBarProps } from './run-bar.tsx';
import { type ThingRow, ThingRows } from './thing-rows.tsx';

export interface FieldRunPageProps {
  readonly path: string;
  readonly csrf: string;
  readonly freshId: string;
  readonly say: Speech;
  readonly run: Run;
  readonly layout: RunLayout;
  readonly record: StripRecord;
  readonly bar: Pick<RunBarProps, 'pieces' | 'joints'>;
  readonly status: RunStatus;
  /** The design has moved on: the floor still builds what was released. */
  readonly changed: boolean;
  /** "NORTH"; by leg where legs differ. */
  readonly faces: string | null;
  readonly tally: FloorTally;
  readonly next: NextUpProps | null;
  /** Which group of rows is open. */
  readonly nextGroup: GroupOf | null;
  readonly hangers: readonly ThingRow[];
  readonly pieces: readonly ThingRow[];
  readonly joints: readonly ThingRow[];
  readonly ends: readonly ThingRow[];
  readonly taps: readonly ThingRow[];
  readonly tests: readonly ThingRow[];
  readonly walk: {
    /** What can be recorded several at a time, each with a record of its own. */
    readonly hangers: readonly WalkItem[];
    readonly hangersToAccept: readonly WalkItem[];
    readonly pieces: readonly WalkItem[];
    readonly taps: readonly WalkItem[];
  };
  readonly viewer: { readonly mayInstall: boolean; readonly mayAccept: boolean };
  readonly trouble: FieldTrouble | null;
  readonly officeHref: string;
  readonly floor: BesideLink;
}

/** One run on the phone: which way round, what is next, and every thing of it in working order. */
export function FieldRunPage(props: FieldRunPageProps): JSX.Element {
  const { walk, viewer, officeHref, floor } = props;
  return (
    <>
      <FieldRunLive {...props} />
      {viewer.mayInstall && (
        <>
          <WalkForm {...props} does="hangers" items={walk.hangers} open={props.nextGroup === 'hangers'} />
          <WalkForm {...props} does="pieces" items={walk.pieces} open={false} />
          <WalkForm {...props} does="taps" items={walk.taps} open={false} />
        </>
      )}
      {viewer.mayAccept && <WalkForm {...props} does="accept-hangers" items={walk.hangersToAccept} open={false} />}
      <p class="row">
        <a href={floor.href}>All runs of {floor.mark}</a>
        <a href={officeHref}>Design, checks and hours of this run</a>
      </p>
    </>
  );
}

/** What changes with the work of anybody. */
export function FieldRunLive(props: FieldRunPageProps): JSX.Element {
  const { path, run, layout, record, bar, say, status, faces, changed, next, tally, nextGroup } = props;
  const open = (of: GroupOf) => (nextGroup === of ? ('yes' as const) : ('no' as const));
  return (
    <Live id="run" href={`${path}?part=run`}>
      <div class="stack">
        <p class="row">
          <StatusWord status={status} />
          {faces !== null && <strong class="large">tap-offs face {faces}</strong>}
        </p>
        {changed && (
          <p class="waits">The office is changing this run. Build what was released, and ask before you go on.</p>
        )}
        {next !== null && <NextUp {...next} />}
        <RunBar length={layout.length} pieces={bar.pieces} joints={bar.joints} />
        <details class="narrow-strip">
          <summary>Strip with every distance</summary>
          <RunStrip run={run} layout={layout} record={record} units={say.units} width={340} />
        </details>
        <Group of="hangers" count={tally.supports} open={open('hangers')}>
          <ThingRows rows={props.hangers} label="Hangers" />
        </Group>
        <Group of="pieces" count={tally.pieces} open={open('pieces')}>
          <ThingRows rows={props.pieces} label="Pieces" />
        </Group>
        <Group of="joints" count={tally.joints} open={open('joints')}>
          <ThingRows rows={props.joints} label="Joints" />
        </Group>
        <Group of="ends" count={countOf(props.ends)} open={open('ends')}>
          <ThingRows rows={props.ends} label="Ends and slot" />
        </Group>
        <Group of="taps" count={tally.taps} open={open('taps')}>
          <ThingRows rows={props.taps} label="Tap-offs" />
        </Group>
        <Group of="tests" count={countOf(props.tests)} open={open('tests')}>
          <ThingRows rows={props.tests} label="Tests" />
        </Group>
      </div>
    </Live>
  );
}

function countOf(rows: readonly ThingRow[]) {
  return { done: rows.filter(({ state }) => state === 'accepted' || state === 'closed').length, of: rows.length };
}

/** A run that the office has not released: there is nothing to record on yet. */
export function UnreleasedRunPage({ officeHref, floor }: Pick<FieldRunPageProps, 'officeHref' | 'floor'>): JSX.Element {
  return (
    <>
      <p class="waits">
        The office has not released this run to the floor. Nothing of it is hung or recorded before it is.
      </p>
      <p class="row">
        <a href={floor.href}>All runs of {floor.mark}</a>
        <a href={officeHref}>Its design and what keeps it back</a>
      </p>
    </>
  );
}
