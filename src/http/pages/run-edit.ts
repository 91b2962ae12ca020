import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { changeRun, createRun, removeRun } from '../../actions/runs.ts';
import { takePasted } from '../../document/run-form/pasted.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, formSubmission, formVersion } from './form.ts';
import { goTo } from './page.ts';
import { runParams } from './run.ts';
import { afterStale } from './run-edit/after-stale.ts';
import { readRun } from './run-edit/read-run.ts';
import { showDrawing } from './run-edit/show-drawing.ts';
import { type Asked, showRunForm } from './run-edit/show-run-form.ts';

const jobParams = z.object({ jobId: z.string() });

/** A run's design as a form: a new run, a change, a removal. */
export function runEdit(app: App, context: Context): void {
  app.get(
    '/jobs/:jobId/runs/new',
    { schema: { hide: true, params: jobParams, querystring: z.object({ level: z.string().optional() }) } },
    (request, reply) =>
      showRunForm(context, request, reply, {
        jobId: request.params.jobId,
        runId: null,
        ...(request.query.level === undefined ? {} : { level: request.query.level }),
      }),
  );

  app.post('/jobs/:jobId/runs/new', { schema: { hide: true, params: jobParams } }, (request, reply) =>
    save(context, request, reply, { jobId: request.params.jobId, runId: null }),
  );

  app.get('/jobs/:jobId/runs/:runId/edit', { schema: { hide: true, params: runParams } }, (request, reply) =>
    showRunForm(context, request, reply, request.params),
  );

  app.post('/jobs/:jobId/runs/:runId/edit', { schema: { hide: true, params: runParams } }, (request, reply) =>
    save(context, request, reply, request.params),
  );

  // Where "Show drawing" leads without script; asked for again by address, it is the form.
  app.get('/jobs/:jobId/runs/:runId/drawing', { schema: { hide: true, params: runParams } }, async (request, reply) => {
    const { jobId, runId } = request.params;
    return goTo(reply, runId === 'new' ? `/jobs/${jobId}/runs/new` : `/jobs/${jobId}/runs/${runId}/edit`);
  });

  app.post('/jobs/:jobId/runs/new/drawing', { schema: { hide: true, params: jobParams } }, (request, reply) =>
    showDrawing(context, request, reply, { jobId: request.params.jobId, runId: null }),
  );

  app.post('/jobs/:jobId/runs/:runId/drawing', { schema: { hide: true, params: runParams } }, (request, reply) =>
    showDrawing(context, request, reply, request.params),
  );

  app.post(
    '/jobs/:jobId/runs/:runId/removal',
    { schema: { hide: true, params: runParams } },
    async (request, reply) => {
      const { jobId, runId } = request.params;
      const tried = await attempt(async () =>
        removeRun(context, viewerOf(request), jobId, runId, formVersion(request)),
      );
      if (!tried.ok) return showRunForm(context, request, reply, { jobId, runId, trouble: tried.trouble });
      return goTo(reply, `/jobs/${jobId}/floors`, 'The run is removed from the design.');
    },
  );
}

async function save(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  of: Pick<Asked, 'jobId' | 'runId'>,
): Promise<FastifyReply> {
  const { jobId, runId } = of;
  const viewer = viewerOf(request);
  const { entered: fields, faults } = takePasted(entered(request));
  if (Object.keys(faults).length > 0) return showRunForm(context, request, reply, { ...of, fields });
  const read = await readRun(context, viewer, of, fields);
  if (read.again !== null) return showRunForm(context, request, reply, { ...of, fields, read: read.again });
  const tried = await attempt(async () =>
    runId === null
      ? createRun(context, viewer, jobId, read.run, formSubmission(request))
      : changeRun(context, viewer, jobId, runId, formVersion(request), read.run),
  );
  if (tried.ok) {
    const stops = tried.value.layout.findings.filter((finding) => finding.severity === 'stop').length;
    const said = stops === 0 ? '' : ` ${stops === 1 ? 'One stop stands' : `${stops} stops stand`} among the checks.`;
    return goTo(reply, `/jobs/${jobId}/runs/${tried.value.id}`, `${read.run.id} is saved and laid out anew.${said}`);
  }
  const { trouble } = tried;
  if (trouble.refusal.code === 'stale' && runId !== null)
    return showRunForm(context, request, reply, { ...of, ...afterStale(trouble.refusal, fields, read.project) });
  return showRunForm(context, request, reply, { ...of, fields, trouble, fieldOf: read.fieldOf });
}
