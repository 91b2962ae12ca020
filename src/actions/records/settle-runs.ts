import { jointCard } from '../../domain/quality/joint-card.ts';
import { jointSheet } from '../../domain/quality/joint-sheet.ts';
import { isHung, type JointState, PIECE_STATES } from '../../domain/quality/states.ts';
import type { Tx } from '../../store/database.ts';
import { type FloorRun, readFloorRun } from '../../store/floor-run.ts';
import { recordsOf } from '../../store/records.ts';
import { jointsOfPiece, savePieceState, stateOfJoint } from './piece-at.ts';

/**
 * After a release the same pieces may have other joints: an accepted section whose neighbour was replaced has an open joint
 * again, and so has a tee whose branch came later. States are what the records reduce to on the revision that now stands, so
 * they are reckoned anew on these runs and on those that they branch off. Runs where nothing hangs yet are not read.
 */
export async function settleRuns(tx: Tx, projectId: string, runIds: readonly string[], at: Date): Promise<void> {
  const built = await tx.piece.findMany({
    where: { projectId, retiredAt: null, state: { in: PIECE_STATES.filter(isHung) } },
    distinct: ['runId'],
    orderBy: { runId: 'asc' },
    select: { runId: true },
  });
  if (built.length === 0) return;
  const touched = await withParents(tx, projectId, runIds);
  for (const { runId } of built) {
    const floor = touched.has(runId) ? await readFloorRun(tx, projectId, runId) : null;
    if (floor !== null) await settleRun(tx, floor, at);
  }
}

async function withParents(tx: Tx, projectId: string, runIds: readonly string[]): Promise<ReadonlySet<string>> {
  const rows = await tx.run.findMany({ where: { projectId }, select: { id: true, key: true, parentKey: true } });
  const ids = new Map(rows.map((row) => [row.key, row.id]));
  const released = new Set(runIds);
  const parents = rows.flatMap((row) => (released.has(row.id) ? (ids.get(row.parentKey ?? '') ?? []) : []));
  return new Set([...released, ...parents]);
}

async function settleRun(tx: Tx, floor: FloorRun, at: Date): Promise<void> {
  const records = await recordsOf(
    tx,
    [...floor.joints, ...floor.pieces].map((row) => row.id),
  );
  const sheet = jointSheet(floor.type);
  const zone = floor.project.document.timeZone ?? null;
  const states = new Map<string, JointState>();
  for (const row of floor.joints) {
    const card = jointCard(sheet, records.get(row.id) ?? [], zone);
    states.set(row.id, card.state);
    const stepsDone = card.steps.filter((step) => step.done !== null).length;
    if (card.state === row.state && stepsDone === row.stepsDone) continue;
    await tx.joint.update({
      where: { id: row.id },
      data: { state: card.state, stepsDone, stateAt: at, version: { increment: 1 } },
    });
  }
  for (const piece of floor.pieces) {
    const joints = jointsOfPiece(floor, piece).map((joint) => states.get(joint.id) ?? stateOfJoint(joint));
    await savePieceState(tx, piece, { records: records.get(piece.id) ?? [], joints, at });
  }
}
