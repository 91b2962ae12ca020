import { z } from 'zod';
import { RecordPage, type RecordPageProps } from '../../../views/pages/inspections-record.tsx';
import { kindWord } from '../../../views/words/quality/record-words.ts';
import { getRunChecks } from '../../actions/cards.ts';
import type { Context, Viewer } from '../../actions/context.ts';
import { getInspection } from '../../actions/inspections.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import type { RecordView } from '../../actions/records/record-view.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { rowOf, sayOf } from './field/record-rows.ts';
import { verdictOf } from './insulation.ts';
import { jobSheet } from './job-sheet.ts';
import { sendPage } from './page.ts';

const params = z.object({ jobId: z.string(), recordId: z.string() });

/** One record of the book. */
export function inspectionsRecord(app: App, context: Context): void {
  app.get('/jobs/:jobId/inspections/:recordId', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId, recordId } = request.params;
    const viewer = viewerOf(request);
    const view = await getInspection(context, viewer, jobId, recordId);
    const heading = await jobHeading(context, viewer, jobId);
    const test = await testOf(context, viewer, jobId, view);
    const say = sayOf(heading);
    const row = rowOf(jobId, view, say);
    const { number } = heading.reached;
    return sendPage(
      request,
      reply,
      jobSheet(context, heading, {
        title: `${upper(kindWord(view.body.kind))}, ${view.mark}`,
        part: 'inspections',
        theme: 'field',
        trail: [
          { word: number, href: `/jobs/${jobId}/floors` },
          { word: 'Records', href: `/jobs/${jobId}/inspections` },
        ],
      }),
      RecordPage({
        say,
        summary: row.what,
        outcome: row.outcome === '' ? null : row.outcome,
        on: { mark: view.mark, href: row.markHref },
        at: row.at,
        recordedAt: row.recordedAt,
        by: row.by,
        replaces: row.replaces,
        replacedBy: row.replacedByHref === null ? null : { href: row.replacedByHref },
        test,
      }),
    );
  });
}

/** A test with its working, judged again by the run as it stands. */
async function testOf(
  context: Context,
  viewer: Viewer,
  jobId: string,
  { id, subjectId, body, outcome }: RecordView,
): Promise<RecordPageProps['test']> {
  if (body.kind !== 'insulation-test') return null;
  const { tests, at } = await getRunChecks(context, viewer, jobId, subjectId);
  const test = tests.find(({ record }) => record.id === id);
  if (test === undefined) return null;
  return {
    body: test.record.body,
    verdict: verdictOf(outcome),
    report: test.judged.ok ? test.judged.report : null,
    length: at.insulation.length,
    staleBy: [...new Set(test.staleBecause.map(({ mark }) => mark))].slice(0, 5),
    againHref: `/jobs/${jobId}/runs/${subjectId}/insulation#next`,
  };
}

function upper(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
