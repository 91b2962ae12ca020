import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { cardHref } from '../../../views/components/card-href.ts';
import { handWords, pieceWord } from '../../../views/drawings/strip/words.ts';
import { JointPage } from '../../../views/pages/field/joint.tsx';
import { JointBlank } from '../../../views/pages/field/joint-blank.tsx';
import { ROLE_WORDS } from '../../../views/words/roles.ts';
import { lastTool } from '../../actions/boards/field/last-entries.ts';
import { whoAccepts } from '../../actions/boards/field/who-accepts.ts';
import { getJointCard, type JointCardView } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import { formatLength } from '../../domain/units/format-length.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { alongOf, shortMark } from './field/along.ts';
import { cardPage, retiredFlash } from './field/card-of.ts';
import { fieldEntries } from './field/entries.ts';
import { fieldSheet } from './field/field-sheet.ts';
import { BESIDE, bodyOf, doneWords } from './field/read-joint-form.ts';
import { formDoes, type PageTrouble, takeRecordForm } from './field/take-record.ts';
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
    fieldSheet(context, where, {
      title: `Joint ${view.mark}`,
      trouble,
      ...(await retiredFlash(context, view.at.floor.id, view.at.row.retiredAt)),
    }),
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
