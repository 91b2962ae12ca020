import { bidViewSchema, getBid, setBid } from '../../actions/bids.ts';
import type { Context } from '../../actions/context.ts';
import { bidSchema } from '../../document/job-document.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { changeHeaders, problems, projectParams, readVersion, stamp } from './conventions.ts';

const tags = ['Bid'];

/** What was entered for the bid; its lines and price are part of the figures. */
export function bid(app: App, context: Context): void {
  app.get(
    '/projects/:projectId/bid',
    {
      schema: {
        tags,
        summary: 'What was entered for the bid',
        description: 'Office only. The lines and the price are worked with the figures.',
        params: projectParams,
        response: { 200: bidViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const view = await getBid(context, viewerOf(request), request.params.projectId);
      stamp(reply, view.version);
      return view;
    },
  );

  app.put(
    '/projects/:projectId/bid',
    {
      schema: {
        tags,
        summary: 'Set the entries of the bid',
        params: projectParams,
        headers: changeHeaders,
        body: bidSchema,
        response: { 200: bidViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params;
      const view = await setBid(context, viewerOf(request), projectId, readVersion(request), request.body);
      stamp(reply, view.version);
      return view;
    },
  );
}
