import type { Actor, PieceBody, SiteRecord, Stamp } from './record.ts';
import { stampOf } from './record.ts';
import { standingRecords } from './standing-records.ts';
import type { JointState, PieceState } from './states.ts';

export interface Quarantine extends Stamp {
  readonly reason: string;
  /** The signatures given since; release takes both, by two people. */
  readonly office: Stamp | null;
  readonly inspector: Stamp | null;
}

/** One section or fitting as its own records tell it; what its joints add is `pieceState`. */
export interface PieceCard {
  readonly records: readonly SiteRecord[];
  readonly lot: string | null;
  readonly onSite: Stamp | null;
  readonly hung: Stamp | null;
  readonly quarantine: Quarantine | null;
}

/** Folds the records of one piece. A quarantine ends when an office and an inspector's signature stand, of two people. */
export function pieceCard(records: readonly SiteRecord[]): PieceCard {
  const empty: PieceCard = { records, lot: null, onSite: null, hung: null, quarantine: null };
  return standingRecords(records).reduce<PieceCard>((card, record) => {
    const { body } = record;
    return isPieceBody(body) ? apply(card, { ...record, body }) : card;
  }, empty);
}

/**
 * The state of a piece from its own records and from the joints at its ends: joined when all of them are closed, accepted
 * when all are accepted. A piece without a joint has nothing left to accept once it hangs.
 */
export function pieceState(card: PieceCard, joints: readonly JointState[]): PieceState {
  if (card.quarantine !== null) return 'quarantined';
  if (card.hung === null) return card.onSite === null ? 'planned' : 'on-site';
  if (joints.every((state) => state === 'accepted')) return 'accepted';
  if (joints.every((state) => state === 'closed' || state === 'accepted')) return 'joined';
  return 'hung';
}

/** The role in which the person may still sign a quarantine's release; null when that role has signed or signs nothing. */
export function releaseRoleOf(quarantine: Quarantine, role: Actor['role']): 'office' | 'inspector' | null {
  if (role !== 'office' && role !== 'inspector') return null;
  return quarantine[role] === null ? role : null;
}

function isPieceBody(body: SiteRecord['body']): body is PieceBody {
  return body.kind.startsWith('piece-');
}

function apply(card: PieceCard, record: SiteRecord<PieceBody>): PieceCard {
  const { body } = record;
  switch (body.kind) {
    case 'piece-on-site':
      return { ...card, onSite: stampOf(record), lot: body.lot ?? card.lot };
    case 'piece-hung':
      return { ...card, hung: stampOf(record) };
    case 'piece-quarantined':
      return { ...card, quarantine: { ...stampOf(record), reason: body.reason, office: null, inspector: null } };
    case 'piece-released':
      return { ...card, quarantine: signed(card.quarantine, body.as, stampOf(record)) };
  }
}

function signed(quarantine: Quarantine | null, as: 'office' | 'inspector', stamp: Stamp): Quarantine | null {
  if (quarantine === null) return null;
  const after = { ...quarantine, [as]: stamp };
  const released = after.office !== null && after.inspector !== null && after.office.by.id !== after.inspector.by.id;
  return released ? null : after;
}
