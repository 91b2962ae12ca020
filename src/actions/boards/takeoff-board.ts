import type { RunLayout } from '../../domain/layout/result.ts';
import type { BuswayType } from '../../domain/model.ts';
import { planRods, type RodPlan } from '../../domain/takeoff/plan-rods.ts';
import type { TakeoffLine } from '../../domain/takeoff/result.ts';
import { type SummedLine, sumTakeoff } from '../../domain/takeoff/sum-takeoff.ts';
import type { Context, Viewer } from '../context.ts';
import { figuresOf } from '../figures.ts';
import { type JobHeading, jobHeading } from '../job-heading.ts';

export type SummedBy = 'job' | 'level' | 'run';

export interface TakeoffBoard {
  readonly heading: JobHeading;
  /** One level alone, or the whole job. */
  readonly lines: readonly SummedLine[];
  /** Line by line as counted, for a file. */
  readonly counted: readonly TakeoffLine[];
  readonly levels: readonly { readonly id: string; readonly name: string }[];
  readonly types: ReadonlyMap<string, BuswayType>;
  readonly rods: readonly RodPlan[];
  /** Runs without a sound layout: nothing of them is counted. */
  readonly leftOut: readonly string[];
}

/** The order lines of a job, added up over the job, by level or by run, each with the lines it was added up from. */
export async function takeoffBoard(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: { readonly by: SummedBy; readonly level: string },
): Promise<TakeoffBoard> {
  const heading = await jobHeading(context, viewer, projectId);
  const { figures, job } = await figuresOf(context.database.db, projectId);
  const counted = asked.level === '' ? figures.takeoff : figures.takeoff.filter((line) => line.level === asked.level);
  const levels = [...job.levels].sort((a, b) => a.order - b.order);
  return {
    heading,
    counted,
    lines: inOrder(sumTakeoff(counted, asked.by), levels),
    levels,
    types: new Map(job.types.map((type) => [type.id, type])),
    rods: planRods(job, figures.layouts),
    leftOut: figures.layouts.filter((layout: RunLayout) => !layout.ok).map((layout) => layout.run),
  };
}

/** Levels in the order of work, what belongs to none of them last; within a level as counted. */
function inOrder(lines: readonly SummedLine[], levels: readonly { readonly id: string }[]): SummedLine[] {
  const place = new Map(levels.map((level, index) => [level.id, index]));
  const at = (line: SummedLine) => (line.level === null ? levels.length : (place.get(line.level) ?? levels.length));
  return [...lines].sort((a, b) => at(a) - at(b));
}
