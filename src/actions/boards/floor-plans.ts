import type { RunDocument } from '../../document/job-document.ts';
import { toRun } from '../../document/model/to-run.ts';
import type { PathPoint, RunLayout } from '../../domain/layout/result.ts';
import type { Run, Side } from '../../domain/model.ts';
import type { PieceState } from '../../domain/quality/states.ts';
import type { Length } from '../../domain/units/length.ts';
import { inChunks } from '../../store/in-chunks.ts';
import type { Context } from '../context.ts';

export interface PlannedRun {
  readonly runId: string;
  readonly id: string;
  readonly conductorSide: Side;
  readonly path: readonly PathPoint[];
  readonly pieces?: readonly { readonly from: Length; readonly to: Length; readonly state: PieceState }[];
  readonly taps: readonly Length[];
  readonly tapMarks: readonly string[];
  readonly feed: Run['feed'];
  readonly crossings: Run['crossings'];
  readonly structure: Run['structure'];
}

/** What a level's plan draws of these runs: their course, and their pieces in the ink of the record where they are released. */
export async function floorPlans(
  context: Context,
  runs: readonly { readonly id: string; readonly key: string }[],
): Promise<PlannedRun[]> {
  const { db } = context.database;
  const ids = runs.map((run) => run.id);
  const [rows, pieces] = await Promise.all([
    db.run.findMany({ where: { id: { in: ids } }, select: { id: true, key: true, spec: true, layout: true } }),
    inChunks(ids, (chunk) =>
      db.piece.findMany({
        where: { runId: { in: chunk }, retiredAt: null },
        orderBy: [{ runId: 'asc' }, { ordinal: 'asc' }],
        select: { runId: true, fromU80: true, toU80: true, state: true },
      }),
    ),
  ]);
  const byId = new Map(rows.map((row) => [row.id, row]));
  const byRun = new Map<string, typeof pieces>(ids.map((id) => [id, []]));
  for (const piece of pieces) byRun.get(piece.runId)?.push(piece);
  return ids.flatMap((id) => {
    const row = byId.get(id);
    if (row === undefined) return [];
    const layout = row.layout as unknown as RunLayout;
    const own = byRun.get(id) ?? [];
    const spec = toRun(row.spec as unknown as RunDocument);
    return [
      {
        runId: id,
        id: row.key,
        conductorSide: spec.conductorSide,
        feed: spec.feed,
        crossings: spec.crossings,
        structure: spec.structure,
        path: layout.path,
        ...(own.length === 0
          ? {}
          : {
              pieces: own.map((piece) => ({
                from: piece.fromU80,
                to: piece.toU80,
                state: piece.state as PieceState,
              })),
            }),
        taps: layout.taps.map((tap) => tap.at),
        tapMarks: layout.taps.map((tap) => tap.id),
      },
    ];
  });
}
