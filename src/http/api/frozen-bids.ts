import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { freezeBid, frozenDocument, getFrozenBid, listFrozenBids } from '../../actions/frozen-bids.ts';
import { listOf, pageQuerySchema } from '../../actions/paging.ts';
import { frozenBidSchema, frozenBidWholeSchema } from '../../document/frozen-bid.ts';
import { jobDocumentSchema } from '../../document/job-document.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { createHeaders, itemParams, problems, projectParams, readSubmission } from './conventions.ts';

const tags = ['Bid'];
const path = '/projects/:projectId/frozen-bids';

/** Bids that were frozen. They are made and read; nothing changes or removes one. */
export function frozenBids(app: App, context: Context): void {
  app.get(
    path,
    {
      schema: {
        tags,
        summary: 'Frozen bids, newest first',
        params: projectParams,
        querystring: pageQuerySchema,
        response: { 200: listOf(frozenBidSchema), ...problems },
      },
    },
    async (request) => listFrozenBids(context, viewerOf(request), request.params.projectId, request.query),
  );

  app.post(
    path,
    {
      schema: {
        tags,
        summary: 'Freeze the bid as it stands',
        params: projectParams,
        headers: createHeaders,
        body: z.strictObject({ name: z.string().describe('What it is called, up to 100 letters') }),
        response: { 201: frozenBidSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params;
      const made = await freezeBid(context, viewerOf(request), projectId, request.body.name, readSubmission(request));
      return reply.status(201).send(made);
    },
  );

  app.get(
    `${path}/:id`,
    {
      schema: {
        tags,
        summary: 'One frozen bid with its figures',
        params: itemParams,
        response: { 200: frozenBidWholeSchema, ...problems },
      },
    },
    async (request) => getFrozenBid(context, viewerOf(request), request.params.projectId, request.params.id),
  );

  app.get(
    `${path}/:id/document`,
    {
      schema: {
        tags,
        summary: 'The job document that a bid was frozen from',
        params: itemParams,
        response: { 200: jobDocumentSchema, ...problems },
      },
    },
    async (request) => frozenDocument(context, viewerOf(request), request.params.projectId, request.params.id),
  );
}
