import type { RunLayout } from '../layout/result.ts';
import type { Job } from '../model.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import { costPerProductiveHour } from './crew-cost.ts';
import { hoursRange } from './hours-range.ts';
import { labourLines } from './labour-lines.ts';
import { ACTIVITIES, type Labour, type LabourLine } from './result.ts';

/**
 * The hours of the job, line by line and summed: quantity x base x condition factor x learning x (1 + non-productive).
 * null without a labour book. Only activities that the book gives hours for count, and only runs with a sound layout;
 * hours that the estimator added by hand carry the non-productive part and nothing else.
 *
 * Source: the job's own rules (job document, "Activities"); learning after Crawford; range by PERT-beta.
 * Example: four joints of 0.60 h on a level with 15 % congestion, the 8th repeat of a curve that stands for the 8th, and
 * 6 % non-productive time: 4 x 0.60 x 1.15 x 1 x 1.06 = 2.93 h.
 */
export function computeLabour(job: Job, layouts: readonly RunLayout[], takeoff: readonly TakeoffLine[]): Labour | null {
  const book = job.labourBook;
  if (!book) return null;
  const lines = labourLines(job, book, layouts, takeoff);
  return {
    lines,
    range: hoursRange(lines, book),
    byActivity: byActivity(lines),
    byLevel: byLevel(job, lines),
    byRun: byRun(job, lines),
    costPerProductiveHour: costPerProductiveHour(book.crew),
  };
}

function byActivity(lines: readonly LabourLine[]): Labour['byActivity'] {
  return [...ACTIVITIES, 'extra' as const].flatMap((activity) => {
    const own = lines.filter((line) => line.activity === activity);
    const quantity = own.reduce((sum, line) => sum + line.quantity, 0);
    return own.length > 0 ? [{ activity, quantity, hours: hoursOf(own) }] : [];
  });
}

function byLevel(job: Job, lines: readonly LabourLine[]): Labour['byLevel'] {
  return [...job.levels]
    .sort((a, b) => a.order - b.order)
    .flatMap(({ id }) => {
      const own = lines.filter((line) => line.level === id);
      return own.length > 0 ? [{ level: id, hours: hoursOf(own) }] : [];
    });
}

function byRun(job: Job, lines: readonly LabourLine[]): Labour['byRun'] {
  const hours = new Map<string, number>();
  for (const line of lines) if (line.run !== null) hours.set(line.run, (hours.get(line.run) ?? 0) + line.hours);
  return job.runs.flatMap(({ id }) => {
    const own = hours.get(id);
    return own === undefined ? [] : [{ run: id, hours: own }];
  });
}

function hoursOf(lines: readonly LabourLine[]): number {
  return lines.reduce((sum, line) => sum + line.hours, 0);
}
