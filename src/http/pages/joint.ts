import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { cardHref } from '../../../views/components/card-href.ts';
import { handWords, pieceWord } from '../../../views/drawings/strip/words.ts';
import { POLE_ENDS, poleTick } from '../../../views/pages/field/joint/pole-ticks.tsx';
import { JointPage } from '../../../views/pages/field/joint.tsx';
import { JointBlank } from '../../../views/pages/field/joint-blank.tsx';
import { ROLE_WORDS } from '../../../views/words/roles.ts';
import { lastTool } from '../../actions/boards/field/last-entries.ts';
import { whoAccepts } from '../../actions/boards/field/who-accepts.ts';
import { getJointCard, type JointCardView } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import type { RecordInput } from '../../document/record-schema.ts';
import { CONDUCTORS } from '../../domain/quality/conductors.ts';
import { formatLength } from '../../domain/units/format-length.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { alongOf, shortMark } from './field/along.ts';
import { cardPage, RETIRED } from './field/card-of.ts';
import { type FieldEntries, fieldEntries, MOST_NOTE } from './field/entries.ts';
import { fieldSheet } from './field/field-sheet.ts';
import { reasonOf } from './field/reason.ts';
import { type BesideField, formDoes, type PageTrouble, takeRecordForm } from './field/take-record.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string(), jointId: z.string() });
const query = z.object({ correct: z.string().max(64).optional(), done: z.string().optional() });

/** The card of one joint. */
export function joint(app: App, context: Context): void {
  app.get('/jobs/:jobId/joints/:jointId', { schema: { hide: true, params, querystring: query } }, (request, reply) =>
    show(context, request, reply, null),
  );

  app.get('/jobs/:jobId/joints/:jointId/blank', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId, jointId } = request.params;
    const view = await getJointCard(context, viewerOf(request), jobId, jointId);
    const { where, shared } = await cardPage(context, request, reply, jobId, view);
    const { floor: on, row, site } = view.at;
    const { sheet } = on.type;
    return sendPage(
      request,
      reply,
      fieldSheet(context, where, { title: `Joint ${view.mark}`, theme: 'office' }),
      JointBlank({
        say: shared.say,
        at: row.atU80,
        sheet: site.card.sheet,
        source: sheet === null ? null : `${sheet.document}, revision ${sheet.revision}`,
        neighbours: neighboursOf(jobId, view),
      }),
    );
  });

  app.post(
    '/jobs/:jobId/joints/:jointId',
    { schema: { hide: true, params, querystring: query } },
    async (request, reply) => {
      const { jobId, jointId } = request.params;
      const entries = fieldEntries(request);
      const does = formDoes(request);
      const isCorrection = does === 'step' && entries.text('supersedes') !== '';
      const form = does === 'withdraw' ? entries.text('form') : isCorrection ? 'correct' : does;
      const took = await takeRecordForm(
        context,
        request,
        jobId,
        entries,
        { subject: 'joint', subjectId: jointId, body: bodyOf(does, entries) },
        { form, beside: BESIDE },
      );
      if (!took.ok) return show(context, request, reply, took.trouble);
      return goTo(reply, `/jobs/${jobId}/joints/${jointId}`, doneWords(does, entries));
    },
  );
}

const BESIDE: BesideField = {
  'joint.poles-missing': 'seen',
  'joint.torque-out': 'value',
  'joint.torque-missing': 'value',
  'joint.torque-difference-unread': 'differencesRead',
  'joint.nothing-to-reopen': 'reason',
};

function bodyOf(does: string, entries: FieldEntries): RecordInput['body'] {
  switch (does) {
    case 'accept':
      return {
        kind: 'joint-accepted',
        differencesRead: entries.ticked('differencesRead'),
        note: entries.optional('note', MOST_NOTE),
      };
    case 'reopen':
      return {
        kind: 'joint-reopened',
        reason: reasonOf(entries, 'Say what is wrong with the joint.'),
        fromStep: Number(entries.text('fromStep')) || 0,
      };
    case 'withdraw':
      return { kind: 'record-withdrawn' };
    default:
      return stepOf(entries);
  }
}

function stepOf(entries: FieldEntries): RecordInput['body'] {
  const seen = new Set(entries.all('seen'));
  const poles = CONDUCTORS.map((pole) => {
    const [near, far] = POLE_ENDS.map((end) => seen.has(poleTick(pole, end)));
    return { pole, near: near ?? false, far: far ?? false };
  }).filter(({ near, far }) => near || far);
  const [contactSet, clamp] = [entries.optional('contactSetLot'), entries.optional('clampLot')];
  return {
    kind: 'joint-step',
    step: Number(entries.text('step')) || 0,
    text: entries.text('words'),
    poles: poles.length > 0 ? poles : null,
    torque: isTorque(entries) ? torqueOf(entries) : null,
    lots: contactSet === null && clamp === null ? null : { contactSet, clamp },
    note: entries.optional('note', MOST_NOTE),
  };
}

function isTorque(entries: FieldEntries): boolean {
  return entries.all('toolId').length > 0;
}

function torqueOf(entries: FieldEntries) {
  const value = entries.figure('value', 'Write the torque as a figure, such as 24 or 17.7.');
  if (value !== null && !(value > 0 && value <= 10_000))
    entries.fault('value', `A torque of ${value} is not one: write what the wrench was set to, above 0.`);
  const unit = entries.text('unit');
  if (unit !== 'Nm' && unit !== 'lbf-ft') entries.fault('unit', 'Choose the unit of the wrench.');
  return {
    value: value ?? 0,
    unit: unit === 'lbf-ft' ? ('lbf-ft' as const) : ('Nm' as const),
    toolId: entries.needed('toolId', 'Write the number of the torque tool.'),
    calibrationDue: entries.day('calibrationDue', 'Write the last day of its calibration, from its label.'),
  };
}

function doneWords(does: string, entries: FieldEntries): string {
  switch (does) {
    case 'accept':
      return 'The joint is accepted.';
    case 'reopen':
      return 'The joint is reopened. What was done stays in its history.';
    case 'withdraw':
      return 'The record is taken back; both stay in the history.';
    default:
      return `Step ${Number(entries.text('step')) + 1} is recorded.`;
  }
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  trouble: PageTrouble | null,
): Promise<FastifyReply> {
  const { jobId, jointId } = params.parse(request.params);
  const { correct } = query.parse(request.query);
  const viewer = viewerOf(request);
  const { db } = context.database;
  const view = await getJointCard(context, viewer, jobId, jointId);
  const { floor, row, site } = view.at;
  const [{ where, shared }, acceptors, tool] = await Promise.all([
    cardPage(context, request, reply, jobId, view),
    whoAccepts(db, jobId),
    lastTool(db, jobId, viewer.userId),
  ]);
  const mark = shortMark(floor, view.mark);
  return sendPage(
    request,
    reply,
    fieldSheet(context, where, { title: `Joint ${view.mark}`, trouble, ...(view.retired ? { flash: RETIRED } : {}) }),
    JointPage({
      ...shared,
      joint: { id: jointId, mark, at: row.atU80, version: row.version },
      card: site.card,
      neighbours: neighboursOf(jobId, view),
      acceptors: acceptors.map(({ id, name, role }) => ({ id, name, roleWord: ROLE_WORDS[role] })),
      lastTool: tool,
      trouble,
      correcting: site.card.records.find((record) => record.id === correct) ?? null,
      ...alongOf(floor, floor.joints, jointId, (other) => cardHref(jobId, 'joint', other.id)),
    }),
  );
}

function neighboursOf(jobId: string, { at }: JointCardView) {
  const { floor, pieces, site } = at;
  return site.neighbours.map(({ mark, state }) => {
    const row = pieces.find((piece) => piece.mark === mark);
    return {
      mark: shortMark(floor, mark),
      state,
      what: row === undefined ? '' : whatOf(row, floor),
      href: row === undefined ? null : cardHref(jobId, 'piece', row.id),
    };
  });
}

/** The tee that a branch starts from stands in another run's layout, and is known by its mark alone. */
function whatOf({ fromU80, toU80, runId }: JointCardView['at']['pieces'][number], floor: JointCardView['at']['floor']) {
  const placed = floor.layout.pieces.find(({ from }) => from === fromU80);
  if (placed === undefined || runId !== floor.id) return '';
  const hand = placed.hand === null ? '' : `, ${handWords(placed.hand)}`;
  return `${pieceWord(placed.kind)} ${formatLength(toU80 - fromU80, floor.project.document.units)}${hand}`;
}
