import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { ToolsPage } from '../../../views/pages/tools.tsx';
import type { Context } from '../../actions/context.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { listTools, previewLapse, recordLapse } from '../../actions/tool-lapses.ts';
import { toolLapseSchema } from '../../document/tool-lapse.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, type FormTrouble, formSubmission, readForm } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string() });
const query = z.object({ tool: z.string().max(64).default(''), lastGood: z.string().max(20).default('') });
type Query = z.infer<typeof query>;

/** Tools and instruments of the records; one that was found out of calibration reopens what it touched. */
export function tools(app: App, context: Context): void {
  const path = '/jobs/:jobId/inspections/tools';

  app.get(path, { schema: { hide: true, params, querystring: query } }, (request, reply) =>
    show(context, request, reply, request.params.jobId, request.query),
  );

  app.post(path, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const fields = entered(request);
    const tried = await attempt(async () =>
      recordLapse(context, viewerOf(request), jobId, readForm(toolLapseSchema, fields), formSubmission(request)),
    );
    const asked = { tool: fields.tool ?? '', lastGood: fields.lastGood ?? '' };
    if (!tried.ok) return show(context, request, reply, jobId, asked, tried.trouble);
    const { tool, joints, tests } = tried.value;
    return goTo(reply, path.replace(':jobId', jobId), `${tool}: ${reopened(joints, tests)}`);
  });
}

function reopened(joints: number, tests: number): string {
  const of = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
  return `${of(joints, 'joint is', 'joints are')} reopened, ${of(tests, 'insulation test counts', 'insulation tests count')} no longer.`;
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  asked: Query,
  trouble?: FormTrouble,
): Promise<FastifyReply> {
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId);
  const [uses, preview] = [await listTools(context, viewer, jobId), await previewOf(context, request, jobId, asked)];
  return sendPage(
    request,
    reply,
    jobSheet(context, heading, { title: 'Tools and instruments', part: 'inspections', trouble }),
    ToolsPage({
      jobId,
      path: `/jobs/${jobId}/inspections/tools`,
      zone: heading.project.timeZone,
      mayInspect: heading.reached.may('inspect'),
      uses,
      asked,
      fault:
        asked.tool !== '' && preview === null ? 'Choose the tool and its last good day, such as 2026-05-09.' : null,
      preview,
      cause: entered(request).cause ?? '',
      causeFault: trouble?.faultOf('cause'),
      csrf: formToken(reply),
      submissionId: entered(request).submissionId ?? context.newId(),
    }),
  );
}

async function previewOf(context: Context, request: FastifyRequest, jobId: string, asked: Query) {
  const parsed = toolLapseSchema.pick({ tool: true, lastGood: true }).safeParse(asked);
  return parsed.success ? previewLapse(context, viewerOf(request), jobId, parsed.data) : null;
}
