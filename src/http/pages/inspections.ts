import { Readable } from 'node:stream';
import { z } from 'zod';
import { InspectionsPage, InspectionsTools } from '../../../views/pages/inspections.tsx';
import { inspectionChoices } from '../../actions/boards/field/inspection-choices.ts';
import type { Context } from '../../actions/context.ts';
import { type InspectionFilter, listInspections } from '../../actions/inspections.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { RECORD_KINDS } from '../../document/record-schema.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { rowOf, sayOf } from './field/record-rows.ts';
import { recordsCsv } from './field/records-csv.ts';
import { jobSheet } from './job-sheet.ts';
import { sendPage } from './page.ts';
import { pagerOf, withQuery } from './pager.ts';

const params = z.object({ jobId: z.string() });
const filter = z.object({
  run: z.string().max(200).default(''),
  kind: z
    .union([z.literal(''), z.enum(RECORD_KINDS)])
    .default('')
    .catch(''),
  outcome: z.string().max(40).default(''),
  by: z.string().max(64).default(''),
});
const query = filter.extend({ page: z.coerce.number().int().min(1).default(1).catch(1) });
type Chosen = z.infer<typeof filter>;

const ROWS_A_PAGE = 50;
/** The book of records: all of them, one of them, and the list for a spreadsheet. */
export function inspections(app: App, context: Context): void {
  app.get(
    '/jobs/:jobId/inspections',
    { schema: { hide: true, params, querystring: query } },
    async (request, reply) => {
      const { jobId } = request.params;
      const { page, ...chosen } = request.query;
      const viewer = viewerOf(request);
      const heading = await jobHeading(context, viewer, jobId);
      const [listed, choices] = await Promise.all([
        listInspections(context, viewer, jobId, { ...filterOf(chosen), page, limit: ROWS_A_PAGE }),
        inspectionChoices(context.database.db, jobId),
      ]);
      const path = `/jobs/${jobId}/inspections`;
      const say = sayOf(heading);
      return sendPage(
        request,
        reply,
        jobSheet(context, heading, {
          title: 'Inspections and records',
          part: 'inspections',
          tools: InspectionsTools({ toolsHref: `${path}/tools`, csvHref: withQuery(`${path}.csv`, chosen) }),
        }),
        InspectionsPage({
          path,
          zone: heading.project.timeZone,
          rows: listed.items.map((record) => rowOf(jobId, record, say)),
          total: listed.total,
          pager: pagerOf(listed, 'records', path, chosen),
          chosen,
          isNarrowed: Object.values(chosen).some((one) => one !== ''),
          ...choices,
          kinds: RECORD_KINDS,
        }),
      );
    },
  );

  app.get(
    '/jobs/:jobId/inspections.csv',
    { schema: { hide: true, params, querystring: filter } },
    async (request, reply) => {
      const { jobId } = request.params;
      const viewer = viewerOf(request);
      const heading = await jobHeading(context, viewer, jobId);
      const name = heading.reached.number.replace(/[^A-Za-z0-9_-]+/g, '-');
      return reply
        .type('text/csv; charset=utf-8')
        .header('content-disposition', `attachment; filename="${name}-records.csv"`)
        .send(
          Readable.from(recordsCsv(context, viewer, { jobId, filter: filterOf(request.query), say: sayOf(heading) })),
        );
    },
  );
}

function filterOf({ run, kind, outcome, by }: Chosen): Omit<InspectionFilter, 'page' | 'limit'> {
  return {
    ...(run === '' ? {} : { run }),
    ...(kind === '' ? {} : { kind }),
    ...(outcome === '' ? {} : { outcome }),
    ...(by === '' ? {} : { by }),
  };
}
