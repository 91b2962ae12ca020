import type { RunLayout } from '../layout/result.ts';
import type { Job } from '../model.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import { costPerProductiveHour } from './crew-cost.ts';
import { hoursRange } from './hours-range.ts';
import { labourLines } from './labour-lines.ts';
import { ACTIVITIES, type Labour, type LabourLine } from './result.ts';
import { type Work, workOf } from './work-of.ts';

/**
 * The hours of the job, line by line and summed: quantity x base x condition factor x learning x (1 + non-productive).
 * null without a labour book. Only activities that the book gives hours for count, and only runs with a sound layout;
 * hours that the estimator added by hand carry the non-productive part and nothing else. `work` may be handed in where it
 * was counted before: it does not change with the book.
 *
 * Source: the job's own rules (job document, "Activities"); learning after Crawford; range by PERT-beta.
 * Example: four joints of 0.60 h on a level with 15 % congestion, the 8th repeat of a curve that stands for the 8th, and
 * 6 % non-productive time: 4 x 0.60 x 1.15 x 1 x 1.06 = 2.93 h.
 */
export function computeLabour(
  job: Job,
  layouts: readonly RunLayout[],
  takeoff: readonly TakeoffLine[],
  work: Work = workOf(job, layouts, takeoff),
): Labour | null {
  const book = job.labourBook;
  if (!book) return null;
  const lines = labourLines(work, book, job.extras);
  return {
    lines,
    range: hoursRange(lines, book),
    ...sumsOf(job, lines),
    costPerProductiveHour: costPerProductiveHour(book),
  };
}

type Sums = Pick<Labour, 'byActivity' | 'byLevel' | 'byRun'>;

/** In one pass: large jobs have some 100,000 lines. A line without a level or a run is in no sum of them. */
function sumsOf(job: Job, lines: readonly LabourLine[]): Sums {
  const ofActivity = new Map<LabourLine['activity'], { quantity: number; hours: number }>();
  const ofLevel = new Map<string, number>();
  const ofRun = new Map<string, number>();
  for (const { activity, level, run, quantity, hours } of lines) {
    const sum = ofActivity.get(activity);
    if (sum === undefined) ofActivity.set(activity, { quantity, hours });
    else {
      sum.quantity += quantity;
      sum.hours += hours;
    }
    if (level !== null) ofLevel.set(level, (ofLevel.get(level) ?? 0) + hours);
    if (run !== null) ofRun.set(run, (ofRun.get(run) ?? 0) + hours);
  }
  const levels = [...job.levels].sort((a, b) => a.order - b.order);
  return {
    byActivity: [...ACTIVITIES, 'extra' as const].flatMap((activity) => {
      const sum = ofActivity.get(activity);
      return sum === undefined ? [] : [{ activity, ...sum }];
    }),
    byLevel: levels.flatMap(({ id }) => {
      const hours = ofLevel.get(id);
      return hours === undefined ? [] : [{ level: id, hours }];
    }),
    byRun: job.runs.flatMap(({ id }) => {
      const hours = ofRun.get(id);
      return hours === undefined ? [] : [{ run: id, hours }];
    }),
  };
}
