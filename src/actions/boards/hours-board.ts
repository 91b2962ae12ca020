import { type Bar, histogram } from '../../domain/labour/histogram.ts';
import { spreadShares } from '../../domain/labour/hours-range.ts';
import type { Activity, Labour, LabourLine } from '../../domain/labour/result.ts';
import { simulateHours } from '../../domain/labour/simulate-hours.ts';
import type { LabourBook } from '../../domain/model.ts';
import type { Context, Viewer } from '../context.ts';
import { figuresOf } from '../figures.ts';
import { type JobHeading, jobHeading } from '../job-heading.ts';

export interface HoursBoard {
  readonly heading: JobHeading;
  readonly levels: readonly { readonly id: string; readonly name: string }[];
  readonly labour: Labour | null;
  /** Crew rates are left out for anybody but the office. */
  readonly book: LabourBook | null;
  readonly leftOut: readonly string[];
  /** How the trials came out, and which activities drive their spread, greatest share first. */
  readonly spread: Spread | null;
}

export interface Spread {
  readonly bars: readonly Bar[];
  readonly drivers: ReturnType<typeof spreadShares>;
}

const BARS = 40;
/** The trials are run again for their picture, once for the same hours. */
const drawn = new WeakMap<Labour, Spread>();

/** The hours of a job with everything that made them; the crew's rates and the cost of an hour for the office alone. */
export async function hoursBoard(context: Context, viewer: Viewer, projectId: string): Promise<HoursBoard> {
  const heading = await jobHeading(context, viewer, projectId);
  const { figures, job } = await figuresOf(context.database.db, projectId);
  const mayMoney = heading.reached.may('money');
  const { labour } = figures;
  return {
    heading,
    levels: [...job.levels].sort((a, b) => a.order - b.order),
    labour: labour === null || mayMoney ? labour : { ...labour, costPerProductiveHour: null },
    book: job.labourBook === null || mayMoney ? job.labourBook : { ...job.labourBook, crew: [], overtime: null },
    leftOut: figures.layouts.filter((layout) => !layout.ok).map((layout) => layout.run),
    spread: labour === null || job.labourBook === null ? null : spreadOf(labour, job.labourBook),
  };
}

function spreadOf(labour: Labour, book: LabourBook): Spread {
  const known = drawn.get(labour);
  if (known !== undefined) return known;
  const spread = {
    bars: histogram(simulateHours(labour.lines, book), BARS),
    drivers: spreadShares(labour.lines, book.correlation),
  };
  drawn.set(labour, spread);
  return spread;
}

/** Lines of one activity, on one level or on none. */
export function linesOf(
  labour: Labour,
  activity: Activity | 'extra',
  level: string | null | undefined,
): readonly LabourLine[] {
  return labour.lines.filter((line) => line.activity === activity && (level === undefined || line.level === level));
}

/** Ids of the runs of some lines, by label: where each line's run can be opened. A page of lines, not all of a job. */
export async function runIdsOf(
  context: Context,
  projectId: string,
  lines: readonly LabourLine[],
): Promise<ReadonlyMap<string, string>> {
  const keys = [...new Set(lines.flatMap(({ run }) => (run === null ? [] : [run])))];
  const rows = await context.database.db.run.findMany({
    where: { projectId, key: { in: keys } },
    select: { id: true, key: true },
  });
  return new Map(rows.map(({ id, key }) => [key, id]));
}
