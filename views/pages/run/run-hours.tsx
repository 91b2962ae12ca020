import type { JSX } from 'preact';
import type { LabourLine } from '../../../src/domain/labour/result.ts';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import { DataTable } from '../../components/data-table.tsx';
import { EmptyState } from '../../components/empty-state.tsx';
import { HoursWorking } from '../../components/hours-working.tsx';
import { InventedNotice } from '../../components/invented-notice.tsx';
import { Part } from '../../components/part.tsx';
import { activityWord } from '../../words/activities.ts';

export interface RunHoursProps {
  readonly units: UnitSystem;
  readonly hours: readonly LabourLine[];
  readonly book: { readonly version: string; readonly policy: 'add' | 'compound' } | null;
}

/** The run's budget of hours, each figure opening to its working. */
export function RunHours({ units, hours, book }: RunHoursProps): JSX.Element {
  const total = hours.reduce((sum, line) => sum + line.hours, 0);
  return (
    <Part title="Hours" id="hours">
      {book === null ? (
        <EmptyState text="The job has no labour book yet, so no hours are worked." />
      ) : (
        <>
          <InventedNotice version={book.version} />
          <DataTable
            caption="Likely labour hours of the design as it stands"
            remark="press a figure for its working"
            rows={hours.map((line, index) => ({ line, index }))}
            narrow="scrolls"
            keyOf={(row) => String(row.index)}
            none={<EmptyState text="No hours: the run has no sound layout." />}
            columns={[
              {
                head: 'Activity',
                kind: 'name',
                cell: ({ line }) => (
                  <>
                    {activityWord(line.activity)}
                    {line.length !== null && <span class="soft"> {formatLength(line.length, units)}</span>}
                  </>
                ),
                foot: 'Run',
              },
              { head: 'Pieces of work', kind: 'number', cell: ({ line }) => line.pieces },
              {
                head: 'Base',
                kind: 'number',
                cell: ({ line }) => `${line.base.likely} h${line.unit === 'each' ? '' : ` / ${line.unit}`}`,
              },
              { head: 'Conditions', kind: 'number', cell: ({ line }) => `× ${line.conditionFactor.toFixed(3)}` },
              { head: 'Learning', kind: 'number', cell: ({ line }) => `× ${line.learningFactor.toFixed(3)}` },
              {
                head: 'Labour hours',
                kind: 'number',
                cell: ({ line }) => <HoursWorking line={line} policy={book.policy} book={book.version} />,
                foot: total.toFixed(2),
              },
            ]}
          />
        </>
      )}
    </Part>
  );
}
