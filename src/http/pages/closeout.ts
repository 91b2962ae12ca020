import { z } from 'zod';
import { CloseoutPage, CloseoutTools } from '../../../views/pages/closeout.tsx';
import { buildCloseout, closeoutReadiness, type ReadinessView } from '../../actions/closeouts.ts';
import type { Context } from '../../actions/context.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { ROWS } from '../../domain/closeout/readiness.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { sendCloseout } from '../send-closeout.ts';
import { jobSheet } from './job-sheet.ts';
import { sendPage } from './page.ts';
import { pagerOf } from './pager.ts';

const params = z.object({ jobId: z.string() });
const query = z.object({
  row: z.enum(ROWS).optional().catch(undefined),
  page: z.coerce.number().int().min(1).default(1).catch(1),
});
const GAPS_A_PAGE = 100;

/** The closeout: readiness with its gaps, and the package. */
export function closeoutPages(app: App, context: Context): void {
  app.get('/jobs/:jobId/closeout', { schema: { hide: true, params, querystring: query } }, async (request, reply) => {
    const { jobId } = request.params;
    const { row, page } = request.query;
    const viewer = viewerOf(request);
    const heading = await jobHeading(context, viewer, jobId, 'closeout');
    const found = await closeoutReadiness(context, viewer, jobId, { row, page, limit: GAPS_A_PAGE });
    return sendPage(
      request,
      reply,
      jobSheet(context, heading, { title: 'Closeout', part: 'closeout', tools: CloseoutTools({ jobId }) }),
      CloseoutPage({
        ...found,
        jobId,
        chosen: row ?? null,
        gaps: found.gaps.items.map((gap) => ({ ...gap, title: titleOf(found, gap.row), href: hrefOf(jobId, gap) })),
        pager: pagerOf(found.gaps, 'gaps', `/jobs/${jobId}/closeout`, row === undefined ? {} : { row }),
      }),
    );
  });

  app.get('/jobs/:jobId/closeout.zip', { schema: { hide: true, params } }, async (request, reply) =>
    sendCloseout(reply, await buildCloseout(context, viewerOf(request), request.params.jobId)),
  );
}

function titleOf(found: ReadinessView, row: string): string {
  return found.rows.find((one) => one.row === row)?.title ?? row;
}

/** The page where the gap is closed. What was never released has no page but its run's. */
function hrefOf(jobId: string, { row, subject, id, runId }: ReadinessView['gaps']['items'][number]): string | null {
  if (runId === null) return null;
  const run = `/jobs/${jobId}/runs/${runId}`;
  if (row === 'insulation' || row === 'instruments') return `${run}/insulation`;
  if (row === 'ends' || row === 'slot') return `${run}/ends`;
  if (id === runId) return run;
  switch (subject) {
    case 'piece':
      return `/jobs/${jobId}/pieces/${id}`;
    case 'joint':
      return `/jobs/${jobId}/joints/${id}`;
    case 'support':
      return `/jobs/${jobId}/hangers/${id}`;
    case 'tap':
      return `/jobs/${jobId}/tap-offs/${id}`;
    case 'run':
    case 'test':
    case 'type':
      return run;
  }
}
