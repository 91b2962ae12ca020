import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { SubstitutionPage } from '../../../views/pages/substitution.tsx';
import { shortOf } from '../../../views/words/substitution.ts';
import { whereOnFloor } from '../../actions/boards/field/where-on-floor.ts';
import type { Context } from '../../actions/context.ts';
import { refuse } from '../../actions/refused.ts';
import { CAUSE_WORDS, CAUSES, type SubstitutionInput } from '../../actions/substitution/input.ts';
import { substitutionBoard } from '../../actions/substitution-board.ts';
import { substitute } from '../../actions/substitutions.ts';
import type { Fault } from '../../document/fault.ts';
import { toMm } from '../../domain/units/length.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { fieldRunHref, fieldSheet } from './field/field-sheet.ts';
import { attempt, type Entered, entered, type FormTrouble, formSubmission, formVersion } from './form.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string(), pieceId: z.string() });

/** Other sections in the place of one that is damaged, late or wrong. */
export function substitution(app: App, context: Context): void {
  app.get('/jobs/:jobId/pieces/:pieceId/substitution', { schema: { hide: true, params } }, (request, reply) =>
    show(context, request, reply),
  );

  app.post('/jobs/:jobId/pieces/:pieceId/substitution', { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId, pieceId } = request.params;
    const tried = await attempt(() => {
      const version = formVersion(request);
      const input = readInput(entered(request));
      return substitute(context, viewerOf(request), jobId, pieceId, version, input, formSubmission(request));
    });
    if (!tried.ok) return show(context, request, reply, tried.trouble);
    const { run, revision, runId } = tried.value;
    const { level } = await whereOnFloor(context, viewerOf(request), jobId, runId);
    return goTo(
      reply,
      fieldRunHref(jobId, level.id, runId),
      `Revision ${revision} of ${run} is on the floor, marked as made in the field.`,
    );
  });
}

/** `lengths` is "3048+3048", as the page offers it. */
function readInput({ lengths = '', cause = '', reason = '' }: Entered): SubstitutionInput {
  const lengthsMm = lengths.split('+').map(Number);
  const known = CAUSES.find((one) => one === cause);
  const faults: Fault[] = [
    ...(lengths === '' || lengthsMm.some((one) => !(one > 0))
      ? [{ path: 'lengths', message: 'No way is chosen.', remedy: 'Choose what is put in.' }]
      : []),
    ...(known === undefined ? [{ path: 'cause', message: 'No cause is chosen.', remedy: 'Choose one.' }] : []),
    ...(reason.trim() === ''
      ? [{ path: 'reason', message: 'Nothing is said.', remedy: 'Say what happened to the piece.' }]
      : []),
    ...(reason.trim().length > 400
      ? [{ path: 'reason', message: `It is ${reason.trim().length} characters long.`, remedy: 'Use 400 at most.' }]
      : []),
  ];
  if (faults.length > 0 || known === undefined) return refuse({ code: 'invalid', faults });
  return { lengthsMm, cause: known, reason: reason.trim() };
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  trouble?: FormTrouble,
): Promise<FastifyReply> {
  const { jobId, pieceId } = params.parse(request.params);
  const viewer = viewerOf(request);
  const board = await substitutionBoard(context, viewer, jobId, pieceId);
  const where = await whereOnFloor(context, viewer, jobId, board.run.id);
  const fields = entered(request);
  const mark = shortOf(board.piece.mark);
  return sendPage(
    request,
    reply,
    {
      ...fieldSheet(context, where, { title: `Other sections for ${mark}` }),
      ...(trouble === undefined ? {} : { status: trouble.status, flash: { kind: 'stop', text: trouble.notice } }),
    },
    SubstitutionPage({
      action: `/jobs/${jobId}/pieces/${pieceId}/substitution`,
      csrf: formToken(reply),
      submissionId: context.newId(),
      version: board.run.version,
      units: board.units,
      type: board.type,
      piece: { ...board.piece, mark },
      cardHref: `/jobs/${jobId}/pieces/${pieceId}`,
      layout: board.layout,
      changed: board.run.changed,
      hangersDiffer: board.hangersDiffer,
      open: board.open.map((way) => ({ ...way, value: way.lengths.map(toMm).join('+') })),
      stopped: board.stopped,
      barred: board.barred,
      zones: board.zones,
      wouldFill: board.wouldFill,
      joints: board.joints,
      supports: board.supports,
      causes: CAUSES.map((value) => ({ value, word: CAUSE_WORDS[value] })),
      entered: { lengths: fields.lengths ?? null, cause: fields.cause ?? 'damaged', reason: fields.reason ?? '' },
      faultOf: trouble?.faultOf ?? (() => undefined),
    }),
  );
}
