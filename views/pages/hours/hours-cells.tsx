import type { JSX } from 'preact';
import type { Labour, LabourLine } from '../../../src/domain/labour/result.ts';
import type { LabourBook } from '../../../src/domain/model.ts';
import { type Column, DataTable } from '../../components/data-table.tsx';
import { CellWorking } from './cell-working.tsx';
import { type ActivityRow, jobColumn, sumAt, ToActivity } from './hours-sums.tsx';
import { hoursFigure, type Place } from './place.ts';

export interface HoursInPlaces {
  readonly jobId: string;
  readonly labour: Labour;
  readonly book: LabourBook;
  /** The one level that was asked for; null for all. */
  readonly place: Place | null;
  readonly places: readonly Place[];
}

/** Activity by place; each figure opens to what it was added up from, and leads on to its lines. */
export function HoursCells({ places, ...props }: HoursInPlaces): JSX.Element {
  const { labour } = props;
  const cells = byCell(labour.lines, new Set(places.map(({ id }) => id)));
  const rows = labour.byActivity.filter(({ activity }) => places.some(({ id }) => cells.has(cellKey(activity, id))));
  const isWhole = props.place === null;
  return (
    <DataTable
      caption="Likely labour hours"
      remark="open a figure for its working"
      rows={rows}
      keyOf={(row) => row.activity}
      narrow="scrolls"
      columns={[
        { head: 'Activity', kind: 'name', cell: (row) => <ToActivity {...props} row={row} />, foot: 'All activities' },
        ...places.map(
          (place): Column<ActivityRow> => ({
            head: place.name,
            kind: 'number',
            cell: ({ activity }) => (
              <CellWorking lines={cells.get(cellKey(activity, place.id)) ?? []} {...props} place={place} />
            ),
            foot: hoursFigure(sumAt(labour, place)),
          }),
        ),
        ...(isWhole ? [jobColumn(labour)] : []),
      ]}
    />
  );
}

function cellKey(activity: string, level: string | null): string {
  return `${activity} ${level ?? ''}`;
}

function byCell(lines: readonly LabourLine[], places: ReadonlySet<string | null>): Map<string, LabourLine[]> {
  const cells = new Map<string, LabourLine[]>();
  for (const line of lines) {
    if (!places.has(line.level)) continue;
    const key = cellKey(line.activity, line.level);
    const cell = cells.get(key);
    if (cell) cell.push(line);
    else cells.set(key, [line]);
  }
  return cells;
}
