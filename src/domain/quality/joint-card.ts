import { foldJoint, type JointProgress } from './joint-fold.ts';
import type { JointSheet, JointStep } from './joint-sheet.ts';
import type { JointBody, Person, SiteRecord, Stamp } from './record.ts';
import type { Remark } from './remark.ts';
import type { JointState } from './states.ts';
import type { TorqueJudged } from './torque.ts';

export type JointRecord = SiteRecord<JointBody>;
export type StepBody = Extract<JointBody, { readonly kind: 'joint-step' }>;

export interface StepDone extends Stamp {
  readonly body: StepBody;
  readonly torque: TorqueJudged | null;
}

export interface CardStep extends JointStep {
  readonly done: StepDone | null;
}

/** A record that stands in the book and credits nothing, with the reason. */
export interface Uncredited {
  readonly stamp: Stamp;
  readonly step: number;
  readonly remarks: readonly Remark[];
}

export interface Reopening extends Stamp {
  readonly reason: string;
  readonly fromStep: number;
}

/** One joint as its records tell it. Everything on it is computed; only the records are kept. */
export interface JointCard {
  readonly sheet: JointSheet;
  readonly records: readonly SiteRecord[];
  readonly timeZone: string | null;
  readonly state: JointState;
  readonly steps: readonly CardStep[];
  readonly next: CardStep | null;
  /** Who ever recorded a step but a check, corrected and undone ones included: none of them may accept the joint. */
  readonly installers: readonly Person[];
  readonly accepted: Stamp | null;
  readonly reopenings: readonly Reopening[];
  readonly uncredited: readonly Uncredited[];
  readonly remarks: readonly Remark[];
}

/**
 * The card of one joint: its type's steps in order, each with who did it and when, the next one, and the state that follows:
 * `open`, `seated` once every hold point was seen, `closed` once every step but a check is done, `accepted`, or `reopened`
 * from a reopening until the seating is seen again.
 */
export function jointCard(sheet: JointSheet, records: readonly SiteRecord[], timeZone: string | null): JointCard {
  const progress = foldJoint(sheet, records, timeZone);
  const steps = (sheet.steps ?? []).map((step, index) => ({ ...step, done: progress.done[index] ?? null }));
  return {
    sheet,
    records,
    timeZone,
    state: stateOf(steps, progress),
    steps,
    next: steps.find((step) => step.done === null) ?? null,
    installers: progress.installers,
    accepted: progress.accepted,
    reopenings: progress.reopenings,
    uncredited: progress.uncredited,
    remarks: [...sheet.remarks, ...steps.flatMap(torqueRemarks)],
  };
}

function stateOf(steps: readonly CardStep[], progress: JointProgress): JointState {
  if (progress.accepted !== null) return 'accepted';
  if (steps.length > 0 && steps.every((step) => step.done !== null || step.kind === 'check')) return 'closed';
  const holds = steps.filter((step) => step.kind === 'hold');
  if (holds.length > 0 && holds.every((step) => step.done !== null)) return 'seated';
  return progress.reopenings.length > 0 ? 'reopened' : 'open';
}

function torqueRemarks({ index, done }: CardStep): Remark[] {
  const judged = done?.torque ?? null;
  if (judged?.verdict !== 'unjudged') return [];
  const { appliedNm, statedNm, differencePercent } = judged;
  if (statedNm === null || differencePercent === null) {
    return [{ code: 'torque.no-stated-value', args: { step: index + 1, appliedNm } }];
  }
  return [{ code: 'torque.differs', args: { step: index + 1, appliedNm, statedNm, differencePercent } }];
}
