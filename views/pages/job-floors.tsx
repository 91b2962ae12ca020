import type { JSX } from 'preact';
import type { UnitSystem } from '../../src/domain/model.ts';
import type { OpenPoint } from '../../src/domain/quality/run-status.ts';
import type { Length } from '../../src/domain/units/length.ts';
import { ButtonLink } from '../components/button.tsx';
import { type Column, DataTable } from '../components/data-table.tsx';
import { Drawing } from '../components/drawing.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { LengthText } from '../components/length-text.tsx';
import { Live } from '../components/live.tsx';
import { Meter } from '../components/meter.tsx';
import { Pager, type PagerProps } from '../components/pager.tsx';
import { Part } from '../components/part.tsx';
import { ReleaseForm, type ReleaseFormProps } from '../components/release-form.tsx';
import { type RunStatus, StatusWord } from '../components/status-word.tsx';
import { FloorPlan, type PlanRun } from '../drawings/floor-plan.tsx';
import { openPointWords } from '../words/open-points.ts';

export interface Tally {
  readonly pieces: number;
  readonly joints: number;
  readonly supports: number;
  readonly taps: number;
}

interface Hours {
  readonly budgetHours: number;
  readonly earnedHours: number;
}

export interface FloorSum {
  readonly id: string | null;
  readonly key: string;
  readonly name: string;
  readonly runs: number;
  readonly released: number;
  readonly barred: number;
  readonly planned: Tally;
  readonly done: Tally;
  readonly hours: Hours | null;
}

export interface RunLine {
  readonly id: string;
  readonly key: string;
  readonly area: string | null;
  readonly side: string | null;
  readonly length: Length;
  readonly revision: number;
  readonly changed: boolean;
  readonly status: RunStatus;
  readonly open: readonly OpenPoint[];
  readonly planned: Tally;
  readonly done: Tally;
  readonly hours: Hours | null;
  readonly bars: readonly string[];
}

export interface FloorsPageProps {
  readonly jobId: string;
  readonly units: UnitSystem;
  readonly floors: readonly FloorSum[];
  readonly whole: FloorSum;
  readonly shown: readonly {
    readonly floor: FloorSum;
    readonly runs: readonly RunLine[];
    readonly pager: PagerProps | null;
    readonly plan: readonly PlanRun[] | null;
  }[];
  readonly chosen: string | null;
  /** null for those who may not release. */
  readonly release: ReleaseFormProps | null;
  readonly mayDesign: boolean;
  /** Address of the part that follows changes. */
  readonly liveHref: string;
}

/** The job by floor: where each stands, its runs, and what can be handed to the floor. */
export function FloorsPage(props: FloorsPageProps): JSX.Element {
  return (
    <>
      <FloorsLive {...props} />
      {props.release !== null && props.whole.runs > 0 && <ReleaseForm {...props.release} />}
    </>
  );
}

/** The part that fetches itself again whenever anybody changes the job. */
export function FloorsLive(props: FloorsPageProps): JSX.Element {
  return (
    <Live id="board" href={props.liveHref}>
      <FloorTable {...props} />
      {props.shown.map((one) => (
        <RunsOfFloor key={one.floor.key} {...one} page={props} />
      ))}
    </Live>
  );
}

/** At the head of the page. */
export function FloorsTools({ jobId, mayDesign }: { jobId: string; mayDesign: boolean }): JSX.Element | null {
  if (!mayDesign) return null;
  return (
    <>
      <ButtonLink href={`/jobs/${jobId}/runs/new`}>Add a run</ButtonLink>
      <ButtonLink href={`/jobs/${jobId}/lists`}>Paste a list of runs</ButtonLink>
      <ButtonLink href={`/jobs/${jobId}/runs/several`}>Copy or change several</ButtonLink>
      <ButtonLink href={`/jobs/${jobId}/steps`}>Undo</ButtonLink>
    </>
  );
}

function FloorTable({ jobId, floors, whole, mayDesign }: FloorsPageProps) {
  const foot = floors.length > 1;
  const counted = (head: string, of: keyof Tally): Column<FloorSum> => ({
    head,
    kind: 'number',
    cell: (floor) => said(floor.done[of], floor.planned[of]),
    ...(foot ? { foot: said(whole.done[of], whole.planned[of]) } : {}),
  });
  return (
    <DataTable
      caption="Floors"
      remark="in the order of work"
      rows={floors}
      keyOf={(floor) => floor.key}
      none={
        <EmptyState text="No level yet. Levels come first, then busway types, then runs.">
          {mayDesign && (
            <ButtonLink href={`/jobs/${jobId}/settings#levels`} kind="lead">
              Add levels
            </ButtonLink>
          )}
        </EmptyState>
      }
      columns={[
        {
          head: 'Floor',
          kind: 'name',
          cell: (floor) => (
            <a class="reach" href={`/jobs/${jobId}/floors/${floor.id}`}>
              {floor.name}
            </a>
          ),
          ...(foot ? { foot: whole.name } : {}),
        },
        {
          head: 'Runs released',
          kind: 'number',
          cell: (floor) => (
            <a href={`?floor=${encodeURIComponent(floor.key)}#runs`}>{said(floor.released, floor.runs)}</a>
          ),
          ...(foot ? { foot: said(whole.released, whole.runs) } : {}),
        },
        counted('Pieces hung', 'pieces'),
        counted('Joints accepted', 'joints'),
        counted('Hangers set', 'supports'),
        counted('Tap-offs checked', 'taps'),
        {
          head: 'Hours earned of budget',
          cell: (floor) => (floor.runs === 0 ? '' : <HoursMeter hours={floor.hours} />),
          ...(foot ? { foot: whole.runs === 0 ? '' : <HoursMeter hours={whole.hours} /> } : {}),
        },
        {
          head: 'Barred',
          cell: (floor) => sayBarred(floor.barred),
          ...(foot ? { foot: sayBarred(whole.barred) } : {}),
        },
      ]}
    />
  );
}

interface RunsOfFloorProps {
  readonly floor: FloorSum;
  readonly runs: readonly RunLine[];
  readonly pager: PagerProps | null;
  readonly plan: readonly PlanRun[] | null;
  readonly page: FloorsPageProps;
}

function RunsOfFloor({ floor, runs, pager, plan, page }: RunsOfFloorProps) {
  const { jobId, units, chosen } = page;
  const counted = (head: string, of: keyof Tally): Column<RunLine> => ({
    head,
    kind: 'number',
    cell: (run) => said(run.done[of], run.planned[of]),
  });
  return (
    <Part
      title={floor.name}
      id={chosen === null ? undefined : 'runs'}
      tools={
        <>
          {floor.id !== null && runs.length > 0 && (
            <a href={`/jobs/${jobId}/floors/${floor.id}/plan`}>Plan of {floor.name}</a>
          )}
          {chosen !== null && <a href={`/jobs/${jobId}/floors`}>All floors</a>}
        </>
      }
    >
      {plan !== null && plan.length > 0 && (
        <Drawing label={`Plan of ${floor.name}`}>
          <FloorPlan level={floor.name} runs={plan} units={units} ink="screen" tallest={480} />
        </Drawing>
      )}
      <DataTable
        caption={`Runs of ${floor.name}`}
        remark={String(floor.runs)}
        rows={runs}
        keyOf={(run) => run.id}
        narrow="scrolls"
        none={<EmptyState text="No run hangs here yet." />}
        columns={[
          { head: 'Run', kind: 'name', cell: (run) => <a href={`/jobs/${jobId}/runs/${run.id}`}>{run.key}</a> },
          { head: 'Status', cell: (run) => <StatusWord status={run.status} /> },
          { head: 'Side', cell: (run) => (run.side === null ? '' : <span class="whole">{run.side}-side</span>) },
          { head: 'Length', kind: 'number', cell: (run) => <LengthText length={run.length} units={units} /> },
          counted('Pieces hung', 'pieces'),
          counted('Joints accepted', 'joints'),
          counted('Hangers set', 'supports'),
          counted('Tap-offs checked', 'taps'),
          { head: 'Hours earned', kind: 'number', cell: (run) => sayHours(run.hours) },
          { head: 'With the floor', cell: (run) => sayRevision(run) },
          { head: 'In the way', cell: (run) => <InTheWay run={run} /> },
        ]}
      />
      {pager !== null && <Pager {...pager} />}
    </Part>
  );
}

function InTheWay({ run }: { run: RunLine }) {
  const isDraft = run.revision === 0 || run.changed;
  if (isDraft && run.bars.length > 0)
    return (
      <span class="stop">
        {run.bars[0]}
        {run.bars.length > 1 && <span class="soft"> And {run.bars.length - 1} more.</span>}
      </span>
    );
  if (run.revision === 0) return <span class="soft">nothing: ready to be released</span>;
  return <>{outOfTheOrdinary(run.open).map(openPointWords).join('; ')}</>;
}

/** What the columns beside it already count is left out, and what comes at the end of the work, while work is left. */
function outOfTheOrdinary(open: readonly OpenPoint[]): readonly OpenPoint[] {
  const isCounted = ({ code }: OpenPoint) =>
    code === 'pieces-not-hung' || code === 'supports-not-set' || code === 'joints-not-accepted';
  const isTrouble = ({ code }: OpenPoint) => code === 'pieces-quarantined' || code === 'joints-reopened';
  return open.some(isCounted) ? open.filter(isTrouble) : open;
}

function HoursMeter({ hours }: { hours: Hours | null }) {
  if (hours === null) return <span class="soft">no labour book</span>;
  return <Meter done={hours.earnedHours} planned={hours.budgetHours} of="h" write={(value) => value.toFixed(1)} />;
}

function said(done: number, planned: number): string {
  return `${done} of ${planned}`;
}

function sayHours(hours: Hours | null): string {
  return hours === null ? '' : `${hours.earnedHours.toFixed(1)} of ${hours.budgetHours.toFixed(1)}`;
}

function sayRevision({ revision, changed }: RunLine): string {
  if (revision === 0) return 'not yet';
  return changed ? `rev. ${revision}, changed since` : `rev. ${revision}`;
}

function sayBarred(barred: number): string {
  if (barred === 0) return '';
  return barred === 1 ? 'one run' : `${barred} runs`;
}
