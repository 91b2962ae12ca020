import { createHash } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { JobsPage, type JobsPageProps, JobsTools, OpenJob } from '../../../views/pages/jobs.tsx';
import { roleWord } from '../../../views/words/roles.ts';
import type { Context } from '../../actions/context.ts';
import { importDocument } from '../../actions/job-documents.ts';
import { findJobByNumber, jobList } from '../../actions/job-list.ts';
import { pageQuerySchema } from '../../actions/paging.ts';
import { refuse } from '../../actions/refused.ts';
import { demoJob } from '../../document/demo/demo-job.ts';
import { parseJsonText } from '../../document/parse-text.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, enteredFile, type FormTrouble, formSubmission } from './form.ts';
import { goTo, type Sheet, sendPage } from './page.ts';
import { pagerOf } from './pager.ts';

const query = pageQuerySchema.extend({
  limit: pageQuerySchema.shape.limit.default(50),
  q: z.string().max(200).default(''),
  archived: z.enum(['yes', 'no']).default('no').catch('no'),
});

/** The jobs of a person, and bringing in another: a document, or the demo job. */
export function jobs(app: App, context: Context): void {
  app.get('/jobs', { schema: { hide: true, querystring: query } }, (request, reply) =>
    showJobs(context, request, reply, request.query, {}),
  );

  app.get('/jobs/:jobId', { schema: { hide: true, params: z.object({ jobId: z.string() }) } }, (request, reply) =>
    reply.redirect(`/jobs/${encodeURIComponent(request.params.jobId)}/floors`, 303),
  );

  app.post('/jobs/documents', { schema: { hide: true } }, async (request, reply) => {
    const text = documentText(request);
    const tried = await attempt(async () => {
      const read = parseJsonText(text);
      if (!read.ok) return refuse({ code: 'invalid', faults: read.faults });
      return importDocument(context, viewerOf(request), read.value, submissionOf(request, text));
    });
    if (tried.ok)
      return goTo(reply, `/jobs/${tried.value.id}/floors`, `Job ${tried.value.document.number} is brought in.`);
    const shown = typeof text === 'string' ? text : new TextDecoder().decode(text);
    return showJobs(context, request, reply, query.parse({}), {
      text: shown,
      trouble: tried.trouble,
      number: numberIn(tried.trouble),
    });
  });

  app.post('/jobs/demo', { schema: { hide: true } }, async (request, reply) => {
    const demoNumber = (entered(request).demoNumber ?? '').trim();
    const document = demoJob();
    const tried = await attempt(() =>
      importDocument(
        context,
        viewerOf(request),
        { ...document, project: { ...document.project, number: demoNumber } },
        formSubmission(request),
      ),
    );
    if (tried.ok)
      return goTo(reply, `/jobs/${tried.value.id}/floors`, 'The demo job is in. Everything in it is invented.');
    return showJobs(context, request, reply, query.parse({}), {
      demoNumber,
      demoFault: tried.trouble.faults.map((fault) => `${fault.message} ${fault.remedy}`).join(' '),
      trouble: { ...tried.trouble, faults: [] },
      number: numberIn(tried.trouble),
    });
  });
}

interface Tried {
  readonly text?: string;
  readonly trouble?: FormTrouble;
  readonly demoNumber?: string;
  readonly demoFault?: string;
  /** The number that another job has. */
  readonly number?: string | null;
}

async function showJobs(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  asked: z.infer<typeof query>,
  tried: Tried,
): Promise<FastifyReply> {
  const viewer = viewerOf(request);
  const { q, archived } = asked;
  const listed = await jobList(context, viewer, { ...asked, archived: archived === 'yes' });
  const props: JobsPageProps = {
    jobs: listed.items.map(({ project, runs, released }) => ({
      id: project.id,
      number: project.document.number,
      name: project.document.name,
      client: project.document.client ?? '',
      site: project.document.site ?? '',
      roleWord: roleWord(project.role, viewer.administrator),
      runs,
      released,
    })),
    pager: pagerOf(listed, 'jobs', '/jobs', { q, archived: archived === 'yes' ? 'yes' : '' }),
    q,
    archived,
    making: listed.mayMake
      ? {
          csrf: formToken(reply),
          submissionId: context.newId(),
          text: tried.text ?? '',
          faults: tried.trouble?.faults ?? [],
          demoNumber: tried.demoNumber ?? demoJob().project.number,
          ...(tried.demoFault ? { demoFault: tried.demoFault } : {}),
        }
      : null,
  };
  const flash = await flashOf(context, request, tried);
  return sendPage(
    request,
    reply,
    {
      title: 'Jobs',
      asOf: context.clock(),
      trail: [],
      status: tried.trouble?.status ?? 200,
      tools: JobsTools({ administrator: viewer.administrator }),
      ...(flash === undefined ? {} : { flash }),
    },
    JobsPage(props),
  );
}

async function flashOf(context: Context, request: FastifyRequest, { trouble, number }: Tried): Promise<Sheet['flash']> {
  if (trouble === undefined) return undefined;
  const taken = number ? await findJobByNumber(context, viewerOf(request), number) : null;
  return {
    kind: 'stop',
    text: trouble.notice,
    ...(taken === null ? {} : { undo: OpenJob({ id: taken, number: number ?? '' }) }),
  };
}

function numberIn({ refusal }: FormTrouble): string | null {
  return refusal.code === 'duplicate' && refusal.field === 'number' ? refusal.value : null;
}

function documentText(request: FastifyRequest): string | Uint8Array {
  return enteredFile(request, 'file') ?? entered(request).text ?? '';
}

/** The form's key with what was sent under it, a file by its hash. */
function submissionOf(request: FastifyRequest, text: string | Uint8Array) {
  const { submissionId } = entered(request);
  if (submissionId === undefined || submissionId === '') return null;
  return { key: submissionId, request: { url: request.url, hash: createHash('sha256').update(text).digest('hex') } };
}
