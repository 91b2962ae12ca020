import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { cardHref } from '../../../views/components/card-href.ts';
import { TapOffPage } from '../../../views/pages/field/tap-off.tsx';
import { lastIsolation, lastTapSteps } from '../../actions/boards/field/last-entries.ts';
import { getTapCard } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import { dropSupportLimit } from '../../domain/quality/drop-limit.ts';
import { toWallTime } from '../../domain/quality/wall-time.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { alongOf, shortMark } from './field/along.ts';
import { cardPage, retiredFlash } from './field/card-of.ts';
import { fieldEntries } from './field/entries.ts';
import { facesAt } from './field/facing.ts';
import { fieldSheet } from './field/field-sheet.ts';
import { BESIDE, bodyOf, DONE } from './field/read-tap-form.ts';
import { formDoes, type PageTrouble, takeRecordForm } from './field/take-record.ts';
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
    fieldSheet(context, where, {
      title: `Tap-off ${view.mark}`,
      trouble,
      ...(await retiredFlash(context, view.at.floor.id, view.at.row.retiredAt)),
    }),
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
