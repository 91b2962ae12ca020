import { type MadePreviewProps, NEW_MARK } from '../../../../views/pages/several/made-preview.tsx';
import type { Context, Viewer } from '../../../actions/context.ts';
import type { SeveralPreview } from '../../../actions/run-copies.ts';
import { levelRuns } from '../../../actions/several/level-runs.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import type { Shown } from './round.ts';

/** A plan of more runs than this is a thicket. */
const DRAWN = 160;

/** What the preview of made runs shows: their names, and the plan of the first level that gets any. */
export async function madeProps(shown: Shown<SeveralPreview>): Promise<MadePreviewProps | null> {
  const { context, request, jobId, job, typed, form, writePath, preview } = shown;
  if (preview === undefined) return null;
  return {
    action: writePath,
    csrf: form.csrf,
    submissionId: context.newId(),
    units: job.project.units,
    carried: typed,
    seen: JSON.stringify(preview.seen),
    rows: preview.rows,
    notes: preview.notes,
    changed: preview.changed,
    released: preview.released,
    plan: await planOf(context, viewerOf(request), jobId, preview),
  };
}

export function saidMade({ made }: { readonly made: readonly string[] }): string {
  return `${made.length === 1 ? `Run ${made[0]} is` : `${made.length} runs are`} made and laid out.`;
}

async function planOf(
  context: Context,
  viewer: Viewer,
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
  const there = await levelRuns(context, viewer, jobId, level, Math.max(0, DRAWN - fresh.length));
  const shown = [...there.runs.map(({ pieces: _pieces, ...run }) => run), ...fresh.slice(0, DRAWN)];
  return { level, runs: shown, more: there.total + fresh.length - shown.length };
}
