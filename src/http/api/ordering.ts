import type { Context } from '../../actions/context.ts';
import { extrasSchema, extrasViewSchema, getExtras, setExtras } from '../../actions/extras.ts';
import { getOrdering, orderingViewSchema, setOrdering } from '../../actions/orderings.ts';
import { orderingSchema } from '../../document/job-document.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { changeHeaders, problems, projectParams, readVersion, stamp } from './conventions.ts';

/** The job's rules for ordering, and the lines that are added to the takeoff by hand. */
export function ordering(app: App, context: Context): void {
  const tags = ['Ordering'];
  const rules = '/projects/:projectId/ordering';
  const byHand = '/projects/:projectId/extras';

  app.get(
    rules,
    {
      schema: {
        tags,
        summary: 'The rules for ordering',
        description: 'Spares, lead times, cord and strip stock, tools by crew. No money in it.',
        params: projectParams,
        response: { 200: orderingViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const view = await getOrdering(context, viewerOf(request), request.params.projectId);
      stamp(reply, view.version);
      return view;
    },
  );

  app.put(
    rules,
    {
      schema: {
        tags,
        summary: 'Set the rules for ordering',
        params: projectParams,
        headers: changeHeaders,
        body: orderingSchema,
        response: { 200: orderingViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params;
      const view = await setOrdering(context, viewerOf(request), projectId, readVersion(request), request.body);
      stamp(reply, view.version);
      return view;
    },
  );

  app.get(
    byHand,
    {
      schema: {
        tags,
        summary: 'The lines that were added by hand',
        description: 'Office only: they may have prices.',
        params: projectParams,
        response: { 200: extrasViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const view = await getExtras(context, viewerOf(request), request.params.projectId);
      stamp(reply, view.version);
      return view;
    },
  );

  app.put(
    byHand,
    {
      schema: {
        tags,
        summary: 'Set the lines that are added by hand',
        params: projectParams,
        headers: changeHeaders,
        body: extrasSchema,
        response: { 200: extrasViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params;
      const view = await setExtras(context, viewerOf(request), projectId, readVersion(request), request.body);
      stamp(reply, view.version);
      return view;
    },
  );
}
