import { piecesAtJoints } from '../../domain/layout/pieces-at-joints.ts';
import { decidePiece, type PieceSite } from '../../domain/quality/decide-piece.ts';
import { pieceCard, pieceState } from '../../domain/quality/piece-card.ts';
import type { Actor, NewRecord, PieceBody, SiteRecord, WithdrawnBody } from '../../domain/quality/record.ts';
import type { JointState, PieceState } from '../../domain/quality/states.ts';
import type { Reader, Tx } from '../../store/database.ts';
import type { FloorRun, JointRow, PieceRow } from '../../store/floor-run.ts';
import { recordsOf } from '../../store/records.ts';
import { type Ruling, ruled } from './ruling.ts';

/** One section or fitting with all that judging a record on it takes. */
export interface PieceAt {
  readonly floor: FloorRun;
  readonly row: PieceRow;
  /** The joints at its ends; a tee has its branch's too. */
  readonly joints: readonly JointRow[];
  readonly site: PieceSite;
}

export async function pieceAt(reader: Reader, floor: FloorRun, row: PieceRow, now: string): Promise<PieceAt> {
  const joints = jointsOfPiece(floor, row);
  const records = (await recordsOf(reader, [row.id])).get(row.id) ?? [];
  return {
    floor,
    row,
    joints,
    site: {
      mark: row.mark,
      kind: row.kind as PieceSite['kind'],
      hand: row.hand as PieceSite['hand'],
      conductorSide: floor.run.conductorSide,
      jointsBegun: joints.filter(isBegun).map((joint) => joint.mark),
      card: pieceCard(records),
      now,
      version: row.version,
    },
  };
}

function isBegun(joint: JointRow): boolean {
  return joint.state !== 'open' || joint.stepsDone > 0;
}

export function jointsOfPiece(floor: FloorRun, piece: Pick<PieceRow, 'id' | 'fromU80' | 'toU80'>): JointRow[] {
  const place = floor.pieces.findIndex((row) => row.id === piece.id);
  if (place < 0) return []; // it has left the design, and with it its joints
  const ends = endsOf(floor);
  const own = floor.joints.filter((_, index) => ends[index]?.left === place || ends[index]?.right === place);
  const branches = floor.branches.filter(({ at }) => piece.fromU80 < at && at < piece.toU80);
  return [...own, ...branches.map((branch) => branch.joint)];
}

/** The pieces on both sides of every joint of the run, by their places. */
export function endsOf({ pieces, joints }: Pick<FloorRun, 'pieces' | 'joints'>) {
  return piecesAtJoints(
    pieces.map(({ fromU80: from, toU80: to }) => ({ from, to })),
    joints.map(({ atU80: at }) => ({ at })),
  );
}

export function rulePiece(at: PieceAt, record: NewRecord<PieceBody | WithdrawnBody>, actor: Actor): Ruling {
  return ruled(decidePiece(at.site, record, actor), (card) => {
    const { row, joints } = at;
    const state = pieceState(card, joints.map(stateOfJoint));
    return {
      state,
      save: async (tx) => {
        await tx.piece.update({
          where: { id: row.id },
          data: {
            state,
            lot: card.lot,
            version: { increment: 1 },
            ...(state === row.state ? {} : { stateAt: new Date(record.at) }),
          },
        });
      },
    };
  });
}

export function stateOfJoint(joint: Pick<JointRow, 'state'>): JointState {
  return joint.state as JointState;
}

/** Writes the state that a piece comes to once the joints at its ends stand so; nothing when it is the same. */
export async function savePieceState(
  tx: Tx,
  row: PieceRow,
  { records, joints, at }: { records: readonly SiteRecord[]; joints: readonly JointState[]; at: Date },
): Promise<void> {
  const state: PieceState = pieceState(pieceCard(records), joints);
  if (state === row.state) return;
  await tx.piece.update({ where: { id: row.id }, data: { state, stateAt: at, version: { increment: 1 } } });
}
