import type { Role } from '../access.ts';
import type { Instant } from './instant.ts';
import type { Verdict } from './insulation/verdict.ts';
import type { RecordBody, RecordKind } from './record-bodies.ts';

export type {
  Instrument,
  InsulationTestBody,
  JointBody,
  PieceBody,
  PoleSeen,
  RecordBody,
  RecordKind,
  ReportedActivity,
  RunBody,
  RunEnd,
  SupportBody,
  TapBody,
  TorqueReading,
  TorqueUnit,
  WithdrawnBody,
} from './record-bodies.ts';
export { REPORTED_ACTIVITIES } from './record-bodies.ts';

/** What a record speaks of. */
export type Subject = 'piece' | 'joint' | 'support' | 'tap' | 'run';

export interface Person {
  readonly id: string;
  readonly name: string;
}

/** The person recording, with the role held in this job. */
export interface Actor extends Person {
  readonly role: Role;
}

/** Who did a thing and when, with the record that says so. */
export interface Stamp {
  readonly by: Person;
  readonly at: Instant;
  readonly recordId: string;
}

/** A record as it stands in the book. `recordedAt` is when it reached the book, `at` when the work was done. */
export interface SiteRecord<B extends RecordBody = RecordBody> {
  readonly id: string;
  readonly subject: Subject;
  readonly subjectId: string;
  readonly at: Instant;
  readonly recordedAt: Instant;
  readonly by: Person;
  readonly supersedes: { readonly id: string; readonly cause: string } | null;
  /** How it was judged when it was made; null for records that nothing judges. */
  readonly outcome: Outcome | null;
  readonly body: B;
}

export type Outcome = Verdict | 'credited';

/** A record that a person asks to make: not in the book yet. */
export interface NewRecord<B extends RecordBody = RecordBody> {
  readonly id: string;
  readonly subject: Subject;
  readonly subjectId: string;
  readonly at: Instant;
  readonly supersedes: SiteRecord['supersedes'];
  /** Version of the subject that the person had on the screen; null when the device could not know. */
  readonly seenVersion: number | null;
  readonly body: B;
}

const SUBJECTS: Readonly<Record<Exclude<RecordKind, 'record-withdrawn'>, Subject>> = {
  'piece-on-site': 'piece',
  'piece-hung': 'piece',
  'piece-quarantined': 'piece',
  'piece-released': 'piece',
  'joint-step': 'joint',
  'joint-accepted': 'joint',
  'joint-reopened': 'joint',
  'support-set': 'support',
  'support-accepted': 'support',
  'tap-on-site': 'tap',
  'tap-set': 'tap',
  'tap-checked': 'tap',
  'drop-supported': 'tap',
  'end-closed': 'run',
  'end-opened': 'run',
  'slot-closed': 'run',
  'slot-opened': 'run',
  'activity-done': 'run',
  'insulation-test': 'run',
};

/** The subject that a kind of record speaks of; null for a withdrawal, which fits any. */
export function subjectOf(kind: RecordKind): Subject | null {
  return kind === 'record-withdrawn' ? null : SUBJECTS[kind];
}

export function stampOf(record: SiteRecord): Stamp {
  return { by: record.by, at: record.at, recordId: record.id };
}

/** The new record as it would stand in the book, made by this person and received now. */
export function entered<B extends RecordBody>(record: NewRecord<B>, by: Person, now: Instant): SiteRecord<B> {
  return {
    id: record.id,
    subject: record.subject,
    subjectId: record.subjectId,
    at: record.at,
    recordedAt: now,
    by: { id: by.id, name: by.name },
    supersedes: record.supersedes,
    outcome: null,
    body: record.body,
  };
}
