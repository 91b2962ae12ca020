import type { JSX } from 'preact';
import { NOT_HELD } from '../../src/domain/closeout/not-held.ts';
import { ButtonLink } from '../components/button.tsx';
import { Caution } from '../components/caution.tsx';
import { DataTable } from '../components/data-table.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { Meter } from '../components/meter.tsx';
import { Pager, type PagerProps } from '../components/pager.tsx';
import { Part } from '../components/part.tsx';

export interface ReadinessLine {
  readonly row: string;
  readonly title: string;
  readonly asks: string;
  readonly required: number;
  readonly present: number;
  readonly percent: number | null;
}

export interface GapLine {
  readonly id: string;
  readonly mark: string;
  readonly title: string;
  readonly words: string;
  readonly count: number;
  /** Where it is closed; null for what belongs to no run. */
  readonly href: string | null;
}

export interface CloseoutPageProps {
  readonly jobId: string;
  readonly required: number;
  readonly present: number;
  readonly percent: number | null;
  readonly runs: number;
  readonly rows: readonly ReadinessLine[];
  readonly gaps: readonly GapLine[];
  /** The one row whose gaps are listed; null lists them all. */
  readonly chosen: string | null;
  readonly pager: PagerProps;
}

/** What the closeout asks for and what is there, every gap by name, and the package. */
export function CloseoutPage(props: CloseoutPageProps): JSX.Element {
  const { required, present, percent, runs } = props;
  return (
    <>
      <p>
        {percent === null
          ? 'Nothing is asked for yet: the job has no runs.'
          : `${present} of ${required} pieces of evidence are there, ${percent} %, over ${runs} ${runs === 1 ? 'run' : 'runs'}. Percent are rounded down.`}
      </p>
      <Caution>
        <p>The package is a record. Nothing in it is a permission to energise or to touch.</p>
      </Caution>
      <ReadinessTable {...props} />
      <Gaps {...props} />
      <Part title="Not in the package">
        <p>
          Usual parts of a turnover that this edition keeps no record of. Add them by hand, or agree that they are not
          owed.
        </p>
        <ul>
          {NOT_HELD.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </Part>
    </>
  );
}

/** At the head of the page. It may be made at any time: what is missing is listed in it. */
export function CloseoutTools({ jobId }: { jobId: string }): JSX.Element {
  return (
    <ButtonLink href={`/jobs/${jobId}/closeout.zip`} kind="lead">
      Download the package
    </ButtonLink>
  );
}

function ReadinessTable({ jobId, rows }: CloseoutPageProps) {
  return (
    <DataTable
      caption="Asked for and present"
      rows={rows}
      keyOf={(row) => row.row}
      columns={[
        { head: 'Asked for', kind: 'name', cell: (row) => row.title },
        { head: 'What counts', cell: (row) => row.asks },
        { head: 'Present', cell: (row) => <Meter done={row.present} planned={row.required} of="" /> },
        { head: '%', kind: 'number', cell: (row) => row.percent ?? 'none asked' },
        { head: 'Missing', kind: 'number', cell: (row) => <Missing jobId={jobId} row={row} /> },
      ]}
    />
  );
}

function Missing({ jobId, row }: { jobId: string; row: ReadinessLine }) {
  const missing = row.required - row.present;
  if (missing === 0) return <>0</>;
  return (
    <a href={`/jobs/${jobId}/closeout?row=${row.row}#gaps`}>
      {missing}
      <span class="unseen"> missing: {row.title}</span>
    </a>
  );
}

function Gaps({ jobId, gaps, chosen, rows, pager }: CloseoutPageProps) {
  const title = rows.find((row) => row.row === chosen)?.title;
  return (
    <Part
      title={title === undefined ? 'Missing' : `Missing: ${title}`}
      id="gaps"
      tools={chosen !== null && <a href={`/jobs/${jobId}/closeout#gaps`}>All that is missing</a>}
    >
      <DataTable
        caption="Gaps"
        remark={`${pager.first} to ${pager.last} of ${pager.total ?? 'more'}`}
        rows={gaps}
        keyOf={(gap) => `${gap.title} ${gap.id} ${gap.mark} ${gap.words}`}
        none={<EmptyState text="Nothing that is asked for is missing." />}
        columns={[
          { head: 'What', kind: 'name', cell: (gap) => <GapMark gap={gap} /> },
          { head: 'Asked for', cell: (gap) => gap.title },
          {
            head: 'Why it counts as missing',
            cell: (gap) => (gap.count === 1 ? gap.words : `${gap.words} (${gap.count})`),
          },
        ]}
      />
      {(pager.before !== null || pager.after !== null) && <Pager {...pager} />}
    </Part>
  );
}

function GapMark({ gap }: { gap: GapLine }) {
  return gap.href === null ? <span>{gap.mark}</span> : <a href={gap.href}>{gap.mark}</a>;
}
