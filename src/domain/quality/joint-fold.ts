import { calibrationRemark } from './calibration.ts';
import type { JointRecord, Reopening, StepBody, StepDone, Uncredited } from './joint-card.ts';
import type { JointSheet } from './joint-sheet.ts';
import { stepFault } from './joint-step-fault.ts';
import { type Person, type SiteRecord, type Stamp, stampOf } from './record.ts';
import type { Remark } from './remark.ts';
import { standingRecords } from './standing-records.ts';
import { judgeTorque } from './torque.ts';

/** What the records of one joint come to, in order. */
export interface JointProgress {
  readonly installers: readonly Person[];
  readonly done: readonly (StepDone | null)[];
  readonly accepted: Stamp | null;
  readonly reopenings: readonly Reopening[];
  readonly uncredited: readonly Uncredited[];
}

/** Folds the standing records of one joint: steps credited in order, reopenings that undo them, acceptance at the end. */
export function foldJoint(sheet: JointSheet, records: readonly SiteRecord[], timeZone: string | null): JointProgress {
  const installers = installersOf(sheet, records);
  const fold = { sheet, timeZone, installers };
  return standingRecords(records)
    .filter(isJointRecord)
    .reduce((before, record) => apply(before, record, fold), start(sheet, installers));
}

function isJointRecord(record: SiteRecord): record is JointRecord {
  return record.subject === 'joint' && record.body.kind.startsWith('joint-');
}

function start(sheet: JointSheet, installers: readonly Person[]): JointProgress {
  return { installers, done: (sheet.steps ?? []).map(() => null), accepted: null, reopenings: [], uncredited: [] };
}

interface Fold {
  readonly sheet: JointSheet;
  readonly timeZone: string | null;
  readonly installers: readonly Person[];
}

function apply(before: JointProgress, record: JointRecord, fold: Fold): JointProgress {
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
function acceptable(before: JointProgress, by: Person, { installers }: Fold): boolean {
  const complete = before.done.length > 0 && before.done.every((done) => done !== null);
  return complete && !installers.some((person) => person.id === by.id);
}

/** Opening the lower clamp frees the contact set, so a joint always goes back at least to its first hold point. */
function reopenedFrom(sheet: JointSheet, asked: number | null): number {
  const hold = sheet.steps?.find((step) => step.kind === 'hold')?.index ?? Number.POSITIVE_INFINITY;
  return Math.min(asked ?? 0, hold);
}

function applyStep(before: JointProgress, record: SiteRecord<StepBody>, { sheet, timeZone }: Fold): JointProgress {
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
  before: JointProgress,
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

function installersOf(sheet: JointSheet, records: readonly SiteRecord[]): readonly Person[] {
  const people = new Map<string, Person>();
  for (const { body, by } of records) {
    const installs = body.kind === 'joint-step' && sheet.steps?.[body.step]?.kind !== 'check';
    if (installs && !people.has(by.id)) people.set(by.id, by);
  }
  return [...people.values()];
}
