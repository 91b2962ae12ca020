import { type Match, matchJoints, matchLayouts, matchSupports } from '../../domain/layout/match-pieces.ts';
import type { RunLayout } from '../../domain/layout/result.ts';
import type { Tx } from '../database.ts';
import { insertMany } from '../insert-many.ts';
import { jointRow, pieceRow, type Release, type ReleasedRun, supportRow, type Turn, tapRows } from './rows.ts';

/** Releases a run once more: what stays the same keeps its row and its records, what left is retired, what is new gets a row. */
export async function releaseAgain(tx: Tx, release: Release, run: ReleasedRun): Promise<void> {
  const last = await tx.runRevision.findUniqueOrThrow({
    where: { runId_number: { runId: run.id, number: run.revision } },
    select: { layout: true },
  });
  const before = last.layout as unknown as RunLayout;
  const pieces = matchLayouts(before, run.layout);
  await renewPieces(tx, release, run, pieces);
  await renewJoints(tx, release, run, matchJoints(before, run.layout, pieces));
  await renewSupports(tx, release, run, matchSupports(before.supports, run.layout.supports));
  await renewTaps(tx, release, run);
}

const standing = (run: ReleasedRun) =>
  ({ where: { runId: run.id, retiredAt: null }, orderBy: { ordinal: 'asc' }, select: { id: true } }) as const;
const next = { version: { increment: 1 } } as const;

async function renewPieces(tx: Tx, release: Release, run: ReleasedRun, match: Match): Promise<void> {
  const { kept, removed, added } = sort(match, run.layout.pieces, await tx.piece.findMany(standing(run)));
  const used = await tx.piece.count({ where: { runId: run.id } });
  for (const { id, thing, ordinal } of kept) {
    await tx.piece.update({ where: { id }, data: { ordinal, fromU80: thing.from, toU80: thing.to, ...next } });
  }
  await tx.piece.updateMany({ where: { id: { in: removed } }, data: { retiredAt: release.at, ...next } });
  await insertMany(
    tx,
    'Piece',
    added.map(({ thing, ...turn }) => pieceRow(release, run, thing, after(used, turn))),
  );
}

async function renewJoints(tx: Tx, release: Release, run: ReleasedRun, match: Match): Promise<void> {
  const { kept, removed, added } = sort(match, run.layout.joints, await tx.joint.findMany(standing(run)));
  const used = await tx.joint.count({ where: { runId: run.id } });
  for (const { id, thing, ordinal } of kept) {
    await tx.joint.update({ where: { id }, data: { ordinal, atU80: thing.at, ...next } });
  }
  await tx.joint.updateMany({ where: { id: { in: removed } }, data: { retiredAt: release.at, ...next } });
  await insertMany(
    tx,
    'Joint',
    added.map(({ thing, ...turn }) => jointRow(release, run, thing, after(used, turn))),
  );
}

async function renewSupports(tx: Tx, release: Release, run: ReleasedRun, match: Match): Promise<void> {
  const { kept, removed, added } = sort(match, run.layout.supports, await tx.support.findMany(standing(run)));
  const used = await tx.support.count({ where: { runId: run.id } });
  for (const { id, thing, ordinal } of kept) {
    const { at, loadKg, continuousLoadKg } = thing;
    await tx.support.update({ where: { id }, data: { ordinal, atU80: at, loadKg, continuousLoadKg, ...next } });
  }
  await tx.support.updateMany({ where: { id: { in: removed } }, data: { retiredAt: release.at, ...next } });
  await insertMany(
    tx,
    'Support',
    added.map(({ thing, ...turn }) => supportRow(release, run, thing, after(used, turn))),
  );
}

/** A tap is the same tap while it keeps its id. */
async function renewTaps(tx: Tx, release: Release, run: ReleasedRun): Promise<void> {
  const rows = await tx.tap.findMany({ where: { runId: run.id, retiredAt: null }, select: { id: true, key: true } });
  const now = new Map(tapRows(release, run).map((row) => [row.key, row]));
  for (const row of rows) {
    const tap = now.get(row.key);
    now.delete(row.key);
    if (tap === undefined) await tx.tap.update({ where: { id: row.id }, data: { retiredAt: release.at, ...next } });
    else
      await tx.tap.update({
        where: { id: row.id },
        data: { ordinal: tap.ordinal, atU80: tap.atU80, spec: tap.spec as never, ...next },
      });
  }
  await insertMany(tx, 'Tap', [...now.values()]);
}

/** What a match says of the rows that stand and of the things that shall stand. */
function sort<T>(match: Match, things: readonly T[], rows: readonly { readonly id: string }[]) {
  return {
    kept: match.kept.map(([old, ordinal]) => ({ id: rows[old]!.id, thing: things[ordinal]!, ordinal })),
    removed: match.removed.map((old) => rows[old]!.id),
    added: match.added.map((ordinal, index) => ({ thing: things[ordinal]!, ordinal, number: index + 1 })),
  };
}

/** Marks that were given once, also to what has left, are not given again. */
function after(used: number, { number, ordinal }: Turn): Turn {
  return { number: used + number, ordinal };
}
