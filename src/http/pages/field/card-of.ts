import type { FastifyReply, FastifyRequest } from 'fastify';
import { type WhereOnFloor, whereOnFloor } from '../../../actions/boards/field/where-on-floor.ts';
import { retiredBy } from '../../../actions/cards/retired-by.ts';
import type { Card } from '../../../actions/cards.ts';
import type { Context } from '../../../actions/context.ts';
import type { Subject } from '../../../domain/quality/record.ts';
import { formToken } from '../../plugins/sessions.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { fieldRunHref } from './field-sheet.ts';
import { viewerOfCard } from './viewer-of-card.ts';

/** What the pages of all cards share. */
export async function cardPage<S extends Subject>(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  view: Card<S>,
) {
  const viewer = viewerOf(request);
  const { floor } = view.at;
  const where: WhereOnFloor = await whereOnFloor(context, viewer, jobId, floor.id);
  const { units, timeZone } = where.heading.project;
  return {
    where,
    shared: {
      jobId,
      csrf: formToken(reply),
      freshId: context.newId(),
      say: { units, zone: timeZone ?? null },
      viewer: viewerOfCard(viewer, view),
      run: { href: fieldRunHref(jobId, where.level.id, floor.id), mark: floor.key },
    },
  };
}

/** What to say of a thing that left the design: which revision took it out, and whether that was made on the floor. */
export async function retiredFlash(
  context: Context,
  runId: string,
  retiredAt: Date | null,
): Promise<{ flash?: { kind: 'note'; text: string } }> {
  if (retiredAt === null) return {};
  const by = await retiredBy(context, runId, retiredAt);
  const stays = 'Its records stay; nothing more is recorded on it.';
  const text = by?.field
    ? `Field revision ${by.number} took this out of the run: ${by.reason} (${by.byName}). ${stays}`
    : `The office took this out of the run in a later revision. ${stays}`;
  return { flash: { kind: 'note', text } };
}
