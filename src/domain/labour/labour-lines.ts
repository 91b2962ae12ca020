import type { RunLayout } from '../layout/result.ts';
import type { Extra, Job, LabourActivity, LabourBook, Level, Run, ThreePoint } from '../model.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import type { Length } from '../units/length.ts';
import { conditionFactor } from './condition-factor.ts';
import { learningFactor } from './learning-curve.ts';
import { lengthUnit } from './length-unit.ts';
import { type Measure, measureRun } from './measure-run.ts';
import { repeatsOf } from './repeats.ts';
import { ACTIVITIES, type LabourLine } from './result.ts';
import type { RunWork, Work } from './work-of.ts';

/**
 * One line per run, activity and piece length, in document order, then one per extra with hours: what `computeLabour`
 * sums. Every factor of a line's hours stands on the line.
 */
export function labourLines(job: Job, book: LabourBook, work: Work): readonly LabourLine[] {
  const reckon = reckoner(book);
  const repeats = repeatsOf(
    job.levels,
    work.runs.map(({ run }) => run),
    book.learning?.over ?? 'run',
  );
  const lines: LabourLine[] = [];
  for (const each of work.runs) {
    const repeat = repeats.get(each.run.id);
    if (repeat !== undefined) reckon(each, repeat, lines);
  }
  return [...lines, ...extraLines(job.extras, book)];
}

export interface Place {
  readonly run: Run;
  readonly level: Level;
  readonly repeat: number;
}

/**
 * The lines of one run alone, out of its sound layout and its own takeoff; `place.repeat` is which repeat it is in the order
 * of work (`repeatsOf`). Together the runs' lines are the job's, but for the extras.
 */
export function runLabourLines(
  { run, level, repeat }: Place,
  layout: RunLayout,
  takeoff: readonly TakeoffLine[],
  book: LabourBook,
): readonly LabourLine[] {
  const lines: LabourLine[] = [];
  reckoner(book)({ run, level, measures: measureRun(run, layout, takeoff) }, repeat, lines);
  return lines;
}

/** Adds one run's lines to `lines`. What all runs of a level share is worked out once: large jobs have some 100,000 lines. */
function reckoner(book: LabourBook): (work: RunWork, repeat: number, lines: LabourLine[]) => void {
  const { learning } = book;
  const nonProductiveFactor = nonProductiveOf(book);
  const activities = ACTIVITIES.flatMap((id) => {
    const activity = book.activities.find((candidate) => candidate.id === id);
    if (activity === undefined) return [];
    const learns = learning?.activities.includes(id) ?? false;
    const factorsOn = once((level: Level) => conditionFactor(activity, level, book));
    const baseOf = once((length: Length | null) => baseFor(activity, length));
    return [{ id, learns, unit: activity.unit, perLength: lengthUnit(activity.unit), factorsOn, baseOf }];
  });
  return ({ run, level, measures }, place, lines) => {
    const learned = learning ? learningFactor(place, learning.referenceRepeat, learning.rate) : 1;
    for (const { id, learns, unit, perLength, factorsOn, baseOf } of activities) {
      if (measures[id].length === 0) continue;
      const { factors, factor } = factorsOn(level);
      const learningOf = learns ? learned : 1;
      for (const measure of measures[id]) {
        const base = baseOf(measure.length);
        const quantity = quantityIn(perLength, measure);
        lines.push({
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
          repeat: learns ? place : null,
          learningFactor: learningOf,
          nonProductiveFactor,
          hours: quantity * base.likely * factor * learningOf * nonProductiveFactor,
        });
      }
    }
  };
}

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
