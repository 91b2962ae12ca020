import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { noFault } from '../../../../views/components/fault-of.ts';
import { ShelfPage, type ShelfPageProps } from '../../../../views/pages/labour-book/shelf.tsx';
import type { Context } from '../../../actions/context.ts';
import { jobHeading } from '../../../actions/job-heading.ts';
import { listShelf } from '../../../actions/labour-book-shelf.ts';
import { getLabourBook } from '../../../actions/labour-books.ts';
import { formToken } from '../../plugins/sessions.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import type { Entered, FormTrouble } from '../form.ts';
import { jobSheet } from '../job-sheet.ts';
import { sendPage } from '../page.ts';
import { pagerOf } from '../pager.ts';

const params = z.object({ jobId: z.string() });
export const shelfQuery = z.object({ page: z.coerce.number().int().min(1).default(1).catch(1) });
const BOOKS_A_PAGE = 50;

export interface ShelfTried {
  readonly fields?: Entered;
  readonly trouble?: FormTrouble;
  readonly sheet?: ShelfPageProps['sheet'];
}

/** The shelf, with what was typed and why it was not taken. */
export async function showShelf(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  { fields = {}, trouble, sheet = { text: '', faults: [] } }: ShelfTried,
): Promise<FastifyReply> {
  const { jobId } = params.parse(request.params);
  const { page } = shelfQuery.parse(request.query ?? {});
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId, 'money');
  const listed = await listShelf(context, viewer, jobId, { page, limit: BOOKS_A_PAGE });
  const { document } = await getLabourBook(context, viewer, jobId);
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, { title: 'Labour books of the company', part: 'hours', trouble }),
      status: trouble?.status ?? (sheet.faults.length > 0 ? 422 : 200),
    },
    ShelfPage({
      jobId,
      csrf: formToken(reply),
      submissionId: fields.submissionId ?? context.newId(),
      zone: heading.project.timeZone ?? null,
      own: document?.version ?? null,
      books: listed.items,
      pager: listed.total > BOOKS_A_PAGE ? pagerOf(listed, 'books', `/jobs/${jobId}/labour-book/shelf`, {}) : null,
      entered: fields,
      faultOf: trouble?.faultOf ?? noFault,
      sheet,
    }),
  );
}
