import { Readable } from 'node:stream';
import { z } from 'zod';
import { type CardOf, cardHref } from '../../../views/components/card-href.ts';
import { type InspectionRow, InspectionsPage, InspectionsTools } from '../../../views/pages/inspections.tsx';
import { RecordPage, type RecordPageProps } from '../../../views/pages/inspections-record.tsx';
import { kindWord } from '../../../views/words/quality/record-words.ts';
import type { Speech } from '../../../views/words/quality.ts';
import { recordSummary } from '../../../views/words/record-summary.ts';
import { inspectionChoices } from '../../actions/boards/field/inspection-choices.ts';
import { getRunChecks } from '../../actions/cards.ts';
import type { Context, Viewer } from '../../actions/context.ts';
import { getInspection, type InspectionFilter, listInspections } from '../../actions/inspections.ts';
import { type JobHeading, jobHeading } from '../../actions/job-heading.ts';
import type { RecordView } from '../../actions/records/record-view.ts';
import { writeRows } from '../../document/lists/write-table.ts';
import { RECORD_KINDS } from '../../document/record-schema.ts';
import { toRecordBody } from '../../document/record-to-model.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { verdictOf } from './insulation.ts';
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
const ROWS_A_PIECE = 500;

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
          tools: InspectionsTools({ csvHref: withQuery(`${path}.csv`, chosen) }),
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
        .send(Readable.from(pieces(context, viewer, jobId, request.query, sayOf(heading))));
    },
  );

  record(app, context);
}

const HEADINGS = [
  'done at',
  'in the book since',
  'run',
  'on',
  'sort of record',
  'what',
  'outcome',
  'by',
  'replaces record',
  'cause',
  'replaced by record',
  'record',
];

/** Piece by piece, so that a book of any length goes out without being held. */
async function* pieces(context: Context, viewer: Viewer, jobId: string, chosen: Chosen, say: Speech) {
  yield writeRows([HEADINGS]);
  for (let page = 1; ; page += 1) {
    const listed = await listInspections(context, viewer, jobId, { ...filterOf(chosen), page, limit: ROWS_A_PIECE });
    if (listed.items.length > 0) yield writeRows(listed.items.map((one) => cellsOf(one, say)));
    if (page * ROWS_A_PIECE >= listed.total) return;
  }
}

function cellsOf(record: RecordView, say: Speech): string[] {
  const { at, recordedAt, run, mark, body, outcome, by, supersedes, supersededBy, id } = record;
  return [
    at,
    recordedAt,
    run,
    mark,
    kindWord(body.kind),
    recordSummary(toRecordBody(body), say),
    outcomeWord(outcome),
    by.name,
    supersedes?.id ?? '',
    supersedes?.cause ?? '',
    supersededBy ?? '',
    id,
  ];
}

function filterOf({ run, kind, outcome, by }: Chosen): Omit<InspectionFilter, 'page' | 'limit'> {
  return {
    ...(run === '' ? {} : { run }),
    ...(kind === '' ? {} : { kind }),
    ...(outcome === '' ? {} : { outcome }),
    ...(by === '' ? {} : { by }),
  };
}

function sayOf({ project }: JobHeading): Speech {
  return { units: project.units, zone: project.timeZone ?? null };
}

function outcomeWord(outcome: string | null): string {
  return outcome?.replace('-', ' ') ?? '';
}

function rowOf(jobId: string, view: RecordView, say: Speech): InspectionRow {
  const own = (id: string) => `/jobs/${jobId}/inspections/${id}`;
  return {
    id: view.id,
    href: own(view.id),
    at: new Date(view.at),
    recordedAt: new Date(view.recordedAt),
    mark: view.mark,
    markHref: subjectHref(jobId, view),
    kind: view.body.kind,
    what: recordSummary(toRecordBody(view.body), say),
    outcome: outcomeWord(view.outcome),
    isTrouble: view.outcome !== null && view.outcome !== 'credited' && view.outcome !== 'pass',
    by: view.by.name,
    replaces: view.supersedes === null ? null : { href: own(view.supersedes.id), cause: view.supersedes.cause },
    replacedByHref: view.supersededBy === null ? null : own(view.supersededBy),
  };
}

function subjectHref(jobId: string, { subject, subjectId, body }: RecordView): string {
  if (subject !== 'run') return cardHref(jobId, subject satisfies CardOf, subjectId);
  return `/jobs/${jobId}/runs/${subjectId}/${body.kind === 'insulation-test' ? 'insulation' : 'ends'}`;
}

function record(app: App, context: Context): void {
  app.get(
    '/jobs/:jobId/inspections/:recordId',
    { schema: { hide: true, params: params.extend({ recordId: z.string() }) } },
    async (request, reply) => {
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
    },
  );
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
