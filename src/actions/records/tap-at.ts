import { toTap } from '../../document/model/to-tap.ts';
import type { TapDocument } from '../../document/schema/tap.ts';
import type { Tap } from '../../domain/model.ts';
import { decideTap, type TapSite } from '../../domain/quality/decide-tap.ts';
import type { Actor, NewRecord, TapBody, WithdrawnBody } from '../../domain/quality/record.ts';
import type { TapState } from '../../domain/quality/states.ts';
import { tapCard } from '../../domain/quality/tap-card.ts';
import type { Reader } from '../../store/database.ts';
import type { FloorRun, PieceRow, TapRow } from '../../store/floor-run.ts';
import { recordsOf } from '../../store/records.ts';
import { neighbour } from './joint-at.ts';
import { rulesOf } from './rules-of.ts';
import { type Ruling, ruled } from './ruling.ts';

/** One tap-off with all that judging a record on it takes. */
export interface TapAt {
  readonly floor: FloorRun;
  readonly row: TapRow;
  /** As the design has it. */
  readonly tap: Tap;
  /** The section that it sits on; null where no piece of the revision is. */
  readonly piece: PieceRow | null;
  readonly site: TapSite;
}

export async function tapAt(reader: Reader, floor: FloorRun, row: TapRow, now: string): Promise<TapAt> {
  const tap = toTap(row.spec as unknown as TapDocument);
  const piece = floor.pieces.find(({ fromU80, toU80 }) => fromU80 <= row.atU80 && row.atU80 <= toU80) ?? null;
  const records = await recordsOf(reader, piece === null ? [row.id] : [row.id, piece.id]);
  return {
    floor,
    row,
    tap,
    piece,
    site: {
      phasesPlanned: tap.phases,
      drop: tap.drop,
      state: row.state as TapState,
      piece:
        piece === null
          ? { mark: `${floor.key} at this place`, state: 'planned', quarantineReason: null }
          : neighbour(piece, records.get(piece.id) ?? []),
      card: tapCard(records.get(row.id) ?? []),
      rules: rulesOf(floor.project),
      now,
      version: row.version,
    },
  };
}

export function ruleTap(at: TapAt, record: NewRecord<TapBody | WithdrawnBody>, actor: Actor): Ruling {
  const { row } = at;
  return ruled(decideTap(at.site, record, actor), (card) => {
    const state = isPastRecords(row.state) ? row.state : card.state;
    return {
      state,
      save: async (tx) => {
        await tx.tap.update({
          where: { id: row.id },
          data: {
            state,
            version: { increment: 1 },
            ...(state === row.state ? {} : { stateAt: new Date(record.at) }),
          },
        });
      },
    };
  });
}

/** States that the owner's tap changes set, and that no record of the floor takes back. */
function isPastRecords(state: string): boolean {
  return state === 'in-service' || state === 'removed';
}
