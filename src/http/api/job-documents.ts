import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { exportDocument, importDocument, previewDocument, replaceDocument } from '../../actions/job-documents.ts';
import { projectViewSchema } from '../../actions/projects.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import {
  changeHeaders,
  createHeaders,
  problems,
  projectParams,
  readSubmission,
  readVersion,
  stamp,
} from './conventions.ts';

const tags = ['Job document'];
/** The action checks the whole document, with a remedy beside every fault; here only its outline is described. */
const documentBody = z
  .looseObject({ format: z.literal('busway-jobbook/1') })
  .describe('A job document; its JSON Schema is at /api/v1/job-document.schema.json.');

const differenceSchema = z.object({
  differences: z.array(
    z.object({
      noun: z.string(),
      id: z.string(),
      run: z.string().nullable(),
      change: z.enum(['added', 'removed', 'changed', 'reordered']),
      fields: z.array(z.unknown()).readonly().describe('What differs, by path, with before and after.'),
    }),
  ),
});

export function jobDocuments(app: App, context: Context): void {
  app.post(
    '/job-documents',
    {
      schema: {
        tags,
        summary: 'Make a job from a job document',
        headers: createHeaders,
        body: z.unknown(),
        response: { 201: projectViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const made = await importDocument(context, viewerOf(request), request.body, readSubmission(request));
      stamp(reply, made.version);
      return reply.code(201).header('location', `/api/v1/projects/${made.id}`).send(made);
    },
  );

  app.get(
    '/projects/:projectId/document',
    {
      schema: {
        tags,
        summary: 'The job document',
        description: 'Without prices, rates and bid for anybody but the office.',
        params: projectParams,
        response: { 200: documentBody, ...problems },
      },
    },
    async (request, reply) => {
      const { document, designVersion } = await exportDocument(context, viewerOf(request), request.params.projectId);
      stamp(reply, designVersion);
      return reply.type('application/json').serializer(JSON.stringify).send(document);
    },
  );

  app.put(
    '/projects/:projectId/document',
    {
      schema: {
        tags,
        summary: 'Put another document in the place of the design',
        params: projectParams,
        headers: changeHeaders,
        body: z.unknown(),
        response: { 200: differenceSchema, ...problems },
      },
    },
    async (request) => ({
      differences: await replaceDocument(
        context,
        viewerOf(request),
        request.params.projectId,
        readVersion(request),
        request.body,
      ),
    }),
  );

  app.post(
    '/projects/:projectId/document-previews',
    {
      schema: {
        tags,
        summary: 'What a document would change',
        params: projectParams,
        body: z.unknown(),
        response: { 200: differenceSchema, ...problems },
      },
    },
    async (request) => ({
      differences: await previewDocument(context, viewerOf(request), request.params.projectId, request.body),
    }),
  );
}
