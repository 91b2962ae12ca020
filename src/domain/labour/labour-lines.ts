import type { RunLayout } from '../layout/result.ts';
import type { Extra, Job, LabourActivity, LabourBook, Level, Run, ThreePoint } from '../model.ts';
import { linesByRun } from '../takeoff/lines-by-run.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import type { Length } from '../units/length.ts';
import { conditionFactor } from './condition-factor.ts';
import { learningFactor } from './learning-curve.ts';
import { lengthUnit } from './length-unit.ts';
import { type Measure, measureRun } from './measure-run.ts';
import { repeatsOf } from './repeats.ts';
import { ACTIVITIES, type Activity, type LabourLine } from './result.ts';

/**
 * One line per run, activity and piece length, in document order, then one per extra with hours: what `computeLabour`
 * sums. Every factor of a line's hours stands on the line.
 */
export function labourLines(
  job: Job,
  book: LabourBook,
  layouts: readonly RunLayout[],
  takeoff: readonly TakeoffLine[],
): readonly LabourLine[] {
  return [...runLines(job, book, layouts, takeoff), ...extraLines(job.extras, book)];
}

function runLines(
  job: Job,
  book: LabourBook,
  layouts: readonly RunLayout[],
  takeoff: readonly TakeoffLine[],
): LabourLine[] {
  const layoutOf = new Map(layouts.map((layout) => [layout.run, layout]));
  const levelOf = new Map(job.levels.map((level) => [level.id, level]));
  const takeoffOf = linesByRun(takeoff);
  const repeats = repeatsOf(job, layouts, book.learning?.over ?? 'run');
  const unitHours = activitiesOf(book);
  return job.runs.flatMap((run) => {
    const layout = layoutOf.get(run.id);
    const repeat = repeats.get(run.id);
    if (!layout?.ok || repeat === undefined) return [];
    const level = levelOf.get(run.level);
    if (!level) throw new Error(`run ${run.id} hangs on level ${run.level}, which the job does not hold`);
    return linesOf({ run, level, repeat }, layout, takeoffOf.get(run.id) ?? [], { book, unitHours });
  });
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
  return linesOf(place, layout, takeoff, { book, unitHours: activitiesOf(book) });
}

interface Hours {
  readonly book: LabourBook;
  readonly unitHours: readonly { readonly id: Activity; readonly activity: LabourActivity }[];
}

function linesOf(
  place: Place,
  layout: RunLayout,
  takeoff: readonly TakeoffLine[],
  { book, unitHours }: Hours,
): LabourLine[] {
  const measures = measureRun(place.run, layout, takeoff);
  return unitHours.flatMap(({ id, activity }) =>
    measures[id].filter(({ pieces }) => pieces > 0).map((measure) => lineOf(id, activity, measure, place, book)),
  );
}

function activitiesOf(book: LabourBook): Hours['unitHours'] {
  return ACTIVITIES.flatMap((id) => {
    const activity = book.activities.find((candidate) => candidate.id === id);
    return activity ? [{ id, activity }] : [];
  });
}

export interface Place {
  readonly run: Run;
  readonly level: Level;
  readonly repeat: number;
}

function lineOf(id: Activity, activity: LabourActivity, measure: Measure, place: Place, book: LabourBook): LabourLine {
  const base = baseFor(activity, measure.length);
  const quantity = quantityIn(activity.unit, measure);
  const { factors, factor } = conditionFactor(activity, place.level, book);
  const { learning } = book;
  const learns = learning?.activities.includes(id) ?? false;
  const learned = learning && learns ? learningFactor(place.repeat, learning.referenceRepeat, learning.rate) : 1;
  const nonProductive = nonProductiveFactor(book);
  return {
    activity: id,
    note: null,
    run: place.run.id,
    level: place.level.id,
    length: measure.length,
    pieces: measure.pieces,
    quantity,
    unit: activity.unit,
    base,
    factors,
    conditionFactor: factor,
    repeat: learns ? place.repeat : null,
    learningFactor: learned,
    nonProductiveFactor: nonProductive,
    hours: quantity * base.likely * factor * learned * nonProductive,
  };
}

/** The first band that the piece's length does not pass; the last band also serves anything longer. */
function baseFor(activity: LabourActivity, length: Length | null): ThreePoint {
  if (length === null) return threePoint(activity);
  const band = activity.bands.find(({ upTo }) => upTo >= length) ?? activity.bands.at(-1);
  return threePoint(band ?? activity);
}

function threePoint({ low, likely, high }: ThreePoint): ThreePoint {
  return { low, likely, high };
}

/** Lengths in a length unit, pieces in any other; work without a length is counted by the piece whatever the unit says. */
function quantityIn(unit: string, { pieces, length }: Measure): number {
  const one = lengthUnit(unit);
  return one === null || length === null ? pieces : (pieces * length) / one;
}

/** A percentage on top, or a day's hours over those of them that are worked. */
function nonProductiveFactor({ nonProductiveDay: day, nonProductivePercent }: LabourBook): number {
  return day === null ? 1 + nonProductivePercent / 100 : day.dayHours / (day.dayHours - day.lostHours);
}

function extraLines(extras: readonly Extra[], book: LabourBook): LabourLine[] {
  return extras.flatMap((extra) => {
    if (extra.hours === null) return [];
    const nonProductive = nonProductiveFactor(book);
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
