import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { cardHref } from '../../../views/components/card-href.ts';
import { PiecePage } from '../../../views/pages/field/piece.tsx';
import { getPieceCard, type PieceCardView } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import type { RecordInput } from '../../document/record-schema.ts';
import type { JointState, PieceState } from '../../domain/quality/states.ts';
import { formatLength } from '../../domain/units/format-length.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { alongOf, shortMark } from './field/along.ts';
import { cardPage, retiredFlash } from './field/card-of.ts';
import { type FieldEntries, fieldEntries } from './field/entries.ts';
import { facesAt, facesWrongAt } from './field/facing.ts';
import { fieldSheet } from './field/field-sheet.ts';
import { reasonOf } from './field/reason.ts';
import { type BesideField, formDoes, type PageTrouble, takeRecordForm } from './field/take-record.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string(), pieceId: z.string() });

/** The card of one section or fitting. */
export function piece(app: App, context: Context): void {
  app.get('/jobs/:jobId/pieces/:pieceId', { schema: { hide: true, params } }, (request, reply) =>
    show(context, request, reply, null),
  );

  app.post('/jobs/:jobId/pieces/:pieceId', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId, pieceId } = request.params;
    const entries = fieldEntries(request);
    const does = formDoes(request);
    const took = await takeRecordForm(
      context,
      request,
      jobId,
      entries,
      { subject: 'piece', subjectId: pieceId, body: bodyOf(does, entries) },
      { form: does === 'withdraw' ? entries.text('form') : does, beside: BESIDE },
    );
    if (!took.ok) return show(context, request, reply, took.trouble);
    return goTo(reply, `/jobs/${jobId}/pieces/${pieceId}`, DONE[does]);
  });
}

const DONE: Readonly<Record<string, string>> = {
  hang: 'Hung, and its side is recorded.',
  'on-site': 'It is on site.',
  quarantine: 'It is in quarantine.',
  release: 'Your signature is recorded.',
  withdraw: 'The record is taken back; both stay in the history.',
};

const BESIDE: BesideField = {
  'piece.side-turn': 'side',
  'piece.side-reorder': 'side',
  'piece.confirmed-alone': 'second',
  'piece.already-quarantined': 'reason',
};

function bodyOf(does: string, entries: FieldEntries): RecordInput['body'] {
  switch (does) {
    case 'on-site':
      return { kind: 'piece-on-site', lot: entries.optional('lot') };
    case 'quarantine':
      return { kind: 'piece-quarantined', reason: reasonOf(entries, 'Say what is wrong with the piece.') };
    case 'release':
      return {
        kind: 'piece-released',
        as: entries.text('as') === 'office' ? 'office' : 'inspector',
        reason: reasonOf(entries, 'Say why the piece may be used.'),
        decision: entries.optional('decision'),
      };
    case 'withdraw':
      return { kind: 'record-withdrawn' };
    default:
      return { kind: 'piece-hung', conductorSide: sideOf(entries), endsConfirmedBy: entries.optional('second') };
  }
}

function sideOf(entries: FieldEntries): 'left' | 'right' {
  const side = entries.text('side');
  if (side !== 'left' && side !== 'right')
    entries.fault('side', 'Look at both ends of the piece and say which way its tap-offs face.');
  return side === 'right' ? 'right' : 'left';
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  trouble: PageTrouble | null,
): Promise<FastifyReply> {
  const { jobId, pieceId } = params.parse(request.params);
  const view = await getPieceCard(context, viewerOf(request), jobId, pieceId);
  const { floor, row, site } = view.at;
  const { where, shared } = await cardPage(context, request, reply, jobId, view);
  const mark = shortMark(floor, view.mark);
  const { hand, kind, conductorSide } = site;
  const placed = { from: row.fromU80, to: row.toU80, kind, hand };
  return sendPage(
    request,
    reply,
    fieldSheet(context, where, {
      title: `Piece ${view.mark}`,
      trouble,
      ...(await retiredFlash(context, view.at.floor.id, view.at.row.retiredAt)),
    }),
    PiecePage({
      ...shared,
      piece: {
        ...placed,
        id: pieceId,
        mark,
        state: row.state as PieceState,
        version: row.version,
        conductorSide,
        faces: { near: facesAt(floor.layout, placed.from), far: facesAt(floor.layout, placed.to) },
        otherWay: facesWrongAt(floor.layout, placed.from),
      },
      card: site.card,
      joints: jointsOf(jobId, view),
      substituteHref:
        where.heading.reached.may('substitute') && !view.retired && (kind === 'stock' || kind === 'cut')
          ? `/jobs/${jobId}/pieces/${pieceId}/substitution`
          : null,
      trouble,
      ...alongOf(floor, floor.pieces, pieceId, (other) => cardHref(jobId, 'piece', other.id)),
    }),
  );
}

function jointsOf(jobId: string, { at }: PieceCardView) {
  const { units } = at.floor.project.document;
  return at.joints.map((joint) => ({
    id: joint.id,
    href: cardHref(jobId, 'joint', joint.id),
    mark: shortMark(at.floor, joint.mark),
    state: joint.state as JointState,
    what: `joint at ${formatLength(joint.atU80, units)}`,
  }));
}
