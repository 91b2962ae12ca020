import type { RunLayout } from '../layout/result.ts';
import type { Extra, LabourActivity, LabourBook, Level, Run } from '../model.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import type { Length } from '../units/length.ts';
import { baseHours } from './base-hours.ts';
import { conditionFactor } from './condition-factor.ts';
import { learningFactor } from './learning-curve.ts';
import { lengthUnit } from './length-unit.ts';
import { type Measure, measureRun } from './measure-run.ts';
import { repeatsOf } from './repeats.ts';
import { ACTIVITIES, type Activity, type LabourLine } from './result.ts';
import type { RunWork, Work } from './work-of.ts';

/**
 * One line per run, activity and piece length, in document order, then one per extra with hours: what `computeLabour`
 * sums. Every factor of a line's hours stands on the line. From the same work, lines of an activity that the book says
 * nothing else about are the very objects of the last time.
 */
export function labourLines(work: Work, book: LabourBook, extras: readonly Extra[]): readonly LabourLine[] {
  const repeats = repeatsOf(
    work.levels,
    work.runs.map(({ run }) => run),
    book.learning?.over ?? 'run',
  );
  const placed = work.runs.map((each) => ({ ...each, repeat: repeats.get(each.run.id) ?? 1 }));
  const columns = activitiesOf(book).map((activity) => keptColumn(activity, book, work, placed));
  const lines: LabourLine[] = [];
  for (const index of placed.keys()) for (const column of columns) for (const line of column[index]!) lines.push(line);
  for (const line of extraLines(extras, book)) lines.push(line);
  return lines;
}

export interface Place {
  readonly run: Run;
  readonly level: Level;
  readonly repeat: number;
  /** Of the run's busway. */
  readonly ratedCurrentA: number;
}

/**
 * The lines of one run alone, out of its sound layout and its own takeoff; `place.repeat` is which repeat it is in the order
 * of work (`repeatsOf`). Together the runs' lines are the job's, but for the extras.
 */
export function runLabourLines(
  place: Place,
  layout: RunLayout,
  takeoff: readonly TakeoffLine[],
  book: LabourBook,
): readonly LabourLine[] {
  const alone = [{ ...place, measures: measureRun(place.run, layout, takeoff) }];
  return activitiesOf(book).flatMap((activity) => columnOf(activity, book, alone).flat());
}

type KnownActivity = LabourActivity & { readonly id: Activity };
type PlacedWork = RunWork & Place;
/** The lines of one activity, run by run. */
type Column = readonly (readonly LabourLine[])[];

function activitiesOf(book: LabourBook): readonly KnownActivity[] {
  return ACTIVITIES.flatMap((id) => {
    const activity = book.activities.find((candidate) => candidate.id === id);
    return activity === undefined ? [] : [{ ...activity, id }];
  });
}

/** Columns last reckoned from some work, with what they were reckoned by: a large job has some 100,000 lines, and one labour unit moves few of them. */
const known = new WeakMap<Work, Map<Activity, { readonly by: string; readonly column: Column }>>();

function keptColumn(activity: KnownActivity, book: LabourBook, work: Work, placed: readonly PlacedWork[]): Column {
  const { activities: _all, version: _version, crew: _crew, overtime: _time, ...lines } = book;
  const { correlation: _correlation, trials: _trials, seed: _seed, ...shared } = lines;
  const by = JSON.stringify([activity, shared]);
  const columns = known.get(work) ?? new Map();
  known.set(work, columns);
  const before = columns.get(activity.id);
  if (before?.by === by) return before.column;
  const column = columnOf(activity, book, placed);
  columns.set(activity.id, { by, column });
  return column;
}

/** What all runs of a level share is worked out once. */
function columnOf(activity: KnownActivity, book: LabourBook, placed: readonly PlacedWork[]): Column {
  const { id, unit } = activity;
  const { learning } = book;
  const learns = learning?.activities.includes(id) ?? false;
  const perLength = lengthUnit(unit);
  const nonProductive = nonProductiveOf(book);
  const factorsOn = once((level: Level) => conditionFactor(activity, level, book));
  const basesOf = once((amperes: number) => once((length: Length | null) => baseHours(activity, length, amperes)));
  return placed.map(({ run, level, repeat, ratedCurrentA, measures }) => {
    if (measures[id].length === 0) return NOTHING;
    const { factors, factor } = factorsOn(level);
    const baseOf = basesOf(ratedCurrentA);
    const learned = learning && learns ? learningFactor(repeat, learning.referenceRepeat, learning.rate) : 1;
    return measures[id].map((measure) => {
      const base = baseOf(measure.length);
      const quantity = quantityIn(perLength, measure);
      return {
        activity: id,
        note: null,
        run: run.id,
        level: level.id,
        length: measure.length,
        pieces: measure.pieces,
        quantity,
        unit,
        base,
        factors,
        conditionFactor: factor,
        repeat: learns ? repeat : null,
        learningFactor: learned,
        nonProductiveFactor: nonProductive,
        hours: quantity * base.likely * factor * learned * nonProductive,
      };
    });
  });
}

const NOTHING: readonly LabourLine[] = [];

/** A function that works each answer out once. */
function once<K, V>(workOut: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const answer = workOut(key);
    known.set(key, answer);
    return answer;
  };
}

/** Lengths in a length unit, pieces in any other; work without a length is counted by the piece whatever the unit says. */
function quantityIn(perLength: Length | null, { pieces, length }: Measure): number {
  return perLength === null || length === null ? pieces : (pieces * length) / perLength;
}

/** A percentage on top, or a day's hours over those of them that are worked. */
function nonProductiveOf({ nonProductiveDay: day, nonProductivePercent }: LabourBook): number {
  return day === null ? 1 + nonProductivePercent / 100 : day.dayHours / (day.dayHours - day.lostHours);
}

function extraLines(extras: readonly Extra[], book: LabourBook): LabourLine[] {
  return extras.flatMap((extra) => {
    if (extra.hours === null) return [];
    const nonProductive = nonProductiveOf(book);
    return [
      {
        activity: 'extra' as const,
        note: extra.item,
        run: null,
        level: extra.level,
        length: null,
        pieces: extra.quantity,
        quantity: extra.quantity,
        unit: extra.unit,
        base: { low: extra.hours, likely: extra.hours, high: extra.hours },
        factors: [],
        conditionFactor: 1,
        repeat: null,
        learningFactor: 1,
        nonProductiveFactor: nonProductive,
        hours: extra.quantity * extra.hours * nonProductive,
      },
    ];
  });
}
