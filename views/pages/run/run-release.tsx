import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import type { RevisionDifference } from '../../../src/domain/revision/difference.ts';
import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { Part } from '../../components/part.tsx';
import { RevisionChanges } from '../revisions/revision-changes.tsx';

export interface RunReleaseProps {
  readonly jobId: string;
  readonly runId: string;
  readonly label: string;
  readonly csrf: string;
  readonly submissionId: string;
  readonly revision: number;
  readonly changed: boolean;
  readonly bars: readonly string[];
  /** What the release would do to what the floor has; null for a first release, and where the design has no layout. */
  readonly difference: RevisionDifference | null;
  readonly units: UnitSystem;
}

/** Hands this one run to the floor, or says why not yet. */
export function RunRelease(props: RunReleaseProps): JSX.Element | null {
  const { jobId, runId, label, csrf, submissionId, revision, changed, bars } = props;
  if (revision > 0 && !changed) return null;
  return (
    <Part title="Release to the floor" id="release">
      {props.difference !== null && (
        <>
          <h3>What releasing this now would do</h3>
          <RevisionChanges difference={props.difference} units={props.units} />
          <p>
            <a href={`/jobs/${jobId}/runs/${runId}/revisions?a=${revision}&b=draft`}>See both strips</a>
          </p>
        </>
      )}
      <Form action={`/jobs/${jobId}/runs/${runId}/releases`} csrf={csrf} submissionId={submissionId}>
        {bars.length === 0 && revision > 0 && (
          <TextField
            name="reason"
            label="Why the released run changes"
            need="required"
            hint="The floor reads it. What stays the same piece keeps its records."
          />
        )}
        <Button kind="lead" {...(bars.length === 0 ? {} : { barred: sayBars(bars) })}>
          {revision === 0 ? `Release ${label}` : `Release revision ${revision + 1} of ${label}`}
        </Button>
      </Form>
    </Part>
  );
}

function sayBars(bars: readonly string[]): string {
  const more = bars.length > 1 ? ` And ${bars.length - 1} more, among the checks.` : '';
  return `${bars[0]}${more}`;
}
