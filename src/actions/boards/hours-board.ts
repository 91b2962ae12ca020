import type { Activity, Labour, LabourLine } from '../../domain/labour/result.ts';
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
}

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
    book: job.labourBook === null || mayMoney ? job.labourBook : { ...job.labourBook, crew: [] },
    leftOut: figures.layouts.filter((layout) => !layout.ok).map((layout) => layout.run),
  };
}

/** Lines of one activity, on one level or on none. */
export function linesOf(
  labour: Labour,
  activity: Activity | 'extra',
  level: string | null | undefined,
): readonly LabourLine[] {
  return labour.lines.filter((line) => line.activity === activity && (level === undefined || line.level === level));
}
