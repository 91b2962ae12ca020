import type { CrewPlan } from '../domain/schedule/plan-crews.ts';
import type { Context, Viewer } from './context.ts';
import { getCrewPlan } from './crew-plans.ts';

/** How the job is manned, as the domain plans it; null while nobody has said. */
export async function crewPlanOf(context: Context, viewer: Viewer, projectId: string): Promise<CrewPlan | null> {
  const { document } = await getCrewPlan(context, viewer, projectId);
  if (document === null) return null;
  const { weekdays, holidays, ...rest } = document;
  return { ...rest, calendar: { weekdays, holidays } };
}
