import type { RunDocument } from '../document/job-document.ts';
import { matchJoints, matchPieces, matchSupports } from '../domain/layout/match-pieces.ts';
import type { PlacedPiece, RunLayout } from '../domain/layout/result.ts';
import type { Tx } from './database.ts';
import { insertMany } from './insert-many.ts';

export interface ReleasedRun {
  readonly id: string;
  readonly key: string;
  readonly revision: number;
  readonly spec: RunDocument;
  readonly layout: RunLayout;
}

export interface Release {
  readonly projectId: string;
  readonly runs: readonly ReleasedRun[];
  readonly reason: string;
  readonly byUserId: string;
  readonly at: Date;
  readonly newId: () => string;
}

/** Writes a release: first ones in bulk, later ones piece by piece so that what stays the same keeps its identity and its records. */
export async function releaseRows(tx: Tx, release: Release): Promise<void> {
  const first = release.runs.filter((run) => run.revision === 0);
  await insertMany(
    tx,
    'Piece',
    first.flatMap((run) => run.layout.pieces.map((piece, index) => pieceRow(release, run, piece, index + 1, index))),
  );
  await insertMany(
    tx,
    'Joint',
    first.flatMap((run) => run.layout.joints.map((joint, index) => jointRow(release, run, joint.at, index + 1, index))),
  );
  await insertMany(
    tx,
    'Support',
    first.flatMap((run) =>
      run.layout.supports.map((support, index) => supportRow(release, run, support, index + 1, index)),
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
      byUserId: release.byUserId,
      at: release.at,
    })),
  );
  await tx.run.updateMany({
    where: { id: { in: release.runs.map((run) => run.id) } },
    data: { revision: { increment: 1 }, changed: false, releasedAt: release.at, version: { increment: 1 } },
  });
}

async function releaseAgain(tx: Tx, release: Release, run: ReleasedRun): Promise<void> {
  const last = await tx.runRevision.findUniqueOrThrow({
    where: { runId_number: { runId: run.id, number: run.revision } },
    select: { layout: true },
  });
  const before = last.layout as unknown as RunLayout;
  const pieceMatch = matchPieces(before.pieces, run.layout.pieces);
  await renewPieces(tx, release, run, pieceMatch);
  await renewJoints(tx, release, run, matchJoints(before, run.layout, pieceMatch));
  await renewSupports(tx, release, run, matchSupports(before.supports, run.layout.supports));
  await renewTaps(tx, release, run);
}

interface Match {
  /** Pairs of places in the old and the new list. */
  readonly kept: readonly (readonly [number, number])[];
  readonly removed: readonly number[];
  readonly added: readonly number[];
}

async function renewPieces(tx: Tx, release: Release, run: ReleasedRun, match: Match): Promise<void> {
  const rows = await tx.piece.findMany({
    where: { runId: run.id, retiredAt: null },
    orderBy: { ordinal: 'asc' },
    select: { id: true },
  });
  let number = await nextMark(tx.piece.count({ where: { runId: run.id } }));
  for (const [old, next] of match.kept) {
    const piece = run.layout.pieces[next];
    const row = rows[old];
    if (piece !== undefined && row !== undefined)
      await tx.piece.update({
        where: { id: row.id },
        data: { ordinal: next, fromU80: piece.from, toU80: piece.to, version: { increment: 1 } },
      });
  }
  await tx.piece.updateMany({
    where: { id: { in: idsAt(rows, match.removed) } },
    data: { retiredAt: release.at, version: { increment: 1 } },
  });
  const added = match.added.flatMap((index) => {
    const piece = run.layout.pieces[index];
    return piece === undefined ? [] : [pieceRow(release, run, piece, number++, index)];
  });
  await insertMany(tx, 'Piece', added);
}

async function renewJoints(tx: Tx, release: Release, run: ReleasedRun, match: Match): Promise<void> {
  const rows = await tx.joint.findMany({
    where: { runId: run.id, retiredAt: null },
    orderBy: { ordinal: 'asc' },
    select: { id: true },
  });
  let number = await nextMark(tx.joint.count({ where: { runId: run.id } }));
  for (const [old, next] of match.kept) {
    const joint = run.layout.joints[next];
    const row = rows[old];
    if (joint !== undefined && row !== undefined)
      await tx.joint.update({
        where: { id: row.id },
        data: { ordinal: next, atU80: joint.at, version: { increment: 1 } },
      });
  }
  await tx.joint.updateMany({
    where: { id: { in: idsAt(rows, match.removed) } },
    data: { retiredAt: release.at, version: { increment: 1 } },
  });
  const added = match.added.flatMap((index) => {
    const joint = run.layout.joints[index];
    return joint === undefined ? [] : [jointRow(release, run, joint.at, number++, index)];
  });
  await insertMany(tx, 'Joint', added);
}

async function renewSupports(tx: Tx, release: Release, run: ReleasedRun, match: Match): Promise<void> {
  const rows = await tx.support.findMany({
    where: { runId: run.id, retiredAt: null },
    orderBy: { ordinal: 'asc' },
    select: { id: true },
  });
  let number = await nextMark(tx.support.count({ where: { runId: run.id } }));
  for (const [old, next] of match.kept) {
    const support = run.layout.supports[next];
    const row = rows[old];
    if (support === undefined || row === undefined) continue;
    await tx.support.update({
      where: { id: row.id },
      data: {
        ordinal: next,
        atU80: support.at,
        loadKg: support.loadKg,
        continuousLoadKg: support.continuousLoadKg,
        version: { increment: 1 },
      },
    });
  }
  await tx.support.updateMany({
    where: { id: { in: idsAt(rows, match.removed) } },
    data: { retiredAt: release.at, version: { increment: 1 } },
  });
  const added = match.added.flatMap((index) => {
    const support = run.layout.supports[index];
    return support === undefined ? [] : [supportRow(release, run, support, number++, index)];
  });
  await insertMany(tx, 'Support', added);
}

/** A tap is the same tap while it keeps its id. */
async function renewTaps(tx: Tx, release: Release, run: ReleasedRun): Promise<void> {
  const rows = await tx.tap.findMany({ where: { runId: run.id, retiredAt: null }, select: { id: true, key: true } });
  const next = new Map(tapRows(release, run).map((row) => [row.key, row]));
  for (const row of rows) {
    const now = next.get(row.key);
    next.delete(row.key);
    if (now === undefined)
      await tx.tap.update({ where: { id: row.id }, data: { retiredAt: release.at, version: { increment: 1 } } });
    else
      await tx.tap.update({
        where: { id: row.id },
        data: { ordinal: now.ordinal, atU80: now.atU80, spec: now.spec as never, version: { increment: 1 } },
      });
  }
  await insertMany(tx, 'Tap', [...next.values()]);
}

function pieceRow(
  { projectId, newId }: Release,
  run: ReleasedRun,
  piece: PlacedPiece,
  number: number,
  ordinal: number,
) {
  const mark = `${run.key}-P${twoDigits(number)}`;
  return {
    id: newId(),
    projectId,
    runId: run.id,
    ordinal,
    mark,
    kind: piece.kind,
    hand: piece.hand,
    fromU80: piece.from,
    toU80: piece.to,
    state: 'planned',
    stateAt: null,
    lot: null,
    retiredAt: null,
    version: 1,
  };
}

function jointRow({ projectId, newId }: Release, run: ReleasedRun, at: number, number: number, ordinal: number) {
  return {
    id: newId(),
    projectId,
    runId: run.id,
    ordinal,
    mark: `${run.key}-J${twoDigits(number)}`,
    atU80: at,
    state: 'open',
    stateAt: null,
    stepsDone: 0,
    retiredAt: null,
    version: 1,
  };
}

function supportRow(
  { projectId, newId }: Release,
  run: ReleasedRun,
  support: RunLayout['supports'][number],
  number: number,
  ordinal: number,
) {
  const mark = `${run.key}-H${twoDigits(number)}`;
  return {
    id: newId(),
    projectId,
    runId: run.id,
    ordinal,
    mark,
    atU80: support.at,
    measuredU80: null,
    loadKg: support.loadKg,
    continuousLoadKg: support.continuousLoadKg,
    state: 'planned',
    stateAt: null,
    retiredAt: null,
    version: 1,
  };
}

function tapRows({ projectId, newId }: Release, run: ReleasedRun) {
  const specs = new Map((run.spec.taps ?? []).map((tap) => [tap.id, tap]));
  return run.layout.taps.map((tap, ordinal) => ({
    id: newId(),
    projectId,
    runId: run.id,
    ordinal,
    key: tap.id,
    atU80: tap.at,
    spec: specs.get(tap.id),
    state: 'planned',
    stateAt: null,
    retiredAt: null,
    version: 1,
  }));
}

async function nextMark(count: Promise<number>): Promise<number> {
  return (await count) + 1;
}

function idsAt(rows: readonly { readonly id: string }[], places: readonly number[]): string[] {
  return places.flatMap((place) => rows[place]?.id ?? []);
}

function twoDigits(number: number): string {
  return String(number).padStart(2, '0');
}
