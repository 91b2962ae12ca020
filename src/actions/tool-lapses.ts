import type { ProjectDocument } from '../document/job-document.ts';
import type { ToolLapse, ToolLapseView, ToolUse, Touched } from '../document/tool-lapse.ts';
import { entriesWithToolSince, toolOf } from '../domain/quality/calibration.ts';
import { isAfter, latest } from '../domain/quality/instant.ts';
import type { SiteRecord, Subject } from '../domain/quality/record.ts';
import { standingRecords } from '../domain/quality/standing-records.ts';
import type { Reader } from '../store/database.ts';
import { marksOf, type RecordRow, siteRecord } from '../store/records.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { once, type Submission } from './once.ts';
import { reach } from './reach.ts';
import { recordsAt, type SubjectAt, subjectAt } from './records/subject-at.ts';
import { enterRecord, type RecordEnvelope } from './records.ts';

/** The torque tools and instruments that the records name, by their ids. */
export async function listTools(context: Context, viewer: Viewer, projectId: string): Promise<ToolUse[]> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  const uses = new Map<string, ToolUse>();
  for (const { at, body } of await toolRecords(db, projectId, {})) {
    const tool = toolOf(body);
    if (tool === null) continue;
    const due = body.kind === 'joint-step' ? (body.torque?.calibrationDue ?? null) : dueOf(body);
    const known = uses.get(tool) ?? { tool, entries: 0, first: at, last: at, calibrationDue: [] };
    uses.set(tool, {
      tool,
      entries: known.entries + 1,
      first: isAfter(known.first, at) ? at : known.first,
      last: latest(known.last, at) ?? at,
      calibrationDue: known.calibrationDue.includes(due) ? known.calibrationDue : [...known.calibrationDue, due],
    });
  }
  return [...uses.values()].sort((a, b) => (a.tool < b.tool ? -1 : 1));
}

function dueOf(body: SiteRecord['body']): string | null {
  return body.kind === 'insulation-test' ? body.instrument.calibrationDue : null;
}

/** What a lapse would reopen; nothing is written. */
export async function previewLapse(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: Pick<ToolLapse, 'tool' | 'lastGood'>,
): Promise<ToolLapseView> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  return viewOf(asked, await touchedBy(context, db, projectId, asked));
}

/**
 * A tool turned out to have been out of calibration since a day: every joint that rests on a torque made with it since reopens
 * at that step, every insulation test made with it is taken back. The records stay in the book. All of it or nothing.
 */
export async function recordLapse(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: ToolLapse,
  submission: Submission | null,
): Promise<ToolLapseView> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      const reached = await reach(tx, viewer, projectId, 'inspect');
      const touched = await touchedBy(context, tx, projectId, asked);
      for (const body of reopenings(context, asked, touched))
        await enterRecord(tx, context, viewer, reached, projectId, body);
      const view = viewOf(asked, touched);
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'tool found out of calibration',
        subject: 'project',
        subjectId: projectId,
        after: { ...asked, entries: view.entries.length, joints: view.joints, tests: view.tests },
      });
      return view;
    }),
  );
}

/** An entry with the step that it stands for; null for a test. */
interface Found {
  readonly entry: Touched;
  readonly step: number | null;
}

async function touchedBy(
  context: Context,
  reader: Reader,
  projectId: string,
  { tool, lastGood }: Pick<ToolLapse, 'tool' | 'lastGood'>,
): Promise<Found[]> {
  const { spec } = await reader.project.findUniqueOrThrow({ where: { id: projectId }, select: { spec: true } });
  const zone = (spec as unknown as ProjectDocument).timeZone ?? null;
  // A day of the site begins at most 14 hours before that of UTC; the domain draws the line itself.
  const from = new Date(`${lastGood}T00:00:00Z`);
  const rows = await toolRecords(reader, projectId, { at: { gte: new Date(from.getTime() - 14 * 3_600_000) } });
  const entries = entriesWithToolSince(rows, tool, lastGood, zone);
  const marks = await marksOf(reader, rows);
  const subjects = new Map<string, SubjectAt | null>();
  const found: Found[] = [];
  for (const entry of entries) {
    if (!subjects.has(entry.subjectId))
      subjects.set(entry.subjectId, await standing(context, reader, projectId, entry));
    found.push(judged(entry, subjects.get(entry.subjectId) ?? null, marks.get(entry.subjectId)?.mark ?? ''));
  }
  return found;
}

async function standing(context: Context, reader: Reader, projectId: string, entry: SiteRecord) {
  const isThere =
    entry.subject !== 'joint' ||
    (await reader.joint.count({ where: { id: entry.subjectId, projectId, retiredAt: null } })) > 0;
  return isThere ? subjectAt(reader, projectId, entry, context.clock().toISOString()) : null;
}

function judged(entry: SiteRecord, at: SubjectAt | null, mark: string): Found {
  const step =
    at?.subject === 'joint' ? (at.site.card.steps.find((one) => one.done?.recordId === entry.id) ?? null) : null;
  const stands =
    at?.subject === 'run' ? standingRecords(recordsAt(at)).some((record) => record.id === entry.id) : step !== null;
  return {
    entry: {
      recordId: entry.id,
      subject: entry.subject as Extract<Subject, 'joint' | 'run'>,
      subjectId: entry.subjectId,
      mark,
      kind: entry.body.kind,
      at: entry.at,
      by: entry.by.name,
      becomes: at === null ? 'left-the-design' : stands ? 'reopens' : 'open-already',
    },
    step: step?.index ?? null,
  };
}

/** One reopening for each joint, at its first such step, and one withdrawal for each test. */
function reopenings(context: Context, { tool, lastGood, cause }: ToolLapse, found: readonly Found[]): RecordEnvelope[] {
  const said = `${tool} was last known good on ${lastGood}. ${cause}`;
  const firstSteps = new Map<string, number>();
  for (const { entry, step } of found)
    if (entry.becomes === 'reopens' && step !== null)
      firstSteps.set(entry.subjectId, Math.min(step, firstSteps.get(entry.subjectId) ?? step));
  const joints = [...firstSteps].map(
    ([subjectId, fromStep]): RecordEnvelope => ({
      ...envelope(context),
      subject: 'joint',
      subjectId,
      body: { kind: 'joint-reopened', reason: said, fromStep },
    }),
  );
  const tests = found
    .filter(({ entry }) => entry.subject === 'run' && entry.becomes === 'reopens')
    .map(
      ({ entry }): RecordEnvelope => ({
        ...envelope(context),
        subject: 'run',
        subjectId: entry.subjectId,
        body: { kind: 'record-withdrawn' },
        supersedes: { id: entry.recordId, cause: said },
      }),
    );
  return [...joints, ...tests];
}

function envelope(context: Context) {
  return { submissionId: context.newId(), at: null, seenVersion: null, supersedes: null };
}

function viewOf({ tool, lastGood }: Pick<ToolLapse, 'tool' | 'lastGood'>, found: readonly Found[]): ToolLapseView {
  const reopening = found.map(({ entry }) => entry).filter((entry) => entry.becomes === 'reopens');
  return {
    tool,
    lastGood,
    entries: found.map(({ entry }) => entry),
    joints: new Set(reopening.filter((entry) => entry.subject === 'joint').map((entry) => entry.subjectId)).size,
    tests: reopening.filter((entry) => entry.subject === 'run').length,
  };
}

/** Records that name a tool, in the order of the book. */
async function toolRecords(
  reader: Reader,
  projectId: string,
  where: { readonly at?: { readonly gte: Date } },
): Promise<(SiteRecord & { readonly runId: string })[]> {
  const rows: (RecordRow & { readonly runId: string })[] = await reader.inspection.findMany({
    where: { projectId, kind: { in: ['joint-step', 'insulation-test'] }, ...where },
    orderBy: { seq: 'asc' },
  });
  return rows.map((row) => ({ ...siteRecord(row), runId: row.runId })).filter(({ body }) => toolOf(body) !== null);
}
