import type { FastifyReply, FastifyRequest } from 'fastify';
import { noFault } from '../../../views/components/fault-of.ts';
import { NewJobPage } from '../../../views/pages/new-job.tsx';
import type { Context } from '../../actions/context.ts';
import { createProject } from '../../actions/projects.ts';
import type { ProjectDocument } from '../../document/job-document.ts';
import { readProjectForm } from '../../document/project-form.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, type Entered, entered, type FormTrouble, formSubmission } from './form.ts';
import { goTo, sendPage } from './page.ts';

/** The heading of an empty job. */
export function newJob(app: App, context: Context): void {
  const show = (request: FastifyRequest, reply: FastifyReply, fields: Entered, trouble?: FormTrouble) =>
    sendPage(
      request,
      reply,
      {
        title: 'Make an empty job',
        asOf: context.clock(),
        trail: [{ word: 'Jobs', href: '/jobs' }],
        status: trouble?.status ?? 200,
        ...(trouble === undefined ? {} : { flash: { kind: 'stop' as const, text: trouble.notice } }),
      },
      NewJobPage({
        csrf: formToken(reply),
        submissionId: context.newId(),
        entered: fields,
        faultOf: trouble?.faultOf ?? noFault,
      }),
    );

  app.get('/jobs/new', { schema: { hide: true } }, (request, reply) => {
    viewerOf(request);
    return show(request, reply, {});
  });

  app.post('/jobs/new', { schema: { hide: true } }, async (request, reply) => {
    const fields = entered(request);
    const project = readProjectForm(fields) as unknown as ProjectDocument; // the action checks the whole of it
    const tried = await attempt(() => createProject(context, viewerOf(request), project, formSubmission(request)));
    if (!tried.ok) return show(request, reply, fields, tried.trouble);
    return goTo(
      reply,
      `/jobs/${tried.value.id}/settings`,
      `Job ${tried.value.document.number} is made. Give it its levels and busway types next, then its runs under Lists.`,
    );
  });
}
