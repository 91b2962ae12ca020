import type { Tap } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { Neighbour } from './decide-joint.ts';
import { credited, type Decision, refused } from './decision.ts';
import { dropSupportLimit } from './drop-limit.ts';
import { guardRecord } from './guard-record.ts';
import { type Instant, isAfter } from './instant.ts';
import type { QualityRules } from './project-rules.ts';
import { type Actor, entered, type NewRecord, type TapBody, type WithdrawnBody } from './record.ts';
import type { PieceRefusal, TapRefusal } from './refusal.ts';
import type { Remark } from './remark.ts';
import { isHung, type TapState } from './states.ts';
import { type TapCard, tapCard } from './tap-card.ts';

export interface TapSite {
  readonly phasesPlanned: Tap['phases'];
  /** Length of its drop; null when it has none. */
  readonly drop: Length | null;
  /** The state on the row, which may have gone on to in service or removed. */
  readonly state: TapState;
  /** The section that it sits on. */
  readonly piece: Neighbour;
  readonly card: TapCard;
  readonly rules: QualityRules;
  readonly now: Instant;
  readonly version: number;
}

type TapFault = TapRefusal | Extract<PieceRefusal, { readonly code: 'piece.quarantined' }> | null;
type SetBody = Extract<TapBody, { readonly kind: 'tap-set' }>;

/**
 * Takes or refuses a record on a tap-off. It is set only on a run that was isolated and proved without voltage, with its
 * device off and locked, and on the phases of the plan; nothing here permits work on anything energised.
 */
export function decideTap(site: TapSite, record: NewRecord<TapBody | WithdrawnBody>, actor: Actor): Decision<TapCard> {
  const standing = { now: site.now, version: site.version, records: site.card.records };
  const fault = guardRecord(record, standing) ?? bodyFault(site, record, actor);
  if (fault !== null) return refused(fault);
  const after = tapCard([...site.card.records, entered(record, actor, site.now)]);
  return credited(after, record.body.kind === 'drop-supported' ? dropRemarks(site.rules) : []);
}

function bodyFault(site: TapSite, record: NewRecord<TapBody | WithdrawnBody>, actor: Actor): TapFault {
  if (site.state === 'removed') return { code: 'tap.removed', args: {} };
  const { body, at } = record;
  const replaces = record.supersedes?.id ?? null;
  switch (body.kind) {
    case 'tap-on-site':
      return onSiteFault(site.card, replaces);
    case 'tap-set':
      return (
        againFault(site.card, replaces) ?? pieceFault(site.piece) ?? isolationFault(body, at) ?? boxFault(site, body)
      );
    case 'tap-checked':
      return checkFault(site, replaces, actor);
    case 'drop-supported':
      return dropFault(site, body.distance);
    case 'record-withdrawn':
      return null;
  }
}

function onSiteFault({ onSite }: TapCard, replaces: string | null): TapRefusal | null {
  if (onSite === null || onSite.recordId === replaces) return null;
  return { code: 'tap.already-on-site', args: { by: onSite.by.name, at: onSite.at } };
}

function againFault({ set }: TapCard, replaces: string | null): TapRefusal | null {
  if (set === null || set.recordId === replaces) return null;
  return { code: 'tap.already-set', args: { by: set.by.name, at: set.at } };
}

function pieceFault({ mark, state, quarantineReason }: Neighbour): TapFault {
  if (state === 'quarantined') return { code: 'piece.quarantined', args: { mark, reason: quarantineReason } };
  return isHung(state) ? null : { code: 'tap.piece-not-hung', args: { mark, state } };
}

function isolationFault({ isolation, device }: SetBody, at: Instant): TapRefusal | null {
  const unproved = [
    ...(isolation.runIsolated ? [] : ['run isolated' as const]),
    ...(isolation.absenceOfVoltageProved ? [] : ['absence of voltage proved' as const]),
  ];
  if (unproved.length > 0) return { code: 'tap.not-isolated', args: { missing: unproved } };
  if (isAfter(isolation.provedAt, at)) return { code: 'tap.proved-after', args: { provedAt: isolation.provedAt, at } };
  const unlocked = [...(device.off ? [] : ['off' as const]), ...(device.locked ? [] : ['locked' as const])];
  return unlocked.length > 0 ? { code: 'tap.device-not-locked', args: { missing: unlocked } } : null;
}

function boxFault({ phasesPlanned }: TapSite, { steps, phasesFound }: SetBody): TapRefusal | null {
  if (steps.length === 0) return { code: 'tap.no-steps', args: {} };
  if (phasesFound === phasesPlanned) return null;
  return { code: 'tap.phases-differ', args: { planned: phasesPlanned, found: phasesFound } };
}

function checkFault({ card, drop, rules }: TapSite, replaces: string | null, actor: Actor): TapRefusal | null {
  const { set, checked } = card;
  if (set === null) return { code: 'tap.not-set', args: {} };
  if (checked !== null && checked.recordId !== replaces) {
    return { code: 'tap.already-checked', args: { by: checked.by.name, at: checked.at } };
  }
  const own =
    rules.secondPerson === 'all' && card.records.some(({ body, by }) => body.kind === 'tap-set' && by.id === actor.id);
  if (own) return { code: 'tap.own-work', args: { name: actor.name } };
  if (drop === null || card.dropSupported !== null) return null;
  return {
    code: 'tap.drop-unsupported',
    args: { limit: dropSupportLimit(rules.codeBasis, rules.units)?.limit ?? null },
  };
}

function dropFault({ drop, rules }: TapSite, distance: Length): TapRefusal | null {
  if (drop === null) return { code: 'tap.no-drop', args: {} };
  const code = dropSupportLimit(rules.codeBasis, rules.units);
  return code !== null && distance > code.limit ? { code: 'tap.drop-too-far', args: { distance, ...code } } : null;
}

function dropRemarks({ codeBasis, units }: QualityRules): Remark[] {
  return dropSupportLimit(codeBasis, units) === null ? [{ code: 'drop.limit-not-judged', args: {} }] : [];
}
