import { firstCrewPlan } from '../../document/crew-plan/first-plan.ts';
import type { CrewPlanDocument } from '../../document/crew-plan/schema.ts';
import { type CrewSchedule, planCrews } from '../../domain/schedule/plan-crews.ts';
import type { Context, Viewer } from '../context.ts';
import { getCrewPlan } from '../crew-plans.ts';
import { figuresOf } from '../figures.ts';
import { type JobHeading, jobHeading } from '../job-heading.ts';

export interface CrewsBoard {
  readonly heading: JobHeading;
  readonly version: number;
  /** As saved, or a suggestion to start from. */
  readonly plan: CrewPlanDocument;
  readonly saved: boolean;
  /** Version of the labour book. */
  readonly book: string | null;
  readonly levels: readonly { readonly id: string; readonly name: string }[];
  /** null while nothing is saved or no hours are worked. */
  readonly schedule: CrewSchedule | null;
}

/** Crews over the levels of a job, from its hours and its plan. Hours and heads alone: no rates. */
export async function crewsBoard(context: Context, viewer: Viewer, projectId: string): Promise<CrewsBoard> {
  const heading = await jobHeading(context, viewer, projectId);
  const { version, document } = await getCrewPlan(context, viewer, projectId);
  const { figures, job } = await figuresOf(context.database.db, projectId);
  const plan = document ?? firstCrewPlan(context.clock().toISOString().slice(0, 10));
  const { weekdays, holidays, ...rest } = plan;
  const { labour } = figures;
  return {
    heading,
    version,
    plan,
    saved: document !== null,
    book: job.labourBook?.version ?? null,
    levels: [...job.levels].sort((a, b) => a.order - b.order),
    schedule:
      document === null || labour === null
        ? null
        : planCrews({ ...rest, calendar: { weekdays, holidays } }, job.levels, labour.lines),
  };
}
