import type { Actor, NewRecord, RecordBody, SiteRecord, Subject } from '../../domain/quality/record.ts';
import type { Reader } from '../../store/database.ts';
import { readFloorRun } from '../../store/floor-run.ts';
import { refuse } from '../refused.ts';
import { type JointAt, jointAt, ruleJoint } from './joint-at.ts';
import { type PieceAt, pieceAt, rulePiece } from './piece-at.ts';
import type { Ruling } from './ruling.ts';
import { type ReportedPieces, type RunAt, ruleRun, runAt } from './run-at.ts';
import { ruleSupport, type SupportAt, supportAt } from './support-at.ts';
import { ruleTap, type TapAt, tapAt } from './tap-at.ts';

/** The subject of a record with all that judging it takes. */
export type SubjectAt =
  | ({ readonly subject: 'piece' } & PieceAt)
  | ({ readonly subject: 'joint' } & JointAt)
  | ({ readonly subject: 'support' } & SupportAt)
  | ({ readonly subject: 'tap' } & TapAt)
  | ({ readonly subject: 'run' } & RunAt);

export interface SubjectKey {
  readonly subject: Subject;
  readonly subjectId: string;
}

/** What pages call it. */
const NOUNS: Readonly<Record<Subject, string>> = {
  piece: 'piece',
  joint: 'joint',
  support: 'hanger',
  tap: 'tap-off',
  run: 'run on the floor',
};

/** `floor`: what can be recorded on. `book`: also what has left the design, whose records stay to be read. */
export type Wanted = 'floor' | 'book';

/** Finds the subject through its job. Another job's, and one of a run that was never released, are not found. */
export async function subjectAt(
  reader: Reader,
  projectId: string,
  { subject, subjectId }: SubjectKey,
  now: string,
  { wanted = 'floor', pieces }: { readonly wanted?: Wanted; readonly pieces?: ReportedPieces | undefined } = {},
): Promise<SubjectAt> {
  const missing = () => refuse({ code: 'not-found', what: NOUNS[subject] });
  const where = { projectId, id: subjectId, ...(wanted === 'floor' ? { retiredAt: null } : {}) };
  const floorOf = async (runId: string) => (await readFloorRun(reader, projectId, runId)) ?? missing();
  switch (subject) {
    case 'piece': {
      const row = (await reader.piece.findFirst({ where })) ?? missing();
      return { subject, ...(await pieceAt(reader, await floorOf(row.runId), row, now)) };
    }
    case 'joint': {
      const row = (await reader.joint.findFirst({ where })) ?? missing();
      return { subject, ...(await jointAt(reader, await floorOf(row.runId), row, now)) };
    }
    case 'support': {
      const row = (await reader.support.findFirst({ where })) ?? missing();
      return { subject, ...(await supportAt(reader, await floorOf(row.runId), row, now)) };
    }
    case 'tap': {
      const row = (await reader.tap.findFirst({ where })) ?? missing();
      return { subject, ...(await tapAt(reader, await floorOf(row.runId), row, now)) };
    }
    case 'run':
      return { subject, ...(await runAt(reader, await floorOf(subjectId), now, pieces)) };
  }
}

/** Every record of the subject, in the order of the book. */
export function recordsAt(at: SubjectAt): readonly SiteRecord[] {
  return at.subject === 'run' ? at.records : at.site.card.records;
}

/** What pages call this one: "F1-R01-A-J03", "F1-R01-A T07". */
export function markAt(at: SubjectAt): string {
  switch (at.subject) {
    case 'run':
      return at.floor.key;
    case 'tap':
      return `${at.floor.key} ${at.row.key}`;
    default:
      return at.row.mark;
  }
}

export function idAt(at: SubjectAt): string {
  return at.subject === 'run' ? at.floor.id : at.row.id;
}

export function versionAt(at: SubjectAt): number {
  return at.site.version;
}

/** What whoever was refused is shown: how the subject stands, and who recorded here last. */
export function standsAt(at: SubjectAt) {
  const last = recordsAt(at).at(-1);
  return {
    subject: at.subject,
    id: idAt(at),
    mark: markAt(at),
    state: at.subject === 'run' ? null : at.row.state,
    version: versionAt(at),
    last: last === undefined ? null : { kind: last.body.kind, by: last.by.name, at: last.at },
  };
}

/** Asks the domain. A body that speaks of another subject was kept out by the schema and is refused here as well. */
export function rule(at: SubjectAt, record: NewRecord, actor: Actor): Ruling {
  switch (at.subject) {
    case 'piece':
      return ofKind(record, isOf('piece-')) ? rulePiece(at, record, actor) : otherSubject(record);
    case 'joint':
      return ofKind(record, isOf('joint-')) ? ruleJoint(at, record, actor) : otherSubject(record);
    case 'support':
      return ofKind(record, isOf('support-')) ? ruleSupport(at, record, actor) : otherSubject(record);
    case 'tap':
      return ofKind(record, isTapBody) ? ruleTap(at, record, actor) : otherSubject(record);
    case 'run':
      return ofKind(record, isRunBody) ? ruleRun(at, record, actor) : otherSubject(record);
  }
}

function otherSubject({ body, subject }: NewRecord): Ruling {
  return { ok: false, refusal: { code: 'record.other-subject', args: { kind: body.kind, subject } } };
}

type Prefixed<Prefix extends string> = Extract<
  RecordBody,
  { readonly kind: `${Prefix}${string}` | 'record-withdrawn' }
>;

function isOf<Prefix extends 'piece-' | 'joint-' | 'support-'>(prefix: Prefix) {
  return (body: RecordBody): body is Prefixed<Prefix> =>
    body.kind.startsWith(prefix) || body.kind === 'record-withdrawn';
}

type TapKind = Extract<RecordBody, { readonly kind: `tap-${string}` | 'drop-supported' | 'record-withdrawn' }>;
function isTapBody(body: RecordBody): body is TapKind {
  return body.kind.startsWith('tap-') || body.kind === 'drop-supported' || body.kind === 'record-withdrawn';
}

type RunKind = Extract<
  RecordBody,
  {
    readonly kind: `end-${string}` | `slot-${string}` | 'activity-done' | 'insulation-test' | 'record-withdrawn';
  }
>;
function isRunBody(body: RecordBody): body is RunKind {
  return !/^(piece|joint|support|tap|drop)-/.test(body.kind);
}

function ofKind<B extends RecordBody>(record: NewRecord, is: (body: RecordBody) => body is B): record is NewRecord<B> {
  return is(record.body);
}
