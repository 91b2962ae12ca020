import { FEED } from '../../domain/layout/pieces-at-joints.ts';
import { decideJoint, type JointSite, type Neighbour } from '../../domain/quality/decide-joint.ts';
import { type JointCard, jointCard } from '../../domain/quality/joint-card.ts';
import { jointSheet } from '../../domain/quality/joint-sheet.ts';
import { pieceCard } from '../../domain/quality/piece-card.ts';
import type { Actor, JointBody, NewRecord, SiteRecord, WithdrawnBody } from '../../domain/quality/record.ts';
import type { PieceState } from '../../domain/quality/states.ts';
import type { Reader, Tx } from '../../store/database.ts';
import { type FloorRun, type JointRow, type PieceRow, readFloorRun } from '../../store/floor-run.ts';
import { recordsOf } from '../../store/records.ts';
import { endsOf, jointsOfPiece, savePieceState, stateOfJoint } from './piece-at.ts';
import { type Ruling, ruled } from './ruling.ts';

/** One joint with all that judging a record on it takes. */
export interface JointAt {
  readonly floor: FloorRun;
  readonly row: JointRow;
  /** The pieces that it joins. */
  readonly pieces: readonly PieceRow[];
  readonly pieceRecords: ReadonlyMap<string, readonly SiteRecord[]>;
  readonly site: JointSite;
}

export async function jointAt(reader: Reader, floor: FloorRun, row: JointRow, now: string): Promise<JointAt> {
  const pieces = piecesOfJoint(floor, row);
  const records = await recordsOf(reader, [row.id, ...pieces.map((piece) => piece.id)]);
  const neighbours = pieces.map((piece) => neighbour(piece, records.get(piece.id) ?? []));
  const { timeZone } = floor.project.document;
  return {
    floor,
    row,
    pieces,
    pieceRecords: records,
    site: {
      card: jointCard(jointSheet(floor.type), records.get(row.id) ?? [], timeZone ?? null),
      neighbours: [...neighbours, ...missingTee(floor, row)],
      now,
      version: row.version,
    },
  };
}

/** A piece as the things beside it see it. */
export function neighbour(piece: PieceRow, records: readonly SiteRecord[]): Neighbour {
  const { quarantine } = pieceCard(records);
  return {
    mark: piece.mark,
    state: piece.state as PieceState,
    quarantineReason: quarantine === null ? null : quarantine.reason,
  };
}

function piecesOfJoint(floor: FloorRun, row: JointRow): PieceRow[] {
  const place = floor.joints.findIndex((joint) => joint.id === row.id);
  const { left, right } = endsOf(floor)[place] ?? { left: FEED, right: FEED };
  const tee = isAtTee(floor, row) ? (floor.teedOff?.piece ?? null) : null;
  return [tee, floor.pieces[left] ?? null, floor.pieces[right] ?? null].filter((piece) => piece !== null);
}

function isAtTee(floor: FloorRun, row: JointRow): boolean {
  return floor.teedOff !== null && row.atU80 === 0;
}

/** The tee that a branch starts from is not on the floor while its own run was never released. */
function missingTee(floor: FloorRun, row: JointRow): Neighbour[] {
  if (!isAtTee(floor, row) || floor.teedOff === null || floor.teedOff.piece !== null) return [];
  return [{ mark: `the tee of ${floor.teedOff.key}`, state: 'planned', quarantineReason: null }];
}

export function ruleJoint(at: JointAt, record: NewRecord<JointBody | WithdrawnBody>, actor: Actor): Ruling {
  return ruled(decideJoint(at.site, record, actor), (card) => ({
    state: card.state,
    save: (tx) => saveJoint(tx, at, card, new Date(record.at)),
  }));
}

async function saveJoint(tx: Tx, at: JointAt, card: JointCard, moment: Date): Promise<void> {
  const { row } = at;
  const changed = card.state !== row.state;
  await tx.joint.update({
    where: { id: row.id },
    data: {
      state: card.state,
      stepsDone: card.steps.filter((step) => step.done !== null).length,
      version: { increment: 1 },
      ...(changed ? { stateAt: moment } : {}),
    },
  });
  if (!changed) return;
  for (const piece of at.pieces) {
    const floor = await floorOf(tx, at.floor, piece);
    const joints = jointsOfPiece(floor, piece).map((joint) => (joint.id === row.id ? card.state : stateOfJoint(joint)));
    await savePieceState(tx, piece, { records: at.pieceRecords.get(piece.id) ?? [], joints, at: moment });
  }
}

/** The tee of a branch's first joint belongs to another run. */
async function floorOf(tx: Tx, floor: FloorRun, piece: PieceRow): Promise<FloorRun> {
  if (piece.runId === floor.id) return floor;
  return (await readFloorRun(tx, floor.projectId, piece.runId)) ?? floor;
}
