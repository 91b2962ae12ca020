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
    costPerProductiveHour: costPerProductiveHour(book),
  };
}

function byActivity(lines: readonly LabourLine[]): Labour['byActivity'] {
  const hours = sumBy(
    lines,
    (line) => line.activity,
    (line) => line.hours,
  );
  const quantities = sumBy(
    lines,
    (line) => line.activity,
    (line) => line.quantity,
  );
  return [...ACTIVITIES, 'extra' as const]
    .filter((activity) => hours.has(activity))
    .map((activity) => ({ activity, quantity: quantities.get(activity) ?? 0, hours: hours.get(activity) ?? 0 }));
}

function byLevel(job: Job, lines: readonly LabourLine[]): Labour['byLevel'] {
  const hours = sumBy(
    lines,
    (line) => line.level,
    (line) => line.hours,
  );
  const levels = [...job.levels].sort((a, b) => a.order - b.order).filter(({ id }) => hours.has(id));
  return levels.map(({ id }) => ({ level: id, hours: hours.get(id) ?? 0 }));
}

function byRun(job: Job, lines: readonly LabourLine[]): Labour['byRun'] {
  const hours = sumBy(
    lines,
    (line) => line.run,
    (line) => line.hours,
  );
  const runs = job.runs.filter(({ id }) => hours.has(id));
  return runs.map(({ id }) => ({ run: id, hours: hours.get(id) ?? 0 }));
}

/** Sums of the lines that share a key; lines without one are left out. */
function sumBy(
  lines: readonly LabourLine[],
  keyOf: (line: LabourLine) => string | null,
  measureOf: (line: LabourLine) => number,
): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const line of lines) {
    const key = keyOf(line);
    if (key !== null) sums.set(key, (sums.get(key) ?? 0) + measureOf(line));
  }
  return sums;
}
