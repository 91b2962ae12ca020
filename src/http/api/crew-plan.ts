import type { Context } from '../../actions/context.ts';
import { crewPlanViewSchema, getCrewPlan, setCrewPlan } from '../../actions/crew-plans.ts';
import { crewPlanSchema } from '../../document/crew-plan/schema.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { changeHeaders, problems, projectParams, readVersion, stamp } from './conventions.ts';

const tags = ['Crew plan'];

/** How a job is manned. */
export function crewPlan(app: App, context: Context): void {
  const path = '/projects/:projectId/crew-plan';

  app.get(
    path,
    {
      schema: {
        tags,
        summary: 'How the job is manned',
        params: projectParams,
        response: { 200: crewPlanViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const view = await getCrewPlan(context, viewerOf(request), request.params.projectId);
      stamp(reply, view.version);
      return view;
    },
  );

  app.put(
    path,
    {
      schema: {
        tags,
        summary: 'Set how the job is manned',
        params: projectParams,
        headers: changeHeaders,
        body: crewPlanSchema,
        response: { 200: crewPlanViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params;
      const view = await setCrewPlan(context, viewerOf(request), projectId, readVersion(request), request.body);
      stamp(reply, view.version);
      return view;
    },
  );
}
