import type { Tx } from './database.ts';
import { insertMany } from './insert-many.ts';
import { releaseAgain } from './release/release-again.ts';
import { jointRow, pieceRow, type Release, supportRow, tapRows } from './release/rows.ts';

export type { Release, ReleasedRun } from './release/rows.ts';

/** Writes a release: first ones in bulk, later ones piece by piece so that what stays the same keeps its identity and its records. */
export async function releaseRows(tx: Tx, release: Release): Promise<void> {
  const first = release.runs.filter((run) => run.revision === 0);
  await insertMany(
    tx,
    'Piece',
    first.flatMap((run) => run.layout.pieces.map((piece, index) => pieceRow(release, run, piece, turnAt(index)))),
  );
  await insertMany(
    tx,
    'Joint',
    first.flatMap((run) => run.layout.joints.map((joint, index) => jointRow(release, run, joint, turnAt(index)))),
  );
  await insertMany(
    tx,
    'Support',
    first.flatMap((run) =>
      run.layout.supports.map((support, index) => supportRow(release, run, support, turnAt(index))),
    ),
  );
  await insertMany(
    tx,
    'Tap',
    first.flatMap((run) => tapRows(release, run)),
  );
  for (const run of release.runs) if (run.revision > 0) await releaseAgain(tx, release, run);
  await insertMany(
    tx,
    'RunRevision',
    release.runs.map((run) => ({
      id: release.newId(),
      runId: run.id,
      number: run.revision + 1,
      spec: run.spec,
      layout: run.layout,
      reason: release.reason,
      mark: release.mark ?? null,
      byUserId: release.byUserId,
      at: release.at,
    })),
  );
  await tx.run.updateMany({
    where: { id: { in: release.runs.map((run) => run.id) } },
    data: { revision: { increment: 1 }, changed: false, releasedAt: release.at, version: { increment: 1 } },
  });
}

/** On the first release marks count along the run. */
function turnAt(index: number) {
  return { number: index + 1, ordinal: index };
}
