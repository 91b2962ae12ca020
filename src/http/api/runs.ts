import { z } from 'zod';
import type { Context, Viewer } from '../../actions/context.ts';
import type { Submission } from '../../actions/once.ts';
import { listOf, pageQuerySchema } from '../../actions/paging.ts';
import { release, releaseSchema, releaseViewSchema } from '../../actions/releases.ts';
import { runCoverings } from '../../actions/run-coverings.ts';
import { changeRun, createRun, getRun, listRuns, type RunView, removeRun, runRowSchema } from '../../actions/runs.ts';
import { type RunDocument, runSchema } from '../../document/job-document.ts';
import { printCoverings, printedCoveringsSchema } from '../../document/print-coverings.ts';
import { printedLayoutSchema, printLayout } from '../../document/print-layout.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { createHeaders, itemParams, problems, projectParams, readSubmission } from './conventions.ts';
import { crud } from './crud.ts';

const runViewSchema = runRowSchema.extend({ document: runSchema, layout: printedLayoutSchema });

export function runs(app: App, context: Context): void {
  app.get(
    '/projects/:projectId/runs',
    {
      schema: {
        tags: ['Runs'],
        summary: 'Runs of a job',
        params: projectParams,
        querystring: pageQuerySchema.extend({
          level: z.string().optional(),
          type: z.string().optional(),
          side: z.enum(['A', 'B']).optional(),
          released: z.stringbool().optional(),
          q: z.string().optional(),
        }),
        response: { 200: listOf(runRowSchema), ...problems },
      },
    },
    (request) => listRuns(context, viewerOf(request), request.params.projectId, request.query),
  );

  crud(app, context, {
    path: 'runs',
    tag: 'Runs',
    one: 'run',
    body: runSchema,
    view: runViewSchema,
    get: async (c: Context, viewer: Viewer, projectId: string, id: string) =>
      shown(await getRun(c, viewer, projectId, id)),
    create: async (c: Context, viewer: Viewer, projectId: string, body: RunDocument, submission: Submission | null) =>
      shown(await createRun(c, viewer, projectId, body, submission)),
    change: async (c: Context, viewer: Viewer, projectId: string, id: string, version: number, body: RunDocument) =>
      shown(await changeRun(c, viewer, projectId, id, version, body)),
    remove: removeRun,
  });

  app.get(
    '/projects/:projectId/runs/:id/coverings',
    {
      schema: {
        tags: ['Runs'],
        summary: 'The best covering of a run and the next two distinct ones',
        description:
          'From the design as it stands, the winner first, each with why it lost. Distinct: other stock pieces, another order of these, or the cut in another place, in some straight part. Amounts for the office alone.',
        params: itemParams,
        response: { 200: printedCoveringsSchema, ...problems },
      },
    },
    async (request) => {
      const { projectId, id } = request.params;
      const { ranked, project, reached } = await runCoverings(context, viewerOf(request), projectId, id);
      return printCoverings(ranked, project, reached.may('money'));
    },
  );

  app.post(
    '/projects/:projectId/releases',
    {
      schema: {
        tags: ['Runs'],
        summary: 'Release runs to the floor',
        description:
          'Their pieces, joints, hangers and tap-offs get an identity that later revisions keep. A run with a stop or an unknown limit waits.',
        params: projectParams,
        headers: createHeaders,
        body: releaseSchema,
        response: { 201: releaseViewSchema, ...problems },
      },
    },
    async (request, reply) =>
      reply
        .code(201)
        .send(
          await release(context, viewerOf(request), request.params.projectId, request.body, readSubmission(request)),
        ),
  );
}

/** Lengths in millimetres, as everywhere in the API. */
function shown(view: RunView) {
  return { ...view, layout: printLayout(view.layout) };
}
