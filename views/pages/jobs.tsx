import type { JSX } from 'preact';
import type { Fault } from '../../src/document/fault.ts';
import { ButtonLink } from '../components/button.tsx';
import { DataTable } from '../components/data-table.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { SelectField, TextField } from '../components/field.tsx';
import { Filter } from '../components/filter.tsx';
import { Pager, type PagerProps } from '../components/pager.tsx';
import { Part } from '../components/part.tsx';
import { BringIn, DemoJobForm } from './jobs-bring-in.tsx';

export interface JobRow {
  readonly id: string;
  readonly number: string;
  readonly name: string;
  readonly client: string;
  readonly site: string;
  readonly roleWord: string;
  readonly runs: number;
  readonly released: number;
}

export interface JobsPageProps {
  readonly jobs: readonly JobRow[];
  readonly pager: PagerProps;
  readonly q: string;
  readonly archived: 'yes' | 'no';
  /** null: this person may not make jobs. */
  readonly making: {
    readonly csrf: string;
    readonly submissionId: string;
    /** What was pasted, kept when it was refused. */
    readonly text: string;
    readonly faults: readonly Fault[];
    readonly demoNumber: string;
    readonly demoFault?: string;
  } | null;
}

/** The jobs that the viewer reaches, and the ways to bring in another. */
export function JobsPage(props: JobsPageProps): JSX.Element {
  const { jobs, pager, q, archived, making } = props;
  const filtered = q !== '' || archived === 'yes';
  return (
    <>
      <Filter action="/jobs" clear={filtered ? '/jobs' : null} label="Find jobs">
        <TextField name="q" label="Number, name, client or site" value={q} />
        <SelectField
          name="archived"
          label="Which"
          value={archived}
          options={[
            { value: 'no', word: 'in work' },
            { value: 'yes', word: 'put away' },
          ]}
        />
      </Filter>
      <JobTable jobs={jobs} filtered={filtered} />
      {(pager.before !== null || pager.after !== null) && <Pager {...pager} />}
      {making !== null && (
        <Part title="Bring in a job" id="bring-in" tools={<ButtonLink href="/jobs/new">Make an empty job</ButtonLink>}>
          <div class="columns">
            <BringIn {...making} />
            <DemoJobForm {...making} />
          </div>
        </Part>
      )}
    </>
  );
}

function JobTable({ jobs, filtered }: { jobs: readonly JobRow[]; filtered: boolean }) {
  if (jobs.length === 0)
    return (
      <EmptyState
        text={
          filtered
            ? 'No job of yours fits this search.'
            : 'No job yet that you work on. The office of a job names its members; whoever makes a job is its office.'
        }
      />
    );
  return (
    <DataTable
      caption="Jobs"
      rows={jobs}
      keyOf={(job) => job.id}
      columns={[
        { head: 'Number', kind: 'name', cell: (job) => <a href={`/jobs/${job.id}/floors`}>{job.number}</a> },
        { head: 'Job', cell: (job) => job.name },
        { head: 'Client', cell: (job) => job.client },
        { head: 'Site', cell: (job) => job.site },
        { head: 'Your role', cell: (job) => job.roleWord },
        { head: 'Runs', kind: 'number', cell: (job) => job.runs },
        { head: 'Released', kind: 'number', cell: (job) => job.released },
      ]}
    />
  );
}

/** At the head of the page. */
export function JobsTools({ administrator }: { administrator: boolean }): JSX.Element {
  return (
    <>
      {administrator && <a href="/accounts">Accounts</a>}
      <a href="/docs">The API</a>
    </>
  );
}

export function OpenJob({ id, number }: { id: string; number: string }): JSX.Element {
  return <a href={`/jobs/${id}/floors`}>Open job {number}</a>;
}
