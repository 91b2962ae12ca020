import type { JSX } from 'preact';
import type { RecordKind } from '../../src/domain/quality/record.ts';
import { ButtonLink } from '../components/button.tsx';
import { DataTable } from '../components/data-table.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { SelectField, TextField } from '../components/field.tsx';
import { Filter } from '../components/filter.tsx';
import { Pager, type PagerProps } from '../components/pager.tsx';
import { Time } from '../components/time.tsx';
import { kindWord } from '../words/quality/record-words.ts';

export interface InspectionRow {
  readonly id: string;
  readonly href: string;
  readonly at: Date;
  readonly recordedAt: Date;
  readonly mark: string;
  readonly markHref: string | null;
  readonly kind: string;
  readonly what: string;
  /** In words: "fail", "information only"; empty where nothing judges. */
  readonly outcome: string;
  readonly isTrouble: boolean;
  readonly by: string;
  readonly replaces: { readonly href: string; readonly cause: string } | null;
  readonly replacedByHref: string | null;
}

export interface InspectionsPageProps {
  readonly path: string;
  readonly zone: string | undefined;
  readonly rows: readonly InspectionRow[];
  readonly total: number;
  readonly pager: PagerProps;
  readonly chosen: { readonly run: string; readonly kind: string; readonly outcome: string; readonly by: string };
  readonly isNarrowed: boolean;
  readonly runs: readonly string[] | null;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly kinds: readonly RecordKind[];
}

const ANY = { value: '', word: 'any' };
const OUTCOMES = [
  ANY,
  { value: 'credited', word: 'credited' },
  { value: 'pass', word: 'pass' },
  { value: 'fail', word: 'fail' },
  { value: 'incomplete', word: 'incomplete' },
  { value: 'information-only', word: 'information only' },
];

/** The book of records, newest first. What failed and what was replaced stays in it, and says so. */
export function InspectionsPage(props: InspectionsPageProps): JSX.Element {
  const { path, chosen, isNarrowed, runs, people, kinds, rows, zone, pager, total } = props;
  return (
    <>
      <Filter action={path} clear={isNarrowed ? path : null} label="Which records">
        {runs === null ? (
          <TextField name="run" label="Run" value={chosen.run} />
        ) : (
          <SelectField
            name="run"
            label="Run"
            value={chosen.run}
            options={[ANY, ...runs.map((run) => ({ value: run, word: run }))]}
          />
        )}
        <SelectField
          name="kind"
          label="Sort of record"
          value={chosen.kind}
          options={[ANY, ...kinds.map((kind) => ({ value: kind, word: kindWord(kind) }))]}
        />
        <SelectField name="outcome" label="Outcome" value={chosen.outcome} options={OUTCOMES} />
        <SelectField
          name="by"
          label="Person"
          value={chosen.by}
          options={[ANY, ...people.map(({ id, name }) => ({ value: id, word: name }))]}
        />
      </Filter>
      <DataTable
        caption="Records"
        remark={`${total}, the newest first; nothing is ever deleted`}
        rows={rows}
        keyOf={(row) => row.id}
        none={<EmptyState text="No record fits. Records are made on the floor: joints, hangers, tap-offs, tests." />}
        columns={[
          {
            head: 'Done',
            kind: 'name',
            cell: (row) => (
              <a class="reach" href={row.href}>
                <Time at={row.at} zone={zone} />
              </a>
            ),
          },
          { head: 'On', cell: (row) => (row.markHref === null ? row.mark : <a href={row.markHref}>{row.mark}</a>) },
          { head: 'What', cell: (row) => row.what },
          {
            head: 'Outcome',
            cell: (row) => (row.isTrouble ? <strong class="stop">{row.outcome}</strong> : row.outcome),
          },
          { head: 'By', cell: (row) => row.by },
          { head: 'Replaced', cell: (row) => (isPlain(row) ? '' : <Replacing row={row} />) },
        ]}
      />
      <Pager {...pager} />
    </>
  );
}

/** Neither replaces another record nor was replaced. */
function isPlain(row: InspectionRow): boolean {
  return row.replaces === null && row.replacedByHref === null;
}

function Replacing({ row }: { row: InspectionRow }) {
  return (
    <>
      {row.replaces !== null && (
        <div>
          <a href={row.replaces.href}>replaces an earlier one</a>: “{row.replaces.cause}”
        </div>
      )}
      {row.replacedByHref !== null && (
        <div>
          <a href={row.replacedByHref}>
            <strong>replaced</strong>
          </a>
          , kept
        </div>
      )}
    </>
  );
}

/** At the head of the page. */
export function InspectionsTools({ csvHref, toolsHref }: { csvHref: string; toolsHref: string }): JSX.Element {
  return (
    <>
      <ButtonLink href={toolsHref}>Tools and instruments</ButtonLink>
      <ButtonLink href={csvHref}>These records as CSV</ButtonLink>
    </>
  );
}
