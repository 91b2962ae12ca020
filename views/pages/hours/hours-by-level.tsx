import type { JSX } from 'preact';
import type { Labour, LabourLine } from '../../../src/domain/labour/result.ts';
import type { LabourBook } from '../../../src/domain/model.ts';
import { type Column, DataTable } from '../../components/data-table.tsx';
import { Part } from '../../components/part.tsx';
import { Working } from '../../components/working.tsx';
import { activityWord } from '../../words/activities.ts';

export interface HoursByLevelProps {
  readonly jobId: string;
  readonly labour: Labour;
  readonly book: LabourBook;
  readonly levels: readonly { readonly id: string; readonly name: string }[];
}

type Row = Labour['byActivity'][number];

/** With more levels than this, figures lead to their lines instead of opening in place: the page would be too heavy. */
const OPEN_IN_PLACE = 8;

/** Activity by level; each figure opens to what it was added up from, and leads on to its lines. */
export function HoursByLevel(props: HoursByLevelProps): JSX.Element {
  const { labour, levels } = props;
  const lines = byCell(labour.lines);
  const hasLoose = labour.lines.some((line) => line.level === null);
  const places = [
    ...levels.map((level) => ({ id: level.id as string | null, name: level.name })),
    ...(hasLoose ? [{ id: null, name: 'No level' }] : []),
  ];
  const sums = new Map<string | null, number>();
  for (const line of labour.lines) sums.set(line.level, (sums.get(line.level) ?? 0) + line.hours);
  return (
    <Part title="By activity and level" id="by-level">
      <DataTable
        caption="Likely labour hours"
        remark="open a figure for its working"
        rows={labour.byActivity}
        keyOf={(row) => row.activity}
        narrow="scrolls"
        columns={[
          {
            head: 'Activity',
            kind: 'name',
            cell: (row) => (
              <a href={`/jobs/${props.jobId}/hours?activity=${row.activity}`}>{activityWord(row.activity)}</a>
            ),
            foot: 'All activities',
          },
          ...places.map(
            (place): Column<Row> => ({
              head: place.name,
              kind: 'number',
              cell: (row) => (
                <CellWorking lines={lines.get(cellKey(row.activity, place.id)) ?? []} place={place} {...props} />
              ),
              foot: (sums.get(place.id) ?? 0).toFixed(1),
            }),
          ),
          {
            head: 'Job',
            kind: 'number',
            cell: (row) => <strong>{row.hours.toFixed(1)}</strong>,
            foot: labour.range.likely.toFixed(1),
          },
        ]}
      />
    </Part>
  );
}

function cellKey(activity: string, level: string | null): string {
  return `${activity} ${level ?? ''}`;
}

function byCell(lines: readonly LabourLine[]): Map<string, LabourLine[]> {
  const cells = new Map<string, LabourLine[]>();
  for (const line of lines) {
    const key = cellKey(line.activity, line.level);
    const cell = cells.get(key);
    if (cell) cell.push(line);
    else cells.set(key, [line]);
  }
  return cells;
}

interface CellWorkingProps extends HoursByLevelProps {
  readonly lines: readonly LabourLine[];
  readonly place: { readonly id: string | null; readonly name: string };
}

function CellWorking({ lines, place, jobId, book, levels }: CellWorkingProps) {
  const first = lines[0];
  if (first === undefined) return null;
  const hours = lines.reduce((sum, line) => sum + line.hours, 0);
  const word = activityWord(first.activity);
  const href = `/jobs/${jobId}/hours?activity=${first.activity}&level=${encodeURIComponent(place.id ?? '-')}`;
  if (levels.length > OPEN_IN_PLACE) return <a href={href}>{hours.toFixed(1)}</a>;
  return (
    <Working
      figure={hours.toFixed(1)}
      of={`hours of ${word} on ${place.name}`}
      formula="hours = Σ quantity × base hours × condition factor × learning × non-productive"
      filledIn={`${hours.toFixed(2)} over ${lines.length === 1 ? 'one line' : `${lines.length} lines`}`}
      inputs={[
        { name: 'pieces of work', value: sum(lines, (line) => line.pieces), source: 'layouts and takeoff' },
        {
          name: 'quantity',
          value: `${sum(lines, (line) => line.quantity)}${unitOf(lines)}`,
          source: 'in the activity’s unit',
        },
        { name: 'base hours', value: span(lines, (line) => line.base.likely), source: `labour book ${book.version}` },
        {
          name: 'condition factor',
          value: span(lines, (line) => line.conditionFactor),
          source: `factors ${book.policy === 'add' ? 'added' : 'compounded'}`,
        },
        { name: 'learning', value: span(lines, (line) => line.learningFactor), source: 'unit curve over the repeats' },
        {
          name: 'non-productive',
          value: span(lines, (line) => line.nonProductiveFactor),
          source: `labour book ${book.version}`,
        },
      ]}
      source={
        <a href={href}>
          Line by line
          <span class="unseen">
            : {word} on {place.name}
          </span>
        </a>
      }
    />
  );
}

function unitOf(lines: readonly LabourLine[]): string {
  const unit = lines[0]?.unit ?? 'each';
  return unit === 'each' ? '' : ` × ${unit}`;
}

function sum(lines: readonly LabourLine[], of: (line: LabourLine) => number): string {
  return figure(lines.reduce((total, line) => total + of(line), 0));
}

/** One figure, or from the least to the greatest. */
function span(lines: readonly LabourLine[], of: (line: LabourLine) => number): string {
  const values = lines.map(of);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return figure(low) === figure(high) ? figure(low) : `${figure(low)} to ${figure(high)}`;
}

function figure(value: number): string {
  return String(Number(value.toFixed(4)));
}
