import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { Upgrade } from '../../../../views/pages/labour-book/upgrade.tsx';
import type { Context } from '../../../actions/context.ts';
import { jobHeading } from '../../../actions/job-heading.ts';
import type { BookUpgrade } from '../../../actions/labour-book-changes.ts';
import { getLabourBook } from '../../../actions/labour-books.ts';
import { formToken } from '../../plugins/sessions.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { jobSheet } from '../job-sheet.ts';
import { sendPage } from '../page.ts';

const params = z.object({ jobId: z.string() });

/** What another book would change in the job, and the button that takes it. */
export async function showUpgrade(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  of: { upgrade: BookUpgrade; to: string; title: string; action: string; text?: string },
): Promise<FastifyReply> {
  const { jobId } = params.parse(request.params);
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId, 'money');
  const { version, document } = await getLabourBook(context, viewer, jobId);
  return sendPage(
    request,
    reply,
    jobSheet(context, heading, { title: of.title, part: 'hours', revision: `design ${heading.designVersion}` }),
    Upgrade({
      ...of.upgrade,
      currency: heading.project.currency,
      from: document?.version ?? null,
      to: of.to,
      action: of.action,
      csrf: formToken(reply),
      version: version + 1,
      ...(of.text === undefined ? {} : { text: of.text }),
      leaveHref: `/jobs/${jobId}/labour-book/shelf`,
    }),
  );
}
