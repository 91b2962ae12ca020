import { type Act, actsAt } from './cards/acts.ts';
import { type RuleStanding, ruleStanding, type TestStanding, testsOf } from './cards/run-checks.ts';
import type { Context, Viewer } from './context.ts';
import { type Reach, reach } from './reach.ts';
import { historyOf } from './records/history-of.ts';
import type { RecordView } from './records/record-view.ts';
import { markAt, type SubjectAt, subjectAt } from './records/subject-at.ts';
import { refuse } from './refused.ts';
import { type RunState, runStates } from './run-states.ts';

export type { Act, Bar } from './cards/acts.ts';
export type { RuleStanding, TestStanding } from './cards/run-checks.ts';

type At<Subject extends SubjectAt['subject']> = Extract<SubjectAt, { readonly subject: Subject }>;

/**
 * The card of one thing of the floor. `at.row` is its row (mark, place, state, version), `at.floor` its run as released with
 * everything on it, `at.site.card` the domain's card (what is done, by whom and when), and `at.site` what a decision is made
 * with: neighbours, surroundings, planned phases. A thing that has left the design is `retired`: its card is read and not written.
 */
export interface Card<Subject extends SubjectAt['subject']> {
  readonly reached: Reach;
  readonly at: At<Subject>;
  readonly mark: string;
  readonly retired: boolean;
  /** What this person may record here now, and what bars it. */
  readonly acts: readonly Act[];
  /** Every record, in the order of the book; superseded ones too. */
  readonly history: readonly RecordView[];
}

export type PieceCardView = Card<'piece'>;
export type JointCardView = Card<'joint'>;
export type SupportCardView = Card<'support'>;
export type TapCardView = Card<'tap'>;
export type RunCardView = Card<'run'>;

/** A section or fitting: side, lot, quarantine, its joints. */
export async function getPieceCard(context: Context, viewer: Viewer, projectId: string, id: string) {
  return cardOf(context, viewer, projectId, 'piece', id);
}

/** A joint: the steps of its type's sheet with who did each and when, the next one, the pieces that it joins. */
export async function getJointCard(context: Context, viewer: Viewer, projectId: string, id: string) {
  return cardOf(context, viewer, projectId, 'joint', id);
}

/** A hanger: planned place, measured place, what it is measured against. */
export async function getSupportCard(context: Context, viewer: Viewer, projectId: string, id: string) {
  return cardOf(context, viewer, projectId, 'support', id);
}

/** A tap-off: planned phases, the section under it, its drop. */
export async function getTapCard(context: Context, viewer: Viewer, projectId: string, id: string) {
  return cardOf(context, viewer, projectId, 'tap', id);
}

/** A run as a whole: ends, slot and reported work (`at.site.card`), its insulation tests, its status and what is missing. */
export interface RunChecks extends RunCardView {
  readonly state: RunState;
  /** Newest first. */
  readonly tests: readonly TestStanding[];
  readonly rule: RuleStanding;
}

export async function getRunChecks(
  context: Context,
  viewer: Viewer,
  projectId: string,
  runId: string,
): Promise<RunChecks> {
  const { db } = context.database;
  const card = await cardOf(context, viewer, projectId, 'run', runId);
  const [[state], tests, { rule, locked }] = await Promise.all([
    runStates(db, projectId, [runId]),
    testsOf(db, card.at),
    ruleStanding(db, projectId),
  ]);
  if (state === undefined) return refuse({ code: 'not-found', what: 'run on the floor' });
  return { ...card, state, tests, rule: { rule, locked } };
}

async function cardOf<Subject extends SubjectAt['subject']>(
  context: Context,
  viewer: Viewer,
  projectId: string,
  subject: Subject,
  subjectId: string,
): Promise<Card<Subject>> {
  const { db } = context.database;
  const reached = await reach(db, viewer, projectId);
  const now = context.clock().toISOString();
  const at = await subjectAt(db, projectId, { subject, subjectId }, now, { wanted: 'book' });
  const retired = at.subject !== 'run' && at.row.retiredAt !== null;
  if (!isOf(at, subject)) throw new Error(`asked for a ${subject}, read a ${at.subject}`);
  return {
    reached,
    at,
    mark: markAt(at),
    retired,
    acts: retired ? [] : actsAt(at, reached, viewer),
    history: await historyOf(db, at),
  };
}

function isOf<Subject extends SubjectAt['subject']>(at: SubjectAt, subject: Subject): at is At<Subject> {
  return at.subject === subject;
}
