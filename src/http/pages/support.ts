import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { cardHref } from '../../../views/components/card-href.ts';
import { PlaceSaid, type PlaceVerdict } from '../../../views/pages/field/hanger/place-said.tsx';
import { HangerPage } from '../../../views/pages/field/hanger.tsx';
import { renderFragment } from '../../../views/shell/page.tsx';
import { refusalWords } from '../../../views/words/quality.ts';
import { getSupportCard, type SupportCardView } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import type { RecordInput } from '../../document/record-schema.ts';
import { supportPosition } from '../../domain/quality/support-card.ts';
import { supportWindows } from '../../domain/quality/support-window.ts';
import { DISTANCE, parseLength } from '../../domain/units/parse-length.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { alongOf, shortMark } from './field/along.ts';
import { cardPage, retiredFlash } from './field/card-of.ts';
import { type FieldEntries, fieldEntries, MOST_NOTE } from './field/entries.ts';
import { fieldSheet } from './field/field-sheet.ts';
import { type BesideField, formDoes, type PageTrouble, takeRecordForm } from './field/take-record.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string(), hangerId: z.string() });
const query = z.object({
  correct: z.string().max(64).optional(),
  measured: z.string().max(60).optional(),
  done: z.string().optional(),
});

/** The card of one hanger. Code says support, pages say hanger. */
export function support(app: App, context: Context): void {
  const schema = { hide: true, params, querystring: query };

  app.get('/jobs/:jobId/hangers/:hangerId', { schema }, (request, reply) => show(context, request, reply, null));

  app.get('/jobs/:jobId/hangers/:hangerId/place', { schema }, async (request, reply) => {
    const { jobId, hangerId } = request.params;
    const view = await getSupportCard(context, viewerOf(request), jobId, hangerId);
    const verdict = placeOf(view, request.query.measured ?? '');
    const said = verdict === null ? '' : renderFragment(PlaceSaid({ asked: verdict, say: sayOf(view) }));
    return reply.type('text/html; charset=utf-8').send(said);
  });

  app.post('/jobs/:jobId/hangers/:hangerId', { schema }, async (request, reply) => {
    const { jobId, hangerId } = request.params;
    const entries = fieldEntries(request);
    const does = formDoes(request);
    const view = await getSupportCard(context, viewerOf(request), jobId, hangerId);
    const took = await takeRecordForm(
      context,
      request,
      jobId,
      entries,
      { subject: 'support', subjectId: hangerId, body: bodyOf(does, entries, view) },
      { form: does === 'withdraw' ? entries.text('form') : does, beside: BESIDE },
    );
    if (!took.ok) return show(context, request, reply, took.trouble);
    const { after } = alongOf(view.at.floor, view.at.floor.supports, hangerId, (row) =>
      cardHref(jobId, 'support', row.id),
    );
    const isOnward = does === 'set' && entries.text('supersedes') === '' && after !== null;
    const own = `/jobs/${jobId}/hangers/${hangerId}`;
    return goTo(reply, isOnward ? after.href : own, doneWords(does, shortMark(view.at.floor, view.mark), isOnward));
  });
}

const BESIDE: BesideField = {
  'support.position': 'measured',
  'support.not-ready': 'lockNut',
};

function bodyOf(does: string, entries: FieldEntries, { at }: SupportCardView): RecordInput['body'] {
  switch (does) {
    case 'accept':
      return { kind: 'support-accepted', note: entries.optional('note', MOST_NOTE) };
    case 'withdraw':
      return { kind: 'record-withdrawn' };
    default:
      return {
        kind: 'support-set',
        measuredMm: entries.lengthMm('measured', at.floor.project.document.units, DISTANCE),
        rodPlumb: entries.ticked('rodPlumb'),
        loadNut: entries.ticked('loadNut'),
        lockNut: entries.ticked('lockNut'),
        note: entries.optional('note', MOST_NOTE),
      };
  }
}

function doneWords(does: string, mark: string, isOnward: boolean): string {
  if (does === 'accept') return `${mark} is accepted.`;
  if (does === 'withdraw') return 'The record is taken back; both stay in the history.';
  return isOnward ? `${mark} is set. This is the next one.` : `${mark} is set.`;
}

function sayOf({ at }: SupportCardView) {
  const { units, timeZone } = at.floor.project.document;
  return { units, zone: timeZone ?? null };
}

/** What the rules say of a place, without recording anything; null for an empty field. */
function placeOf(view: SupportCardView, typed: string): PlaceVerdict | null {
  if (typed.trim() === '') return null;
  const read = parseLength(typed, sayOf(view).units, DISTANCE);
  if (!read.ok) return { is: 'unread', problem: read.problem, remedy: read.remedy };
  const refusal = supportPosition(read.length, view.at.site.around);
  if (refusal === null) return { is: 'ok', at: read.length, note: read.note ?? null };
  return { is: 'broken', at: read.length, told: refusalWords(refusal, sayOf(view)) };
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  trouble: PageTrouble | null,
): Promise<FastifyReply> {
  const { jobId, hangerId } = params.parse(request.params);
  const { correct, measured } = query.parse(request.query);
  const viewer = viewerOf(request);
  const view = await getSupportCard(context, viewer, jobId, hangerId);
  const { floor, row, site } = view.at;
  const { where, shared } = await cardPage(context, request, reply, jobId, view);
  const mark = shortMark(floor, view.mark);
  return sendPage(
    request,
    reply,
    fieldSheet(context, where, {
      title: `Hanger ${view.mark}`,
      trouble,
      ...(await retiredFlash(context, view.at.floor.id, view.at.row.retiredAt)),
    }),
    HangerPage({
      ...shared,
      hanger: {
        id: hangerId,
        mark,
        planned: row.atU80,
        version: row.version,
        loadKg: row.loadKg,
        rod: floor.run.rod,
        drop: floor.run.drop,
      },
      card: site.card,
      windows: supportWindows(site.around),
      asked: placeOf(view, measured ?? ''),
      isOwnWork: site.card.records.some(({ body, by }) => body.kind === 'support-set' && by.id === viewer.userId),
      correcting: site.card.records.find((record) => record.id === correct) ?? null,
      trouble,
      ...alongOf(floor, floor.supports, hangerId, (other) => cardHref(jobId, 'support', other.id)),
    }),
  );
}
