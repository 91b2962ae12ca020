import type { JSX } from 'preact';
import type { Labour } from '../../../src/domain/labour/result.ts';
import { type Column, DataTable } from '../../components/data-table.tsx';
import { activityWord } from '../../words/activities.ts';
import { hoursFigure, NO_LEVEL, type Place } from './place.ts';

export type ActivityRow = Labour['byActivity'][number];

interface SumsProps {
  readonly jobId: string;
  readonly labour: Labour;
}

/** The hours of the whole job, activity by activity. */
export function ByActivity(props: SumsProps): JSX.Element {
  return (
    <DataTable
      caption="Likely labour hours by activity"
      rows={props.labour.byActivity}
      keyOf={(row) => row.activity}
      narrow="scrolls"
      columns={[
        {
          head: 'Activity',
          kind: 'name',
          cell: (row) => <ToActivity jobId={props.jobId} place={null} row={row} />,
          foot: 'All activities',
        },
        jobColumn(props.labour),
      ]}
    />
  );
}

/** The hours of the whole job, level by level; each leads to its activities. */
export function ByLevel({ jobId, labour, places }: SumsProps & { readonly places: readonly Place[] }): JSX.Element {
  return (
    <DataTable
      caption="Likely labour hours by level"
      remark="open a level for its activities"
      rows={places.filter((place) => sumAt(labour, place) > 0)}
      keyOf={({ id }) => id ?? NO_LEVEL}
      narrow="scrolls"
      columns={[
        {
          head: 'Level',
          kind: 'name',
          cell: ({ id, name }) => (
            <a href={`/jobs/${jobId}/hours?level=${encodeURIComponent(id ?? NO_LEVEL)}`}>{name}</a>
          ),
          foot: 'All levels',
        },
        {
          head: 'Job',
          kind: 'number',
          cell: (place) => hoursFigure(sumAt(labour, place)),
          foot: hoursFigure(labour.range.likely),
        },
      ]}
    />
  );
}

/** The last column of a table of activities. */
export function jobColumn({ range }: Labour): Column<ActivityRow> {
  return {
    head: 'Job',
    kind: 'number',
    cell: (row) => <strong>{hoursFigure(row.hours)}</strong>,
    foot: hoursFigure(range.likely),
  };
}

/** The way to an activity line by line, in the place that was asked for. */
export function ToActivity({ jobId, place, row }: ToActivityProps): JSX.Element {
  const at = place === null ? '' : `&level=${encodeURIComponent(place.id ?? NO_LEVEL)}`;
  return <a href={`/jobs/${jobId}/hours?activity=${row.activity}${at}`}>{activityWord(row.activity)}</a>;
}

interface ToActivityProps {
  readonly jobId: string;
  readonly place: Place | null;
  readonly row: ActivityRow;
}

/** Hours of one place; those of no level were added by hand. */
export function sumAt({ byLevel, lines }: Labour, { id }: Place): number {
  if (id !== null) return byLevel.find(({ level }) => level === id)?.hours ?? 0;
  return lines.reduce((sum, line) => (line.level === null ? sum + line.hours : sum), 0);
}
