import type { Capability } from '../../domain/access.ts';
import type { JointStep } from '../../domain/quality/joint-sheet.ts';
import type { RecordBody, RecordKind } from '../../domain/quality/record.ts';

/** Any one of these is enough for a record. */
export type Needed = readonly Capability[];

const WORK: Needed = ['install'];
const ACCEPTANCE: Needed = ['inspect'];
/** Whoever finds a thing open, wet or wrong says so. */
const FINDING: Needed = ['install', 'inspect'];

const NEEDED: Readonly<Record<Exclude<RecordKind, 'record-withdrawn' | 'piece-released'>, Needed>> = {
  'piece-on-site': WORK,
  'piece-hung': WORK,
  'piece-quarantined': FINDING,
  'joint-step': WORK,
  'joint-accepted': ACCEPTANCE,
  'joint-reopened': FINDING,
  'support-set': WORK,
  'support-accepted': ACCEPTANCE,
  'tap-on-site': WORK,
  'tap-set': WORK,
  'tap-checked': ACCEPTANCE,
  'drop-supported': WORK,
  'end-closed': WORK,
  'end-opened': FINDING,
  'slot-closed': WORK,
  'slot-opened': FINDING,
  'activity-done': WORK,
  'insulation-test': ACCEPTANCE,
};

/** What may make this record. A withdrawal needs what the withdrawn record needed. */
export function neededFor(body: RecordBody, replaced: RecordBody | null, steps: readonly JointStep[] | null): Needed {
  switch (body.kind) {
    case 'record-withdrawn':
      return replaced === null || replaced.kind === 'record-withdrawn' ? FINDING : neededFor(replaced, null, steps);
    case 'piece-released':
      return body.as === 'office' ? ['design'] : ACCEPTANCE;
    case 'joint-step':
      // The check is another person's look at the work, who may be of the crew or the inspector.
      return steps?.[body.step]?.kind === 'check' ? FINDING : WORK;
    default:
      return NEEDED[body.kind];
  }
}
