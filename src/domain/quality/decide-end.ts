import type { Neighbour } from './decide-joint.ts';
import { credited, type Decision, refused } from './decision.ts';
import { type RunCard, runCard } from './end-card.ts';
import { guardRecord } from './guard-record.ts';
import type { Instant } from './instant.ts';
import {
  type Actor,
  entered,
  type NewRecord,
  type ReportedActivity,
  type RunBody,
  type RunEnd,
  type WithdrawnBody,
} from './record.ts';
import type { EndRefusal } from './refusal.ts';
import { isHung } from './states.ts';

/** Everything recorded of a run but its insulation tests, which `decideInsulationTest` takes. */
export type EndBody = Exclude<RunBody, { readonly kind: 'insulation-test' }>;

export interface RunSite {
  readonly card: RunCard;
  /** The piece at each open end. */
  readonly endPieces: Readonly<Partial<Record<RunEnd, Neighbour>>>;
  /** Pieces of work in each reported activity, from the labour budget; absent where the book does not price it. */
  readonly pieces: ReadonlyMap<ReportedActivity, number>;
  readonly now: Instant;
  readonly version: number;
}

/** Takes or refuses a record on a run's ends, its slot, or work that is reported by count. */
export function decideEnd(site: RunSite, record: NewRecord<EndBody | WithdrawnBody>, actor: Actor): Decision<RunCard> {
  const standing = { now: site.now, version: site.version, records: site.card.records };
  const fault = guardRecord(record, standing) ?? bodyFault(site, record);
  if (fault !== null) return refused(fault);
  const ends = site.card.ends.map(({ end }) => end);
  return credited(runCard(ends, [...site.card.records, entered(record, actor, site.now)]));
}

function bodyFault(site: RunSite, { body, supersedes }: NewRecord<EndBody | WithdrawnBody>): EndRefusal | null {
  const replaces = supersedes?.id ?? null;
  switch (body.kind) {
    case 'end-closed':
      return endClosedFault(site, body, replaces);
    case 'end-opened':
      return endOpenedFault(site, body.end);
    case 'slot-closed':
      return slotClosedFault(site.card, replaces);
    case 'slot-opened':
      return site.card.slot === null ? { code: 'slot.not-closed', args: {} } : null;
    case 'activity-done':
      return replaces === null ? countFault(site, body.activity, body.quantity) : null;
    case 'record-withdrawn':
      return null;
  }
}

function endClosedFault(
  { card, endPieces }: RunSite,
  { end, capFitted, screwSet }: Extract<EndBody, { readonly kind: 'end-closed' }>,
  replaces: string | null,
): EndRefusal | null {
  const state = card.ends.find((candidate) => candidate.end === end);
  if (state === undefined)
    return { code: 'end.not-open', args: { end, ends: card.ends.map((candidate) => candidate.end) } };
  const { closed } = state;
  if (closed !== null && closed.recordId !== replaces)
    return { code: 'end.already-closed', args: { end, by: closed.by.name, at: closed.at } };
  const piece = endPieces[end];
  if (piece !== undefined && !isHung(piece.state))
    return { code: 'end.piece-not-hung', args: { end, mark: piece.mark, state: piece.state } };
  const missing = [...(capFitted ? [] : ['cap fitted' as const]), ...(screwSet ? [] : ['screw set' as const])];
  return missing.length > 0 ? { code: 'end.not-ready', args: { end, missing } } : null;
}

function endOpenedFault({ card }: RunSite, end: RunEnd): EndRefusal | null {
  const closed = card.ends.find((candidate) => candidate.end === end)?.closed ?? null;
  return closed === null ? { code: 'end.not-closed', args: { end } } : null;
}

function slotClosedFault({ slot }: RunCard, replaces: string | null): EndRefusal | null {
  if (slot === null || slot.recordId === replaces) return null;
  return { code: 'slot.already-closed', args: { by: slot.by.name, at: slot.at } };
}

/** More pieces than the run has is a miscount, and would earn hours that nobody budgeted. */
function countFault({ card, pieces }: RunSite, activity: ReportedActivity, quantity: number | null): EndRefusal | null {
  const total = pieces.get(activity);
  if (total === undefined || quantity === null) return null;
  const before = card.reported.get(activity) ?? 0;
  const done = before === 'all' ? total : before;
  return done + quantity > total
    ? { code: 'activity.over-counted', args: { activity, total, done, asked: quantity } }
    : null;
}
