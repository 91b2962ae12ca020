import type { JSX } from 'preact';
import type { Finding } from '../../src/domain/finding.ts';
import type { LabourLine } from '../../src/domain/labour/result.ts';
import type { RunCoverings } from '../../src/domain/layout/coverings.ts';
import type { RunLayout } from '../../src/domain/layout/result.ts';
import type { BuswayType, Run, UnitSystem } from '../../src/domain/model.ts';
import type { OpenPoint } from '../../src/domain/quality/run-status.ts';
import { ButtonLink } from '../components/button.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { FindingList } from '../components/finding-list.tsx';
import { Live } from '../components/live.tsx';
import { Part } from '../components/part.tsx';
import { type RunStatus, StatusWord } from '../components/status-word.tsx';
import { openPointWords } from '../words/open-points.ts';
import { UndoButtons } from './design-steps.tsx';
import { CoveringCostPart } from './run/covering-cost.tsx';
import { CoveringsPart } from './run/coverings-part.tsx';
import { FieldHoldPart } from './run/field-hold-part.tsx';
import { RunDrawing } from './run/run-drawing.tsx';
import { RunFacts } from './run/run-facts.tsx';
import { RunHours } from './run/run-hours.tsx';
import { RunRelease, type RunReleaseProps } from './run/run-release.tsx';
import { type Revision, RunRevisions } from './run/run-revisions.tsx';
import { type ReleasedRun, RunThings } from './run/run-things.tsx';

export interface RunPageProps {
  readonly jobId: string;
  readonly runId: string;
  readonly units: UnitSystem;
  readonly currency: string;
  readonly zone: string | undefined;
  readonly levelName: string;
  readonly run: Run;
  readonly type: BuswayType;
  readonly layout: RunLayout;
  readonly released: ReleasedRun | null;
  readonly changed: boolean;
  readonly status: RunStatus;
  readonly open: readonly OpenPoint[];
  readonly findings: readonly Finding[];
  readonly hours: readonly LabourLine[];
  readonly book: { readonly version: string; readonly policy: 'add' | 'compound' } | null;
  readonly revisions: readonly Revision[];
  readonly mayMoney: boolean;
  /** The best coverings, worked only where they are shown. */
  readonly coverings: () => RunCoverings;
  /** null for those who may not release. */
  readonly release: RunReleaseProps | null;
  /** null for those who may not change the design, and where nothing is held. */
  readonly letGo: { readonly csrf: string; readonly version: number } | null;
  /** null for those who may not change the design. */
  readonly undo: Parameters<typeof UndoButtons>[0] | null;
  /** Where the page of a run is, by its label. */
  readonly runHref: (label: string) => string | null;
}

/** One run: its strip, what is found about it, what it is made of and how far each thing is, its hours, its revisions. */
export function RunPage(props: RunPageProps): JSX.Element {
  return (
    <>
      <RunStripLive {...props} />
      <Part title="Checks" id="checks">
        {props.findings.length === 0 ? (
          <EmptyState text="Nothing is found against this design by the rules that are checked here. The maker’s sheet and the local code decide." />
        ) : (
          <FindingList findings={props.findings} units={props.units} />
        )}
      </Part>
      {props.release !== null && <RunRelease {...props.release} />}
      <RunThingsLive {...props} />
      <RunFacts {...props} />
      <RunHours {...props} />
      <FieldHoldPart {...props} />
      <CoveringsPart {...props} coverings={props.coverings()} />
      {props.mayMoney && <CoveringCostPart {...props} />}
      <RunRevisions {...props} />
      {props.undo !== null && (props.undo.undo ?? props.undo.redo) !== null && (
        <Part title="Last change of this design" id="undo">
          <UndoButtons {...props.undo} />
        </Part>
      )}
    </>
  );
}

/** Status and strip, fetched again whenever anybody records something. */
export function RunStripLive(props: RunPageProps): JSX.Element {
  const { jobId, runId, status, open } = props;
  return (
    <Live id="run-strip" href={`/jobs/${jobId}/runs/${runId}?part=strip`}>
      <p class="row">
        <StatusWord status={status} />
        {open.length > 0 && (
          <span>
            <span class="soft">For the next status:</span> {open.map(openPointWords).join('; ')}.
          </span>
        )}
      </p>
      <RunDrawing {...props} />
    </Live>
  );
}

/** The run's things with their states, fetched again likewise. */
export function RunThingsLive(props: RunPageProps): JSX.Element {
  return (
    <Live id="run-things" href={`/jobs/${props.jobId}/runs/${props.runId}?part=things`}>
      <RunThings {...props} />
    </Live>
  );
}

/** At the head of the page. */
export function RunTools({
  jobId,
  runId,
  label,
  mayDesign,
}: {
  jobId: string;
  runId: string;
  label: string;
  mayDesign: boolean;
}): JSX.Element {
  const several = (what: string) => `/jobs/${jobId}/runs/several/${what}?run=${encodeURIComponent(label)}`;
  return (
    <>
      {mayDesign && (
        <>
          <ButtonLink href={`/jobs/${jobId}/runs/${runId}/edit`} kind="lead">
            Edit
          </ButtonLink>
          <ButtonLink href={several('copies')}>Copy</ButtonLink>
          <ButtonLink href={several('partners')}>Make its partner</ButtonLink>
        </>
      )}
    </>
  );
}
