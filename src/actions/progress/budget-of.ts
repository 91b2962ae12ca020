import { labourLines, runLabourLines } from '../../domain/labour/labour-lines.ts';
import { repeatsOf } from '../../domain/labour/repeats.ts';
import type { LabourLine } from '../../domain/labour/result.ts';
import { workOf } from '../../domain/labour/work-of.ts';
import { countRun } from '../../domain/takeoff/count-run.ts';
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

/** The same for a few runs, by their labels, without working out the others. */
export function budgetAt(design: JobDesign, keys: ReadonlySet<string>): Budget {
  const { job, layouts } = design;
  const { labourBook: book } = job;
  if (book === null) return new Map();
  const repeats = repeatsOf(
    job.levels,
    job.runs.filter((_, index) => layouts[index]?.ok),
    book.learning?.over ?? 'run',
  );
  return new Map(
    job.runs.flatMap((run, index) => {
      const layout = layouts[index];
      const repeat = repeats.get(run.id);
      if (!keys.has(run.id) || layout === undefined || repeat === undefined) return [];
      const level = job.levels.find(({ id }) => id === run.level);
      const type = job.types.find(({ id }) => id === run.type);
      if (level === undefined || type === undefined) throw new Error(`run ${run.id} names what the job does not hold`);
      return [
        [
          run.id,
          runLabourLines(
            { run, level, repeat, ratedCurrentA: type.ratedCurrentA },
            layout,
            countRun(run, type, layout),
            book,
          ),
        ] as const,
      ];
    }),
  );
}
