import type { Role } from '../access.ts';
import type { PlacedPiece } from '../layout/result.ts';
import type { Side } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { Instant } from './instant.ts';
import type { Question } from './insulation/questions.ts';
import type { PieceKind } from './piece-side.ts';
import type { RunEnd } from './record.ts';
import type { PieceState } from './states.ts';
import type { BrokenRule } from './support-rules.ts';

/**
 * Why a record of the floor is not taken, with the numbers that its words need (`views/words/quality.ts`).
 * A person can put each of these right. Steps count from 1, as on the card.
 */
export type QualityRefusal =
  | RecordRefusal
  | PieceRefusal
  | JointRefusal
  | SupportRefusal
  | TapRefusal
  | EndRefusal
  | InsulationRefusal;

interface Coded<Code extends string, Args = Record<never, never>> {
  readonly code: Code;
  readonly args: Readonly<Args>;
}

export type RecordRefusal =
  | Coded<'record.in-future', { at: Instant; now: Instant }>
  | Coded<'record.before-previous', { at: Instant; previousAt: Instant }>
  | Coded<'record.stale', { seen: number; current: number }>
  | Coded<'record.other-subject', { kind: string; subject: string }>
  | Coded<'record.nothing-superseded', { id: string }>
  | Coded<'record.supersedes-another-kind', { kind: string; replaced: string }>
  | Coded<'record.already-superseded', { id: string }>
  | Coded<'record.withdrawal-names-none'>
  | Coded<'record.cannot-withdraw', { kind: string }>
  | Coded<'record.failed-test-withdrawn', { verdict: string }>;

export type PieceRefusal =
  | Coded<'piece.quarantined', { mark: string; reason: string | null }>
  | Coded<'piece.not-quarantined', { mark: string }>
  | Coded<'piece.already-quarantined', { mark: string; reason: string }>
  | Coded<'piece.already-on-site', { mark: string; by: string; at: Instant }>
  | Coded<'piece.already-hung', { mark: string; by: string; at: Instant }>
  | Coded<'piece.side-turn', { mark: string; needed: Side; seen: Side; kind: PieceKind }>
  | Coded<
      'piece.side-reorder',
      {
        mark: string;
        needed: Side;
        seen: Side;
        kind: PieceKind;
        neededHand: PlacedPiece['hand'];
        seenHand: PlacedPiece['hand'];
      }
    >
  | Coded<'piece.confirmed-alone', { name: string }>
  | Coded<'piece.joints-begun', { mark: string; joints: readonly string[] }>
  | Coded<'piece.release-role', { as: 'office' | 'inspector'; role: Role }>
  | Coded<'piece.release-signed', { as: 'office' | 'inspector'; by: string; at: Instant }>
  | Coded<'piece.release-same-person', { name: string }>;

export type JointRefusal =
  | Coded<'joint.no-step-list'>
  | Coded<'joint.unknown-step', { step: number; steps: number }>
  | Coded<'joint.sheet-changed', { step: number; shown: string; now: string }>
  | Coded<'joint.step-done', { step: number; text: string; by: string; at: Instant }>
  | Coded<'joint.out-of-order', { step: number; text: string; next: number; nextText: string }>
  | Coded<'joint.hold-first', { step: number; text: string; hold: number; holdText: string }>
  | Coded<'joint.neighbour-not-hung', { mark: string; state: PieceState }>
  | Coded<'joint.no-neighbour'>
  | Coded<'joint.poles-missing', { step: number; missing: readonly string[]; of: number }>
  | Coded<'joint.pole-unknown', { pole: string }>
  | Coded<'joint.torque-missing', { step: number; text: string }>
  | Coded<
      'joint.torque-out',
      { step: number; appliedNm: number; statedNm: number; leastNm: number; greatestNm: number }
    >
  | Coded<'joint.check-own-work', { name: string; step: number; text: string }>
  | Coded<'joint.accepted-already', { by: string; at: Instant }>
  | Coded<'joint.not-closed', { next: number; nextText: string; open: number }>
  | Coded<'joint.own-work', { name: string }>
  | Coded<'joint.torque-unknown', { step: number; appliedNm: number }>
  | Coded<
      'joint.torque-difference-unread',
      { statedNm: number; differences: readonly { step: number; appliedNm: number }[] }
    >
  | Coded<'joint.nothing-to-reopen'>;

export type SupportRefusal =
  | Coded<'support.not-ready', { missing: readonly ('rod plumb' | 'load nut' | 'lock nut')[] }>
  | Coded<
      'support.position',
      {
        measured: Length;
        broken: readonly BrokenRule[];
        nearest: Length | null;
        below: Length | null;
        above: Length | null;
      }
    >
  | Coded<'support.already-set', { by: string; at: Instant }>
  | Coded<'support.not-set'>
  | Coded<'support.accepted-already', { by: string; at: Instant }>
  | Coded<'support.own-work', { name: string }>;

export type TapRefusal =
  | Coded<'tap.not-isolated', { missing: readonly ('run isolated' | 'absence of voltage proved')[] }>
  | Coded<'tap.proved-after', { provedAt: Instant; at: Instant }>
  | Coded<'tap.device-not-locked', { missing: readonly ('off' | 'locked')[] }>
  | Coded<'tap.no-steps'>
  | Coded<'tap.phases-differ', { planned: string; found: string }>
  | Coded<'tap.piece-not-hung', { mark: string; state: PieceState }>
  | Coded<'tap.already-on-site', { by: string; at: Instant }>
  | Coded<'tap.already-set', { by: string; at: Instant }>
  | Coded<'tap.not-set'>
  | Coded<'tap.already-checked', { by: string; at: Instant }>
  | Coded<'tap.own-work', { name: string }>
  | Coded<'tap.removed'>
  | Coded<'tap.drop-unsupported', { limit: Length | null }>
  | Coded<'tap.drop-too-far', { distance: Length; limit: Length; source: string }>
  | Coded<'tap.no-drop'>;

export type EndRefusal =
  | Coded<'end.not-open', { end: RunEnd; ends: readonly RunEnd[] }>
  | Coded<'end.not-ready', { end: RunEnd; missing: readonly ('cap fitted' | 'screw set')[] }>
  | Coded<'end.already-closed', { end: RunEnd; by: string; at: Instant }>
  | Coded<'end.not-closed', { end: RunEnd }>
  | Coded<'end.piece-not-hung', { end: RunEnd; mark: string; state: PieceState }>
  | Coded<'slot.already-closed', { by: string; at: Instant }>
  | Coded<'slot.not-closed'>
  | Coded<'activity.over-counted', { activity: string; total: number; done: number; asked: number }>;

export type InsulationRefusal =
  | Coded<'insulation.rule-locked', { locked: string; asked: string }>
  | Coded<'insulation.rating-outside', { ratedV: number; greatestV: number; source: string }>
  | Coded<'insulation.test-voltage', { neededV: number; usedV: number; source: string }>
  | Coded<'insulation.temperature-outside', { tempC: number; fahrenheitAsC: number; leastC: number; greatestC: number }>
  | Coded<'insulation.limit-looser', { projectMegohm: number; ruleMegohm: number; source: string }>
  | Coded<'insulation.unknown-pair', { pair: string; pairs: readonly string[] }>
  | Coded<'insulation.pair-twice', { pair: string }>
  | Coded<'insulation.no-length'>
  | Coded<'insulation.humidity-outside', { percent: number }>
  | Coded<'insulation.question-open', { questions: readonly Question[] }>;
