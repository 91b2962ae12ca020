import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { noFault } from '../../../views/components/fault-of.ts';
import { MembersPage } from '../../../views/pages/members.tsx';
import type { Context } from '../../actions/context.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { listMembers, membershipSchema, removeMember, setMember } from '../../actions/members.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, type FormTrouble, formVersion, readForm } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string() });

/** Who works on a job. */
export function members(app: App, context: Context): void {
  const show = async (request: FastifyRequest, reply: FastifyReply, jobId: string, trouble?: FormTrouble) => {
    const viewer = viewerOf(request);
    const heading = await jobHeading(context, viewer, jobId);
    const listed = await listMembers(context, viewer, jobId);
    return sendPage(
      request,
      reply,
      jobSheet(context, heading, { title: 'Members', part: 'settings', trouble }),
      MembersPage({
        jobId,
        members: [...listed].sort((a, b) => a.name.localeCompare(b.name, 'en')),
        changing: heading.reached.may('members')
          ? {
              csrf: formToken(reply),
              entered: trouble === undefined ? {} : entered(request),
              faultOf: trouble?.faultOf ?? noFault,
            }
          : null,
      }),
    );
  };

  app.get('/jobs/:jobId/members', { schema: { hide: true, params } }, (request, reply) =>
    show(request, reply, request.params.jobId),
  );

  app.post('/jobs/:jobId/members', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const tried = await attempt(async () =>
      setMember(context, viewerOf(request), jobId, readForm(membershipSchema, entered(request))),
    );
    if (!tried.ok) return show(request, reply, jobId, tried.trouble);
    return goTo(reply, `/jobs/${jobId}/members`, `${tried.value.name} is set.`);
  });

  app.post(
    '/jobs/:jobId/members/:userId/removal',
    { schema: { hide: true, params: params.extend({ userId: z.string() }) } },
    async (request, reply) => {
      const { jobId, userId } = request.params;
      const tried = await attempt(async () =>
        removeMember(context, viewerOf(request), jobId, userId, formVersion(request)),
      );
      if (!tried.ok) return show(request, reply, jobId, tried.trouble);
      const gone = userId === viewerOf(request).userId;
      return goTo(reply, gone ? '/jobs' : `/jobs/${jobId}/members`, 'Taken out of the job.');
    },
  );
}
