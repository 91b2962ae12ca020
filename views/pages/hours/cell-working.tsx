import type { JSX } from 'preact';
import type { LabourLine } from '../../../src/domain/labour/result.ts';
import type { LabourBook } from '../../../src/domain/model.ts';
import { Working } from '../../components/working.tsx';
import { activityWord } from '../../words/activities.ts';
import { hoursFigure, NO_LEVEL, type Place } from './place.ts';

export interface CellWorkingProps {
  readonly jobId: string;
  readonly book: LabourBook;
  readonly lines: readonly LabourLine[];
  readonly place: Place;
}

/** The hours of one activity in one place with their working; nothing where there are none. */
export function CellWorking({ lines, place, jobId, book }: CellWorkingProps): JSX.Element | null {
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
