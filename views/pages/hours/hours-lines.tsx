import type { JSX } from 'preact';
import type { Activity, LabourLine } from '../../../src/domain/labour/result.ts';
import type { LabourBook, UnitSystem } from '../../../src/domain/model.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import { DataTable } from '../../components/data-table.tsx';
import { EmptyState } from '../../components/empty-state.tsx';
import { HoursWorking } from '../../components/hours-working.tsx';
import { Pager, type PagerProps } from '../../components/pager.tsx';
import { activityWord } from '../../words/activities.ts';

export interface HoursLinesProps {
  readonly jobId: string;
  readonly units: UnitSystem;
  readonly book: LabourBook;
  readonly activity: Activity | 'extra';
  readonly where: string;
  readonly levels: readonly { readonly id: string; readonly name: string }[];
  readonly lines: readonly LabourLine[];
  /** By label, for the way to each run. */
  readonly runIds: ReadonlyMap<string, string>;
  readonly pager: PagerProps | null;
}

/** One activity line by line. */
export function HoursLines(props: HoursLinesProps): JSX.Element {
  const { jobId, units, book, activity, where, levels, lines, runIds, pager } = props;
  const nameOf = new Map(levels.map(({ id, name }) => [id, name]));
  return (
    <>
      <p>
        <a href={`/jobs/${jobId}/hours`}>All activities</a>
      </p>
      <DataTable
        caption={`Labour hours: ${activityWord(activity)}, ${where}`}
        remark="open a figure for its working"
        rows={lines.map((line, index) => ({ line, index }))}
        keyOf={(row) => String(row.index)}
        narrow="scrolls"
        none={<EmptyState text="No hours of this activity here." />}
        columns={[
          {
            head: 'Run',
            kind: 'name',
            cell: ({ line }) => whereOf(line, jobId, runIds.get(line.run ?? '')),
          },
          { head: 'Level', cell: ({ line }) => (line.level === null ? '' : (nameOf.get(line.level) ?? line.level)) },
          {
            head: 'Length',
            kind: 'number',
            cell: ({ line }) => (line.length === null ? '' : formatLength(line.length, units)),
          },
          { head: 'Pieces of work', kind: 'number', cell: ({ line }) => line.pieces },
          {
            head: 'Quantity',
            kind: 'number',
            cell: ({ line }) => `${Number(line.quantity.toFixed(4))} ${line.unit === 'each' ? '' : `× ${line.unit}`}`,
          },
          { head: 'Base, each unit', kind: 'number', cell: ({ line }) => `${line.base.likely} h` },
          { head: 'Conditions', kind: 'number', cell: ({ line }) => line.conditionFactor.toFixed(3) },
          { head: 'Repeat', kind: 'number', cell: ({ line }) => line.repeat ?? '' },
          { head: 'Learning', kind: 'number', cell: ({ line }) => line.learningFactor.toFixed(3) },
          { head: 'Non-productive', kind: 'number', cell: ({ line }) => line.nonProductiveFactor.toFixed(3) },
          {
            head: 'Labour hours',
            kind: 'number',
            cell: ({ line }) => <HoursWorking line={line} policy={book.policy} book={book.version} />,
          },
        ]}
      />
      {pager !== null && <Pager {...pager} />}
    </>
  );
}

function whereOf({ run, note }: LabourLine, jobId: string, id: string | undefined) {
  if (run === null) return note ?? 'added by hand';
  return id === undefined ? run : <a href={`/jobs/${jobId}/runs/${id}#hours`}>{run}</a>;
}
