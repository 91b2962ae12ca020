import type { FastifyReply } from 'fastify';
import { type MadePreviewProps, NEW_MARK } from '../../../../views/pages/several/made-preview.tsx';
import { floorPlans } from '../../../actions/boards/floor-plans.ts';
import type { Context } from '../../../actions/context.ts';
import type { SeveralPreview } from '../../../actions/run-copies.ts';
import type { UnitSystem } from '../../../domain/model.ts';
import { formToken } from '../../plugins/sessions.ts';
import type { Typed } from './typed.ts';

/** A plan of more runs than this is a thicket. */
const DRAWN = 160;

/** What the preview of made runs shows: their names, and the plan of the first level that gets any. */
export async function madeProps(
  context: Context,
  reply: FastifyReply,
  jobId: string,
  action: string,
  units: UnitSystem,
  typed: Typed,
  preview: SeveralPreview,
): Promise<MadePreviewProps> {
  return {
    action,
    csrf: formToken(reply),
    submissionId: context.newId(),
    units,
    carried: typed,
    seen: JSON.stringify(preview.seen),
    rows: preview.rows,
    notes: preview.notes,
    changed: preview.changed,
    released: preview.released,
    plan: await planOf(context, jobId, preview),
  };
}

async function planOf(
  context: Context,
  jobId: string,
  { made, layouts }: SeveralPreview,
): Promise<MadePreviewProps['plan']> {
  const level = made[0]?.level;
  if (level === undefined) return null;
  const fresh = made
    .filter((run) => run.level === level)
    .map((run) => ({
      id: `${NEW_MARK}${run.id}`,
      conductorSide: run.conductorSide,
      path: layouts.get(run.id)?.path ?? [],
      taps: layouts.get(run.id)?.taps.map((tap) => tap.at) ?? [],
    }));
  const there = await context.database.db.run.findMany({
    where: { projectId: jobId, level: { key: level } },
    orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
    select: { id: true, key: true },
  });
  const room = Math.max(0, DRAWN - fresh.length);
  const old = await floorPlans(context, there.slice(0, room));
  const shown = [...old.map(({ pieces: _pieces, ...run }) => run), ...fresh.slice(0, DRAWN)];
  return { level, runs: shown, more: there.length + fresh.length - shown.length };
}
