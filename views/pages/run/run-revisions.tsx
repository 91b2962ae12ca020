import type { JSX } from 'preact';
import { ButtonLink } from '../../components/button.tsx';
import { DataTable } from '../../components/data-table.tsx';
import { EmptyState } from '../../components/empty-state.tsx';
import { Part } from '../../components/part.tsx';
import { Time } from '../../components/time.tsx';

export interface Revision {
  readonly number: number;
  readonly at: Date;
  readonly byName: string;
  readonly reason: string;
  /** Sections were substituted on the floor. */
  readonly field: boolean;
}

/** What was released, when, by whom and why. */
export function RunRevisions(props: {
  readonly jobId: string;
  readonly runId: string;
  readonly changed: boolean;
  readonly revisions: readonly Revision[];
  readonly zone: string | undefined;
}): JSX.Element {
  const canCompare = props.revisions.length > 1 || (props.revisions.length === 1 && props.changed);
  return (
    <Part
      title="Revisions"
      id="revisions"
      tools={
        canCompare && <ButtonLink href={`/jobs/${props.jobId}/runs/${props.runId}/revisions`}>Compare two</ButtonLink>
      }
    >
      <DataTable
        caption="Released to the floor"
        rows={props.revisions}
        keyOf={(revision) => String(revision.number)}
        none={<EmptyState text="Not released yet. The floor sees the run once it is." />}
        columns={[
          { head: 'Revision', kind: 'name', cell: ({ number, field }) => (field ? `${number}, field` : number) },
          { head: 'When', cell: (revision) => <Time at={revision.at} zone={props.zone} /> },
          { head: 'By', cell: (revision) => revision.byName },
          { head: 'Why', cell: (revision) => revision.reason },
        ]}
      />
    </Part>
  );
}
