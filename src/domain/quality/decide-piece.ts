import type { PlacedPiece } from '../layout/result.ts';
import type { Side } from '../model.ts';
import { credited, type Decision, refused } from './decision.ts';
import { guardRecord } from './guard-record.ts';
import type { Instant } from './instant.ts';
import { type PieceCard, pieceCard } from './piece-card.ts';
import { handSeen, sideRemedy } from './piece-side.ts';
import { type Actor, entered, type NewRecord, type PieceBody, type WithdrawnBody } from './record.ts';
import type { PieceRefusal } from './refusal.ts';
import type { Remark } from './remark.ts';

export interface PieceSite {
  readonly mark: string;
  readonly kind: PlacedPiece['kind'];
  readonly hand: PlacedPiece['hand'];
  /** The run's conductor side, seen along increasing distance. */
  readonly conductorSide: Side;
  /** Marks of the joints at its ends on which work was recorded. */
  readonly jointsBegun: readonly string[];
  readonly card: PieceCard;
  readonly now: Instant;
  readonly version: number;
}

/**
 * Takes or refuses a record on a section or fitting, and says what its card becomes. A piece seen with its conductors on the
 * wrong side is never recorded as hung: a straight one is turned, an elbow or tee of the wrong hand stops the work.
 */
export function decidePiece(
  site: PieceSite,
  record: NewRecord<PieceBody | WithdrawnBody>,
  actor: Actor,
): Decision<PieceCard> {
  const standing = { now: site.now, version: site.version, records: site.card.records };
  const fault = guardRecord(record, standing) ?? bodyFault(site, record, actor);
  if (fault !== null) return refused(fault);
  const after = pieceCard([...site.card.records, entered(record, actor, site.now)]);
  return credited(after, releaseRemarks(after));
}

function bodyFault(site: PieceSite, record: NewRecord<PieceBody | WithdrawnBody>, actor: Actor): PieceRefusal | null {
  const { body } = record;
  const replaces = record.supersedes?.id ?? null;
  switch (body.kind) {
    case 'piece-on-site':
      return onSiteFault(site, replaces);
    case 'piece-hung':
      return (
        hungFault(site, replaces) ?? sideFault(site, body.conductorSide) ?? confirmerFault(body.endsConfirmedBy, actor)
      );
    case 'piece-quarantined':
      return quarantineFault(site, replaces);
    case 'piece-released':
      return releaseFault(site, body.as, actor);
    case 'record-withdrawn':
      return withdrawalFault(site, replaces);
  }
}

function onSiteFault({ mark, card }: PieceSite, replaces: string | null): PieceRefusal | null {
  const { onSite } = card;
  if (onSite === null || onSite.recordId === replaces) return null;
  return { code: 'piece.already-on-site', args: { mark, by: onSite.by.name, at: onSite.at } };
}

function hungFault({ mark, card }: PieceSite, replaces: string | null): PieceRefusal | null {
  if (card.quarantine !== null) return { code: 'piece.quarantined', args: { mark, reason: card.quarantine.reason } };
  const { hung } = card;
  if (hung === null || hung.recordId === replaces) return null;
  return { code: 'piece.already-hung', args: { mark, by: hung.by.name, at: hung.at } };
}

function sideFault({ mark, kind, hand, conductorSide: needed }: PieceSite, seen: Side): PieceRefusal | null {
  if (seen === needed) return null;
  if (sideRemedy({ kind, hand }) === 'turn') return { code: 'piece.side-turn', args: { mark, needed, seen, kind } };
  const hands = { neededHand: hand, seenHand: handSeen(hand, needed, seen) };
  return { code: 'piece.side-reorder', args: { mark, needed, seen, kind, ...hands } };
}

/** A second pair of eyes is another person's. */
function confirmerFault(confirmer: string | null, { name }: Actor): PieceRefusal | null {
  const same = confirmer !== null && confirmer.trim().toLowerCase() === name.trim().toLowerCase();
  return same ? { code: 'piece.confirmed-alone', args: { name } } : null;
}

/** A piece whose joints were worked on hangs: taking back that it does would leave joints in the air. */
function withdrawalFault({ mark, card, jointsBegun }: PieceSite, replaces: string | null): PieceRefusal | null {
  if (card.hung?.recordId !== replaces || jointsBegun.length === 0) return null;
  return { code: 'piece.joints-begun', args: { mark, joints: jointsBegun } };
}

function quarantineFault({ mark, card }: PieceSite, replaces: string | null): PieceRefusal | null {
  const { quarantine } = card;
  if (quarantine === null || quarantine.recordId === replaces) return null;
  return { code: 'piece.already-quarantined', args: { mark, reason: quarantine.reason } };
}

function releaseFault({ mark, card }: PieceSite, as: 'office' | 'inspector', actor: Actor): PieceRefusal | null {
  const { quarantine } = card;
  if (quarantine === null) return { code: 'piece.not-quarantined', args: { mark } };
  if (actor.role !== as) return { code: 'piece.release-role', args: { as, role: actor.role } };
  const own = quarantine[as];
  if (own !== null) return { code: 'piece.release-signed', args: { as, by: own.by.name, at: own.at } };
  const other = quarantine[as === 'office' ? 'inspector' : 'office'];
  return other?.by.id === actor.id ? { code: 'piece.release-same-person', args: { name: actor.name } } : null;
}

function releaseRemarks({ quarantine }: PieceCard): Remark[] {
  if (quarantine === null) return [];
  if (quarantine.office !== null) return [{ code: 'piece.release-awaits', args: { role: 'inspector' } }];
  return quarantine.inspector === null ? [] : [{ code: 'piece.release-awaits', args: { role: 'office' } }];
}
