import type { Finding } from '../finding.ts';
import type { RunLayout } from '../layout/result.ts';
import type { Job, LabourActivity, LabourBook } from '../model.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import { lengthUnit } from './length-unit.ts';
import { ACTIVITIES } from './result.ts';
import { type Work, workOf } from './work-of.ts';

/**
 * Where the hours say less than they seem to: activities that nobody knows, work that the labour book has no hours for or
 * 0 of them, a length unit on work that has no length, and a height factor without a mounting height. Nothing without a labour book.
 */
export function judgeLabour(
  job: Job,
  layouts: readonly RunLayout[],
  takeoff: readonly TakeoffLine[],
  work: Work = workOf(job, layouts, takeoff),
): readonly Finding[] {
  const book = job.labourBook;
  if (!book) return [];
  return [
    ...judgeNames(book),
    ...judgeMissing(book, work),
    ...judgeZero(book, work),
    ...judgeUnits(book, work),
    ...judgeHeights(job, book, work),
  ];
}

/** Hours under a name that is none of the activities count nowhere, and a curve for one learns nothing. */
function judgeNames(book: LabourBook): Finding[] {
  const named = [...book.activities.map((activity) => activity.id), ...(book.learning?.activities ?? [])];
  const unknown = [...new Set(named)].filter((id) => !ACTIVITIES.some((known) => known === id)).sort();
  return unknown.map((id) => {
    const message = `The labour book names "${id}", which is not one of the ${ACTIVITIES.length} activities, so it counts nowhere: give it the name of one, such as joint or section.`;
    return finding(book, 'labour.unknown-activity', 'warning', message);
  });
}

function judgeMissing(book: LabourBook, work: Work): Finding[] {
  const known = new Set(book.activities.map((activity) => activity.id));
  const missing = ACTIVITIES.filter((id) => !known.has(id) && work.lengthless.has(id));
  if (missing.length === 0) return [];
  const message = `Labour book ${book.version} has no hours for ${missing.join(', ')}, so this work is not in the hours: add it to the book, or say that others do it.`;
  return [finding(book, 'labour.no-hours', 'note', message)];
}

/** Hours of 0 are most often a cell that nobody filled: the work would cost nothing. */
function judgeZero(book: LabourBook, work: Work): Finding[] {
  const isZero = ({ likely, bands }: LabourActivity) => likely === 0 || bands.some((band) => band.likely === 0);
  const isCounted = (id: string) => ACTIVITIES.some((known) => known === id && work.lengthless.has(known));
  return book.activities
    .filter((activity) => isZero(activity) && isCounted(activity.id))
    .map(({ id }) => {
      const message = `Labour book ${book.version} gives 0 likely hours for ${id}, and the job has work of it that then costs nothing: enter its hours, or take it out of the book and say that others do it.`;
      return finding(book, 'labour.zero', 'warning', message);
    });
}

function judgeUnits(book: LabourBook, work: Work): Finding[] {
  return book.activities.flatMap((activity) => {
    const id = ACTIVITIES.find((known) => known === activity.id);
    const lengthless = id === undefined ? undefined : work.lengthless.get(id);
    const message = lengthless === undefined ? null : misreadUnit(activity, lengthless);
    return message === null ? [] : [finding(book, 'labour.unit', 'warning', message)];
  });
}

/** A unit that may mean something else than what it counts here, in words; null for a unit that is clear. */
function misreadUnit({ id, unit }: LabourActivity, lengthless: boolean): string | null {
  const isLength = lengthUnit(unit) !== null;
  if (isLength && lengthless) {
    return `The labour book gives ${id} per "${unit}", and this work has no length, so it is counted by the piece: give its hours for each.`;
  }
  if (!isLength && (id === 'lay-out' || id === 'slot-closure')) {
    return `The labour book gives ${id} per "${unit}", which is not a length, so each run counts once: give its hours per length, such as 100 ft or 10 m.`;
  }
  if (!isLength && /^\d/.test(unit.trim())) {
    return `The labour book gives ${id} per "${unit}", which is not a length, so every piece counts once: give its hours for each.`;
  }
  return null;
}

function judgeHeights(job: Job, book: LabourBook, work: Work): Finding[] {
  const heightCounts =
    book.factors.height.length > 0 && book.activities.some(({ factors }) => factors.includes('height'));
  if (!heightCounts) return [];
  const levels = new Set(work.runs.map(({ run }) => run.level));
  const unknown = job.levels.filter((level) => levels.has(level.id) && level.conditions.mountingHeight === null);
  return unknown.map((level) => {
    const message = `The mounting height on level ${level.id} is not given, so its hours carry no height factor: give the height.`;
    return finding(book, 'labour.height', 'note', message);
  });
}

function finding(book: LabourBook, rule: string, severity: Finding['severity'], message: string): Finding {
  return { rule, severity, run: null, at: null, message, source: `labour book ${book.version}` };
}
