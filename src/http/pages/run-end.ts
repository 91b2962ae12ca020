import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { EndsPage } from '../../../views/pages/field/ends.tsx';
import { getRunChecks } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import { reportedPieces } from '../../actions/records/reported-pieces.ts';
import type { RecordInput } from '../../document/record-schema.ts';
import { REPORTED_ACTIVITIES, type RunEnd } from '../../domain/quality/record.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { shortMark } from './field/along.ts';
import { cardPage } from './field/card-of.ts';
import { type FieldEntries, fieldEntries, MOST_NOTE } from './field/entries.ts';
import { fieldSheet } from './field/field-sheet.ts';
import { reasonOf } from './field/reason.ts';
import { type BesideField, formDoes, type PageTrouble, takeRecordForm } from './field/take-record.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string(), runId: z.string() });

/** The ends, the slot and the counted work of a run. */
export function runEnd(app: App, context: Context): void {
  const schema = { hide: true, params };

  app.get('/jobs/:jobId/runs/:runId/ends', { schema }, (request, reply) => show(context, request, reply, null));

  app.post('/jobs/:jobId/runs/:runId/ends', { schema }, async (request, reply) => {
    const { jobId, runId } = request.params;
    const entries = fieldEntries(request);
    const does = formDoes(request);
    const took = await takeRecordForm(
      context,
      request,
      jobId,
      entries,
      { subject: 'run', subjectId: runId, body: bodyOf(does, entries) },
      { form: entries.text('form'), beside: BESIDE },
    );
    if (!took.ok) return show(context, request, reply, took.trouble);
    return goTo(reply, `/jobs/${jobId}/runs/${runId}/ends`, DONE[does]);
  });
}

const DONE: Readonly<Record<string, string>> = {
  'close-end': 'The end is closed.',
  'open-end': 'The end is recorded as open.',
  'close-slot': 'The slot is closed.',
  'open-slot': 'The slot is recorded as open.',
  activity: 'The work is reported.',
  withdraw: 'The record is taken back; both stay in the history.',
};

const BESIDE: BesideField = {
  'end.not-ready': 'screwSet',
  'activity.over-counted': 'quantity',
};

function bodyOf(does: string, entries: FieldEntries): RecordInput['body'] {
  switch (does) {
    case 'open-end':
      return { kind: 'end-opened', end: endOf(entries), reason: reasonOf(entries, 'Say why the end was opened.') };
    case 'close-slot':
      return { kind: 'slot-closed', note: entries.optional('note', MOST_NOTE) };
    case 'open-slot':
      return { kind: 'slot-opened', reason: reasonOf(entries, 'Say why the slot was opened.') };
    case 'activity':
      return activityOf(entries);
    case 'withdraw':
      return { kind: 'record-withdrawn' };
    default:
      return {
        kind: 'end-closed',
        end: endOf(entries),
        capFitted: entries.ticked('capFitted'),
        screwSet: entries.ticked('screwSet'),
      };
  }
}

function endOf(entries: FieldEntries): RunEnd {
  return entries.text('end') === 'near' ? 'near' : 'far';
}

function activityOf(entries: FieldEntries): RecordInput['body'] {
  const activity = REPORTED_ACTIVITIES.find((one) => one === entries.text('activity'));
  if (activity === undefined) entries.fault('activity', 'Choose what was done.');
  const remedy = 'Write a whole number from 1, or leave it empty for all of the run.';
  const quantity = entries.text('quantity') === '' ? null : entries.figure('quantity', remedy);
  if (quantity !== null && !(Number.isInteger(quantity) && quantity >= 1 && quantity <= 10_000))
    entries.fault('quantity', remedy);
  const note = entries.optional('note', MOST_NOTE);
  return { kind: 'activity-done', activity: activity ?? 'label', quantity, note };
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  trouble: PageTrouble | null,
): Promise<FastifyReply> {
  const { jobId, runId } = params.parse(request.params);
  const viewer = viewerOf(request);
  const view = await getRunChecks(context, viewer, jobId, runId);
  const { floor, site } = view.at;
  const [{ where, shared }, counts] = await Promise.all([
    cardPage(context, request, reply, jobId, view),
    reportedPieces(context, viewer, jobId, runId),
  ]);
  const { near, far } = site.endPieces;
  const short = (piece: typeof near) =>
    piece === undefined ? undefined : { mark: shortMark(floor, piece.mark), state: piece.state };
  return sendPage(
    request,
    reply,
    fieldSheet(context, where, { title: `Ends and slot of ${floor.key}`, trouble }),
    EndsPage({
      ...shared,
      action: `/jobs/${jobId}/runs/${runId}/ends`,
      version: site.version,
      runKey: floor.key,
      card: site.card,
      pieces: { near: short(near), far: short(far) },
      work: REPORTED_ACTIVITIES.map((activity) => ({
        activity,
        done: site.card.reported.get(activity) ?? 0,
        of: counts.get(activity) ?? null,
      })),
      trouble,
    }),
  );
}
