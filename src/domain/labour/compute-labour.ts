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

/** In one pass: large jobs have some 100,000 lines, those of a run one after another. A line without a level or a run is in no sum of them. */
function sumsOf(job: Job, lines: readonly LabourLine[]): Sums {
  const ofActivity = new Map<LabourLine['activity'], { quantity: number; hours: number }>();
  const ofLevel = new Map<string, { hours: number }>();
  const ofRun = new Map<string, { hours: number }>();
  let at: LabourLine | null = null;
  let level = { hours: 0 };
  let run = { hours: 0 };
  for (const line of lines) {
    if (at === null || line.level !== at.level) level = sumAt(ofLevel, line.level);
    if (at === null || line.run !== at.run) run = sumAt(ofRun, line.run);
    at = line;
    level.hours += line.hours;
    run.hours += line.hours;
    const sum = ofActivity.get(line.activity);
    if (sum === undefined) ofActivity.set(line.activity, { quantity: line.quantity, hours: line.hours });
    else {
      sum.quantity += line.quantity;
      sum.hours += line.hours;
    }
  }
  const levels = [...job.levels].sort((a, b) => a.order - b.order);
  return {
    byActivity: [...ACTIVITIES, 'extra' as const].flatMap((activity) => {
      const sum = ofActivity.get(activity);
      return sum === undefined ? [] : [{ activity, ...sum }];
    }),
    byLevel: levels.flatMap(({ id }) => {
      const sum = ofLevel.get(id);
      return sum === undefined ? [] : [{ level: id, ...sum }];
    }),
    byRun: job.runs.flatMap(({ id }) => {
      const sum = ofRun.get(id);
      return sum === undefined ? [] : [{ run: id, ...sum }];
    }),
  };
}

function sumAt(sums: Map<string, { hours: number }>, key: string | null): { hours: number } {
  const known = key === null ? undefined : sums.get(key);
  if (known !== undefined) return known;
  const sum = { hours: 0 };
  if (key !== null) sums.set(key, sum);
  return sum;
}
