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
  /** The one level that was asked for; `id` null for what belongs to none. */
  readonly place: Place | null;
}

export interface Place {
  readonly id: string | null;
  readonly name: string;
}

/** With more levels than this a table of all would be wider than anybody reads, and heavy: each level has one of its own. */
const SIDE_BY_SIDE = 8;

/** In the address, what belongs to no level. */
export const NO_LEVEL = '-';

/** Activity by level; each figure opens to what it was added up from, and leads on to its lines. */
export function HoursByLevel(props: HoursByLevelProps): JSX.Element {
  const { labour, levels, place } = props;
  if (place !== null)
    return (
      <Part title={`Hours of ${place.name}`} id="by-level">
        <p>
          <a href={`/jobs/${props.jobId}/hours`}>All levels</a>
        </p>
        <div class="columns">
          <Cells {...props} places={[place]} />
        </div>
      </Part>
    );
  const places: Place[] = [
    ...levels,
    ...(labour.lines.some((line) => line.level === null) ? [{ id: null, name: 'No level' }] : []),
  ];
  if (levels.length <= SIDE_BY_SIDE)
    return (
      <Part title="By activity and level" id="by-level">
        <Cells {...props} places={places} />
      </Part>
    );
  return (
    <Part title="By activity and level" id="by-level">
      <div class="columns">
        <ByActivity {...props} />
        <ByLevel {...props} places={places} />
      </div>
    </Part>
  );
}

interface InPlaces extends HoursByLevelProps {
  readonly places: readonly Place[];
}

type Row = Labour['byActivity'][number];

function Cells({ places, ...props }: InPlaces) {
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
          (place): Column<Row> => ({
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

function jobColumn({ range }: Labour): Column<Row> {
  return {
    head: 'Job',
    kind: 'number',
    cell: (row) => <strong>{hoursFigure(row.hours)}</strong>,
    foot: hoursFigure(range.likely),
  };
}

function ToActivity({ jobId, place, row }: HoursByLevelProps & { row: Row }) {
  const at = place === null ? '' : `&level=${encodeURIComponent(place.id ?? NO_LEVEL)}`;
  return <a href={`/jobs/${jobId}/hours?activity=${row.activity}${at}`}>{activityWord(row.activity)}</a>;
}

function ByActivity(props: HoursByLevelProps) {
  return (
    <DataTable
      caption="Likely labour hours by activity"
      rows={props.labour.byActivity}
      keyOf={(row) => row.activity}
      narrow="scrolls"
      columns={[
        { head: 'Activity', kind: 'name', cell: (row) => <ToActivity {...props} row={row} />, foot: 'All activities' },
        jobColumn(props.labour),
      ]}
    />
  );
}

function ByLevel({ jobId, labour, places }: InPlaces) {
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

/** Hours of one place; those of no level were added by hand. */
function sumAt({ byLevel, lines }: Labour, { id }: Place): number {
  if (id !== null) return byLevel.find(({ level }) => level === id)?.hours ?? 0;
  return lines.reduce((sum, line) => (line.level === null ? sum + line.hours : sum), 0);
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

interface CellWorkingProps extends HoursByLevelProps {
  readonly lines: readonly LabourLine[];
  readonly place: Place;
}

function CellWorking({ lines, place, jobId, book }: CellWorkingProps) {
  const first = lines[0];
  if (first === undefined) return null;
  const hours = lines.reduce((sum, line) => sum + line.hours, 0);
  const word = activityWord(first.activity);
  const href = `/jobs/${jobId}/hours?activity=${first.activity}&level=${encodeURIComponent(place.id ?? NO_LEVEL)}`;
  return (
    <Working
      figure={hoursFigure(hours)}
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

/** 2,443.6: hours in a table, to a tenth. */
function hoursFigure(hours: number): string {
  return TENTHS.format(hours);
}

const TENTHS = new Intl.NumberFormat('en-US', { minimumFractionDigits: 1, maximumFractionDigits: 1 });

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
