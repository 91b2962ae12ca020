import { labourLines } from '../../domain/labour/labour-lines.ts';
import type { LabourLine } from '../../domain/labour/result.ts';
import { workOf } from '../../domain/labour/work-of.ts';
import { linesByRun } from '../../domain/takeoff/lines-by-run.ts';
import { takeOff } from '../../domain/takeoff/take-off.ts';
import type { JobDesign } from '../job-design.ts';

type Budget = ReadonlyMap<string, readonly LabourLine[]>;

const kept = new WeakMap<JobDesign, Budget>();

/** The hours of each run, line by line: what work is earned against. Their range is not asked for here, and takes far longer. */
export function budgetOf(design: JobDesign): Budget {
  const known = kept.get(design);
  if (known !== undefined) return known;
  const { job, layouts } = design;
  const { labourBook: book } = job;
  const lines = book === null ? [] : labourLines(workOf(job, layouts, takeOff(job, layouts)), book, job.extras);
  const budget = linesByRun(lines);
  kept.set(design, budget);
  return budget;
}
