import { calibrationRemark } from './calibration.ts';
import type { JointSheet, JointStep } from './joint-sheet.ts';
import { stepFault } from './joint-step-fault.ts';
import { type JointBody, type Person, type SiteRecord, type Stamp, stampOf } from './record.ts';
import type { Remark } from './remark.ts';
import { standingRecords } from './standing-records.ts';
import type { JointState } from './states.ts';
import { judgeTorque, type TorqueJudged } from './torque.ts';

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
  const installers = installersOf(sheet, records);
  const fold = { sheet, timeZone, installers };
  const progress = standingRecords(records)
    .filter(isJointRecord)
    .reduce((before, record) => apply(before, record, fold), start(sheet));
  const steps = (sheet.steps ?? []).map((step, index) => ({ ...step, done: progress.done[index] ?? null }));
  return {
    sheet,
    records,
    timeZone,
    state: stateOf(steps, progress),
    steps,
    next: steps.find((step) => step.done === null) ?? null,
    installers,
    accepted: progress.accepted,
    reopenings: progress.reopenings,
    uncredited: progress.uncredited,
    remarks: [...sheet.remarks, ...steps.flatMap(torqueRemarks)],
  };
}

function isJointRecord(record: SiteRecord): record is JointRecord {
  return record.subject === 'joint' && record.body.kind.startsWith('joint-');
}

interface Progress {
  readonly done: readonly (StepDone | null)[];
  readonly accepted: Stamp | null;
  readonly reopenings: readonly Reopening[];
  readonly uncredited: readonly Uncredited[];
}

function start(sheet: JointSheet): Progress {
  return { done: (sheet.steps ?? []).map(() => null), accepted: null, reopenings: [], uncredited: [] };
}

interface Fold {
  readonly sheet: JointSheet;
  readonly timeZone: string | null;
  readonly installers: readonly Person[];
}

function apply(before: Progress, record: JointRecord, fold: Fold): Progress {
  const { body } = record;
  switch (body.kind) {
    case 'joint-step':
      return applyStep(before, { ...record, body }, fold);
    case 'joint-accepted':
      return acceptable(before, record.by, fold) ? { ...before, accepted: stampOf(record) } : before;
    case 'joint-reopened': {
      const fromStep = reopenedFrom(fold.sheet, body.fromStep);
      return {
        ...before,
        done: before.done.map((done, index) => (index < fromStep ? done : null)),
        accepted: null,
        reopenings: [...before.reopenings, { ...stampOf(record), reason: body.reason, fromStep }],
      };
    }
  }
}

/** A later correction can take the ground from an acceptance: a step undone, or the acceptor's hand among the steps. */
function acceptable(before: Progress, by: Person, { installers }: Fold): boolean {
  const complete = before.done.length > 0 && before.done.every((done) => done !== null);
  return complete && !installers.some((person) => person.id === by.id);
}

/** Opening the lower clamp frees the contact set, so a joint always goes back at least to its first hold point. */
function reopenedFrom(sheet: JointSheet, asked: number | null): number {
  const hold = sheet.steps?.find((step) => step.kind === 'hold')?.index ?? Number.POSITIVE_INFINITY;
  return Math.min(asked ?? 0, hold);
}

function applyStep(before: Progress, record: SiteRecord<StepBody>, { sheet, timeZone }: Fold): Progress {
  const remarks = uncreditedBecause(before, record, sheet, timeZone);
  if (remarks !== null) {
    const kept = { stamp: stampOf(record), step: record.body.step, remarks };
    return { ...before, uncredited: [...before.uncredited, kept] };
  }
  const step = sheet.steps?.[record.body.step];
  const { torque } = record.body;
  const judged = torque && step ? judgeTorque(torque, step.text, sheet.torqueNm) : null;
  const done: StepDone = { ...stampOf(record), body: record.body, torque: judged };
  return { ...before, done: before.done.map((old, index) => (index === record.body.step ? done : old)) };
}

/** null: the step counts. An empty list: it does not, because a correction before it took its ground away. */
function uncreditedBecause(
  before: Progress,
  { body, by, at }: SiteRecord<StepBody>,
  sheet: JointSheet,
  timeZone: string | null,
): readonly Remark[] | null {
  const lapsed =
    body.torque && calibrationRemark({ id: body.torque.toolId, due: body.torque.calibrationDue }, at, timeZone);
  const asksTorque = sheet.steps?.[body.step]?.kind === 'torque';
  const fault = stepFault(sheet, before.done, body, by);
  if (fault?.code === 'joint.sheet-changed') {
    return [{ code: 'step.sheet-changed', args: { step: body.step + 1, shown: body.text } }];
  }
  if (fault !== null) return [];
  return lapsed && asksTorque ? [lapsed] : null;
}

function stateOf(steps: readonly CardStep[], progress: Progress): JointState {
  if (progress.accepted !== null) return 'accepted';
  if (steps.length > 0 && steps.every((step) => step.done !== null || step.kind === 'check')) return 'closed';
  const holds = steps.filter((step) => step.kind === 'hold');
  if (holds.length > 0 && holds.every((step) => step.done !== null)) return 'seated';
  return progress.reopenings.length > 0 ? 'reopened' : 'open';
}

function installersOf(sheet: JointSheet, records: readonly SiteRecord[]): readonly Person[] {
  const people = new Map<string, Person>();
  for (const { body, by } of records) {
    const installs = body.kind === 'joint-step' && sheet.steps?.[body.step]?.kind !== 'check';
    if (installs && !people.has(by.id)) people.set(by.id, by);
  }
  return [...people.values()];
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
