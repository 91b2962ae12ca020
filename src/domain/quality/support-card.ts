import type { Length } from '../units/length.ts';
import { credited, type Decision, refused } from './decision.ts';
import { guardRecord } from './guard-record.ts';
import type { Instant } from './instant.ts';
import type { QualityRules } from './project-rules.ts';
import {
  type Actor,
  entered,
  type NewRecord,
  type SiteRecord,
  type Stamp,
  type SupportBody,
  stampOf,
  type WithdrawnBody,
} from './record.ts';
import type { SupportRefusal } from './refusal.ts';
import type { Remark, SupportLimit } from './remark.ts';
import { type StandingRecord, standingRecords } from './standing-records.ts';
import type { SupportState } from './states.ts';
import type { SupportSurroundings } from './support-surroundings.ts';
import { judgeSupportPlace } from './support-window.ts';

export interface SupportCard {
  readonly records: readonly SiteRecord[];
  readonly state: SupportState;
  readonly set: Stamp | null;
  /** Distance from the feed as measured; null while not set, or set where planned. */
  readonly measured: Length | null;
  readonly accepted: Stamp | null;
}

/** One hanger as its records tell it: planned, set, accepted. */
export function supportCard(records: readonly SiteRecord[]): SupportCard {
  const empty: SupportCard = { records, state: 'planned', set: null, measured: null, accepted: null };
  return standingRecords(records).reduce(apply, empty);
}

function apply(card: SupportCard, record: StandingRecord): SupportCard {
  const { body } = record;
  if (body.kind === 'support-set') return { ...card, state: 'set', set: stampOf(record), measured: body.measured };
  if (body.kind !== 'support-accepted' || card.set === null) return card;
  return { ...card, state: 'accepted', accepted: stampOf(record) };
}

export interface SupportSite {
  readonly card: SupportCard;
  readonly around: SupportSurroundings;
  readonly rules: QualityRules;
  readonly now: Instant;
  readonly version: number;
}

/**
 * Takes or refuses a record on a hanger. A measured place that breaks a rule of its layout is refused with the distance that
 * broke and the nearest legal place; a limit that the sheet does not state is told as unknown.
 */
export function decideSupport(
  site: SupportSite,
  record: NewRecord<SupportBody | WithdrawnBody>,
  actor: Actor,
): Decision<SupportCard> {
  const standing = { now: site.now, version: site.version, records: site.card.records };
  const fault = guardRecord(record, standing) ?? bodyFault(site, record, actor);
  if (fault !== null) return refused(fault);
  const after = supportCard([...site.card.records, entered(record, actor, site.now)]);
  return credited(after, record.body.kind === 'support-set' ? placeRemarks(site.around, after.measured) : []);
}

function bodyFault(
  site: SupportSite,
  record: NewRecord<SupportBody | WithdrawnBody>,
  actor: Actor,
): SupportRefusal | null {
  const { body } = record;
  const replaces = record.supersedes?.id ?? null;
  switch (body.kind) {
    case 'support-set':
      return (
        againFault(site.card, replaces) ??
        readyFault(body) ??
        supportPosition(body.measured ?? site.around.planned, site.around)
      );
    case 'support-accepted':
      return acceptanceFault(site, replaces, actor);
    case 'record-withdrawn':
      return null;
  }
}

function againFault({ set }: SupportCard, replaces: string | null): SupportRefusal | null {
  if (set === null || set.recordId === replaces) return null;
  return { code: 'support.already-set', args: { by: set.by.name, at: set.at } };
}

function readyFault(body: Extract<SupportBody, { readonly kind: 'support-set' }>): SupportRefusal | null {
  const missing = [
    ...(body.rodPlumb ? [] : ['rod plumb' as const]),
    ...(body.loadNut ? [] : ['load nut' as const]),
    ...(body.lockNut ? [] : ['lock nut' as const]),
  ];
  return missing.length === 0 ? null : { code: 'support.not-ready', args: { missing } };
}

/** Why a hanger cannot stand at this distance from the feed, with the nearest legal places; null when it can. */
export function supportPosition(measured: Length, around: SupportSurroundings): SupportRefusal | null {
  const { broken, below, above } = judgeSupportPlace(measured, around);
  if (broken.length === 0) return null;
  return {
    code: 'support.position',
    args: { measured, broken, nearest: nearer(measured, below, above), below, above },
  };
}

function nearer(at: Length, below: Length | null, above: Length | null): Length | null {
  if (below === null || above === null) return below ?? above;
  return at - below <= above - at ? below : above;
}

function acceptanceFault({ card, rules }: SupportSite, replaces: string | null, actor: Actor): SupportRefusal | null {
  const { set, accepted } = card;
  if (set === null) return { code: 'support.not-set', args: {} };
  if (accepted !== null && accepted.recordId !== replaces) {
    return { code: 'support.accepted-already', args: { by: accepted.by.name, at: accepted.at } };
  }
  const own =
    rules.secondPerson === 'all' &&
    card.records.some(({ body, by }) => body.kind === 'support-set' && by.id === actor.id);
  return own ? { code: 'support.own-work', args: { name: actor.name } } : null;
}

function placeRemarks(
  { limits, planned, fittings, crossings }: SupportSurroundings,
  measured: Length | null,
): Remark[] {
  const asked: readonly [SupportLimit, Length | null, boolean][] = [
    ['spacing', limits.maxSpacing, true],
    ['end-overhang', limits.maxEndOverhang, true],
    ['joint-clearance', limits.jointClear, true],
    ['fitting-distance', limits.fittingWithin, fittings.length > 0],
    ['crossing-clearance', limits.crossingClear, crossings.length > 0],
  ];
  const unknown = asked.filter(([, limit, concerns]) => concerns && limit === null);
  const moved = measured === null ? 0 : measured - planned;
  return [
    ...unknown.map(([limit]): Remark => ({ code: 'support.limit-unknown', args: { limit } })),
    ...(moved === 0 ? [] : [{ code: 'support.load-not-reworked' as const, args: { moved } }]),
  ];
}
