import { z } from 'zod';
import { AuditPage, type AuditRow } from '../../../views/pages/audit.tsx';
import { type AuditView, listAudit } from '../../actions/audit-trail.ts';
import type { Context } from '../../actions/context.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { pageQuerySchema } from '../../actions/paging.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { jobSheet } from './job-sheet.ts';
import { sendPage } from './page.ts';
import { pagerOf } from './pager.ts';

const MOST_SHOWN = 20_000;

/** The job's trail, with the verdict on its chain. */
export function audit(app: App, context: Context): void {
  app.get(
    '/jobs/:jobId/audit',
    {
      schema: {
        hide: true,
        params: z.object({ jobId: z.string() }),
        querystring: pageQuerySchema.extend({ limit: pageQuerySchema.shape.limit.default(50) }),
      },
    },
    async (request, reply) => {
      const { jobId } = request.params;
      const heading = await jobHeading(context, viewerOf(request), jobId, 'audit');
      const listed = await listAudit(context, viewerOf(request), jobId, request.query);
      return sendPage(
        request,
        reply,
        jobSheet(context, heading, { title: 'Audit trail', part: 'settings' }),
        AuditPage({
          entries: listed.items.map(rowOf),
          total: listed.total,
          firstBreak: listed.firstBreak,
          pager: pagerOf(listed, 'entries', `/jobs/${jobId}/audit`),
          zone: heading.project.timeZone,
        }),
      );
    },
  );
}

function rowOf(entry: AuditView): AuditRow {
  const { seq, userName, action, subject, subjectId, hash } = entry;
  return { seq, at: new Date(entry.at), userName, action, subject, subjectId, hash, details: detailsOf(entry) };
}

function detailsOf(entry: AuditView): string | null {
  if (!('after' in entry) && !('before' in entry)) return null;
  const parts = { was: entry.before ?? undefined, became: entry.after ?? undefined };
  if (parts.was === undefined && parts.became === undefined) return '';
  const text = JSON.stringify(parts, null, 1);
  return text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}\n… ${text.length} signs; the API gives all.` : text;
}
