import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { cardHref } from '../../../views/components/card-href.ts';
import { TapOffPage } from '../../../views/pages/field/tap-off.tsx';
import { lastIsolation, lastTapSteps } from '../../actions/boards/field/last-entries.ts';
import { getTapCard, type TapCardView } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import type { RecordInput } from '../../document/record-schema.ts';
import { PHASE_SETS } from '../../document/schema/tap.ts';
import { dropSupportLimit } from '../../domain/quality/drop-limit.ts';
import { toWallTime } from '../../domain/quality/wall-time.ts';
import { DISTANCE } from '../../domain/units/parse-length.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { alongOf, shortMark } from './field/along.ts';
import { cardPage, RETIRED } from './field/card-of.ts';
import { type FieldEntries, fieldEntries, MOST_NOTE } from './field/entries.ts';
import { facesAt } from './field/facing.ts';
import { fieldSheet } from './field/field-sheet.ts';
import { type BesideField, formDoes, type PageTrouble, takeRecordForm } from './field/take-record.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string(), tapId: z.string() });

/** The card of one tap-off. Code says tap, pages say tap-off. */
export function tap(app: App, context: Context): void {
  const schema = { hide: true, params };

  app.get('/jobs/:jobId/tap-offs/:tapId', { schema }, (request, reply) => show(context, request, reply, null));

  app.post('/jobs/:jobId/tap-offs/:tapId', { schema }, async (request, reply) => {
    const { jobId, tapId } = request.params;
    const entries = fieldEntries(request);
    const does = formDoes(request);
    const view = await getTapCard(context, viewerOf(request), jobId, tapId);
    const took = await takeRecordForm(
      context,
      request,
      jobId,
      entries,
      { subject: 'tap', subjectId: tapId, body: bodyOf(does, entries, view) },
      { form: does === 'withdraw' ? entries.text('form') : does, beside: BESIDE },
    );
    if (!took.ok) return show(context, request, reply, took.trouble);
    return goTo(reply, `/jobs/${jobId}/tap-offs/${tapId}`, DONE[does]);
  });
}

const DONE: Readonly<Record<string, string>> = {
  'on-site': 'It is on site.',
  set: 'It is set.',
  drop: 'Its drop is supported.',
  check: 'It is checked.',
  withdraw: 'The record is taken back; both stay in the history.',
};

const BESIDE: BesideField = {
  'tap.not-isolated': 'absenceProved',
  'tap.proved-after': 'provedAt',
  'tap.device-not-locked': 'deviceLocked',
  'tap.no-steps': 'steps',
  'tap.phases-differ': 'phases',
  'tap.drop-too-far': 'distance',
};

function bodyOf(does: string, entries: FieldEntries, view: TapCardView): RecordInput['body'] {
  const { units } = view.at.floor.project.document;
  switch (does) {
    case 'on-site':
      return { kind: 'tap-on-site', lot: entries.optional('lot') };
    case 'check':
      return { kind: 'tap-checked', note: entries.optional('note', MOST_NOTE) };
    case 'drop':
      return {
        kind: 'drop-supported',
        distanceMm: distanceOf(entries, units),
        note: entries.optional('note', MOST_NOTE),
      };
    case 'withdraw':
      return { kind: 'record-withdrawn' };
    default:
      return setBody(entries, view);
  }
}

function distanceOf(entries: FieldEntries, units: 'ft-in' | 'metric'): number {
  const distance = entries.lengthMm('distance', units, DISTANCE);
  if (distance === null) entries.fault('distance', 'Measure from the tap-off to the first support and write it here.');
  return distance ?? 0;
}

function setBody(entries: FieldEntries, { at }: TapCardView): RecordInput['body'] {
  const zone = at.floor.project.document.timeZone ?? null;
  const more = entries.text('moreSteps').split('\n');
  const steps = [...entries.all('steps'), ...more].map((step) => step.trim()).filter((step) => step !== '');
  if (steps.length > 40) entries.fault('moreSteps', `${steps.length} steps are too many: 40 are kept.`);
  if (steps.some((step) => step.length > 200)) entries.fault('moreSteps', 'One step a line, 200 signs at most each.');
  const phases = PHASE_SETS.find((set) => set === entries.text('phases'));
  if (phases === undefined) entries.fault('phases', 'Read the phases off the box in your hand and choose them.');
  return {
    kind: 'tap-set',
    isolation: {
      runIsolated: entries.ticked('runIsolated'),
      absenceOfVoltageProved: entries.ticked('absenceProved'),
      provedBy: entries.needed('provedBy', 'Write who proved it.'),
      provedAt: entries.moment('provedAt', zone, 'Write the day and the time when it was proved.'),
    },
    device: { off: entries.ticked('deviceOff'), locked: entries.ticked('deviceLocked') },
    steps: steps.map((step) => step.replaceAll('\n', ' ')),
    phasesFound: phases ?? 'L1',
    note: entries.optional('note', MOST_NOTE),
  };
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  trouble: PageTrouble | null,
): Promise<FastifyReply> {
  const { jobId, tapId } = params.parse(request.params);
  const viewer = viewerOf(request);
  const view = await getTapCard(context, viewer, jobId, tapId);
  const { floor, row, tap: planned, site, piece } = view.at;
  const now = context.clock();
  const { db } = context.database;
  const [{ where, shared }, knownSteps, proved] = await Promise.all([
    cardPage(context, request, reply, jobId, view),
    lastTapSteps(db, jobId),
    lastIsolation(db, { runId: floor.id, userId: viewer.userId, now }),
  ]);
  return sendPage(
    request,
    reply,
    fieldSheet(context, where, { title: `Tap-off ${view.mark}`, trouble, ...(view.retired ? { flash: RETIRED } : {}) }),
    TapOffPage({
      ...shared,
      tap: {
        ...planned,
        rowId: tapId,
        at: row.atU80,
        state: site.state,
        version: row.version,
        side: floor.run.conductorSide,
        faces: facesAt(floor.layout, row.atU80),
      },
      piece: {
        mark: shortMark(floor, site.piece.mark),
        state: site.piece.state,
        href: piece === null ? null : cardHref(jobId, 'piece', piece.id),
      },
      card: site.card,
      dropLimit: dropSupportLimit(site.rules.codeBasis, site.rules.units),
      knownSteps,
      isOwnWork: site.card.records.some(({ body, by }) => body.kind === 'tap-set' && by.id === viewer.userId),
      proved: {
        by: proved?.provedBy ?? viewer.name,
        atLocal: toWallTime(proved?.provedAt ?? now.toISOString(), shared.say.zone),
        isRemembered: proved !== null,
      },
      trouble,
      ...alongOf(floor, floor.taps, tapId, (other) => cardHref(jobId, 'tap', other.id)),
    }),
  );
}
