import type { Activity } from '../labour/result.ts';
import type { JointState, PieceState, SupportState, TapState } from '../quality/states.ts';

/** What the hours of an activity are earned by: the state of its things, or a record that says so. */
export type CreditUnit = 'piece' | 'joint' | 'support' | 'tap' | 'delivery' | 'tap-delivery' | 'record';

/** `done` and `open` of work that is told by a record: an end closed, a drop supported, a test current and passing. */
export type RecordState = 'open' | 'done';

/**
 * Rules of credit: the share of a unit's budget hours that each state has earned. A quarantined piece and a reopened joint
 * have earned nothing, whatever was done to them before. Invented for this job book; a company may hold others.
 */
export const RULES_OF_CREDIT = {
  piece: { planned: 0, 'on-site': 0, quarantined: 0, hung: 0.6, joined: 0.6, accepted: 1 },
  joint: { open: 0, reopened: 0, seated: 0.7, closed: 0.7, accepted: 1 },
  support: { planned: 0, set: 1, accepted: 1 },
  tap: { planned: 0, 'on-site': 0, set: 0.6, checked: 1, 'in-service': 1, removed: 0 },
  delivery: { planned: 0, 'on-site': 1, quarantined: 1, hung: 1, joined: 1, accepted: 1 },
  'tap-delivery': { planned: 0, 'on-site': 1, set: 1, checked: 1, 'in-service': 1, removed: 1 },
  record: { open: 0, done: 1 },
} as const satisfies {
  readonly piece: Readonly<Record<PieceState, number>>;
  readonly joint: Readonly<Record<JointState, number>>;
  readonly support: Readonly<Record<SupportState, number>>;
  readonly tap: Readonly<Record<TapState, number>>;
  readonly delivery: Readonly<Record<PieceState, number>>;
  readonly 'tap-delivery': Readonly<Record<TapState, number>>;
  readonly record: Readonly<Record<RecordState, number>>;
};

/** The unit that each activity of the labour book is earned by. */
export const CREDIT_UNIT: Readonly<Record<Activity, CreditUnit>> = {
  'handle-section': 'delivery',
  'handle-tap': 'tap-delivery',
  'lay-out': 'record',
  support: 'support',
  section: 'piece',
  joint: 'joint',
  elbow: 'piece',
  tee: 'piece',
  'end-feed': 'record',
  termination: 'record',
  'end-cap': 'record',
  'slot-closure': 'record',
  tap: 'tap',
  drop: 'record',
  label: 'record',
  'fire-seal': 'record',
  'test-insulation': 'record',
  'test-ground': 'record',
  'test-joint': 'record',
  'torque-log': 'record',
  'test-tap': 'record',
  'thermal-scan': 'record',
  'test-papers': 'record',
  punch: 'record',
};

/** Share of its hours that one thing of the activity has earned in a state. Throws on a state that the unit does not know. */
export function creditOf(activity: Activity, state: string): number {
  const rules: Readonly<Record<string, number>> = RULES_OF_CREDIT[CREDIT_UNIT[activity]];
  const share = rules[state];
  if (share === undefined) throw new Error(`no rule of credit for ${activity} in state ${state}`);
  return share;
}
