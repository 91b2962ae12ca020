import { audit } from '../../../src/actions/audit.ts';
import type { Context, Viewer } from '../../../src/actions/context.ts';
import { importDocument } from '../../../src/actions/job-documents.ts';
import { release } from '../../../src/actions/releases.ts';
import { demoJob } from '../../../src/document/demo/demo-job.ts';
import type { BuswayTypeDocument, JobDocument } from '../../../src/document/job-document.ts';
import type { RecordDocument } from '../../../src/document/record-schema.ts';
import type { TapDocument } from '../../../src/document/schema/tap.ts';
import { pairsOf } from '../../../src/domain/quality/insulation/pairs.ts';
import type { Database, Tx } from '../../../src/store/database.ts';
import { insertMany } from '../../../src/store/insert-many.ts';

// A job that is built to the last record, written straight into the book: what a closeout prints of it is what these rows
// say. Whether a record may be made at all is tested where records are taken.

/** Numbers instead of chance and a clock that goes a minute a reading: the same job on every database, to the byte. */
export function steadyContext(database: Database): Context {
  let id = 0;
  let minutes = 0;
  return {
    database,
    newId: () => `id-${String(++id).padStart(6, '0')}`,
    clock: () => new Date(Date.UTC(2026, 4, 12, 13, ++minutes)),
  };
}

export const OLIVE: Viewer = {
  userId: 'id-olive',
  name: 'Olive Fenn',
  email: 'olive@plover-quay.example',
  administrator: true,
};

export interface Hands {
  readonly fitter: string;
  readonly checker: string;
}
const USUAL: Hands = { fitter: 'Ines Holt', checker: 'Quinn Vale' };

/** Four runs of the demo job: a plain one, one with a tee, its branch, and one round a corner through a fire wall. */
export function smallJob(): JobDocument {
  const job = demoJob();
  const wanted = new Set(['F1-R05-A', 'F1-R06-A', 'F1-R06-A-BR', 'F3-R06-A']);
  const runs = job.runs.filter((run) => wanted.has(run.id)).map(({ pairedRun: _paired, ...run }) => run);
  const levels = job.levels.filter((level) => runs.some((run) => run.level === level.id));
  const extras = (job.extras ?? []).filter((extra) => levels.some((level) => level.id === extra.level));
  return { ...job, levels, runs, extras };
}

/** The job on this database, every run that is ready released; nothing of it is built yet. */
export async function releasedJob(context: Context, document: JobDocument = smallJob()): Promise<string> {
  const { userId, name, email, administrator } = OLIVE;
  const account = { id: userId, name, email, administrator, passwordHash: '', createdAt: new Date(0) };
  await context.database.db.user.upsert({ where: { id: userId }, create: account, update: {} });
  const { id } = await importDocument(context, OLIVE, document, null);
  await release(context, OLIVE, id, { reason: '' }, null);
  return id;
}

/** The same with every record that a closeout asks for. */
export async function builtJob(context: Context, document?: JobDocument, hands: Hands = USUAL): Promise<string> {
  const projectId = await releasedJob(context, document);
  const { db, write } = context.database;
  let seq = 0;
  const ids = await db.run.findMany({
    where: { projectId, revision: { gt: 0 } },
    orderBy: { ordinal: 'asc' },
    select: { id: true },
  });
  for (let first = 0; first < ids.length; first += 100) {
    const some = ids.slice(first, first + 100).map((run) => run.id);
    seq = await write(async (tx) => {
      const records = (await releasedRuns(tx, some)).flatMap((run) => recordsOf(run, hands));
      const rows = records.map((record, index) => rowOf(context, projectId, record, seq + index));
      await insertMany(tx, 'Inspection', rows);
      return seq + rows.length;
    });
  }
  await write(async (tx) => {
    await setStates(tx, projectId);
    const deed = { chain: projectId, action: 'records taken', subject: 'project', subjectId: projectId };
    await audit(tx, context, OLIVE, { ...deed, after: { records: seq } });
  });
  return projectId;
}

function releasedRuns(tx: Tx, ids: readonly string[]) {
  const ordered = { orderBy: { ordinal: 'asc' as const } };
  return tx.run.findMany({
    where: { id: { in: [...ids] } },
    ...ordered,
    include: { type: true, pieces: ordered, joints: ordered, supports: ordered, taps: ordered },
  });
}
type ReleasedRun = Awaited<ReturnType<typeof releasedRuns>>[number];

interface Made {
  readonly run: ReleasedRun;
  readonly subject: string;
  readonly subjectId: string;
  readonly body: RecordDocument;
  /** Hours after the first of June, 06:00 UTC. */
  readonly hour: number;
  readonly by: string;
  readonly outcome: string | null;
}

function recordsOf(run: ReleasedRun, { fitter, checker }: Hands): Made[] {
  const type = run.type.spec as unknown as BuswayTypeDocument;
  const made = (
    subject: string,
    subjectId: string,
    hour: number,
    by: string,
    body: RecordDocument,
    outcome: string | null = null,
  ): Made => ({ run, subject, subjectId, body, hour, by, outcome });
  return [
    ...run.pieces.flatMap(({ id }) => [
      made('piece', id, 0, fitter, { kind: 'piece-on-site', lot: 'LOT-7' }),
      made('piece', id, 1, fitter, { kind: 'piece-hung', conductorSide: 'left', endsConfirmedBy: checker }),
    ]),
    ...run.supports.map(({ id, atU80, ordinal }) => {
      const measuredMm = ordinal % 3 === 1 ? atU80 / 80 + 25.4 : null; // every third an inch from where it was planned
      return made('support', id, 2, fitter, {
        kind: 'support-set',
        measuredMm,
        rodPlumb: true,
        loadNut: true,
        lockNut: true,
        note: null,
      });
    }),
    ...run.joints.flatMap(({ id }) => [
      ...jointSteps(type).map((body) =>
        made('joint', id, 3, body.text.startsWith('Joint checked') ? checker : fitter, body),
      ),
      made('joint', id, 4, checker, { kind: 'joint-accepted', differencesRead: false, note: null }),
    ]),
    ...run.taps.flatMap(({ id, spec }) => [
      made('tap', id, 5, fitter, tapSet(spec as unknown as TapDocument, checker)),
      made('tap', id, 5, checker, { kind: 'tap-checked', note: null }),
      made('tap', id, 5, fitter, { kind: 'drop-supported', distanceMm: 1524, note: null }),
    ]),
    made('run', run.id, 6, fitter, { kind: 'end-closed', end: 'far', capFitted: true, screwSet: true }),
    made('run', run.id, 6, fitter, { kind: 'slot-closed', note: null }),
    made('run', run.id, 6, fitter, { kind: 'activity-done', activity: 'fire-seal', quantity: null, note: null }),
    made('run', run.id, 8, checker, insulationTest(type), 'pass'),
  ];
}

type JointStep = Extract<RecordDocument, { kind: 'joint-step' }>;

function jointSteps(type: BuswayTypeDocument): JointStep[] {
  const poles = (['L1', 'L2', 'L3', 'N'] as const).map((pole) => ({ pole, near: true, far: true }));
  return (type.joint?.steps ?? []).map((line, step) => {
    const marking = /^(HOLD|TORQUE|CHECK): /.exec(line)?.[1];
    const tool = { toolId: 'T-07', calibrationDue: '2026-12-31' };
    const torque =
      step < 6 ? { value: 24, unit: 'Nm' as const, ...tool } : { value: 17.7, unit: 'lbf-ft' as const, ...tool };
    return {
      kind: 'joint-step',
      step,
      text: line.replace(/^(HOLD|TORQUE|CHECK): /, ''),
      poles: marking === 'HOLD' ? poles : null,
      torque: marking === 'TORQUE' ? torque : null,
      lots: step === 5 ? { contactSet: 'CS-12', clamp: 'CL-3' } : null,
      note: null,
    };
  });
}

function tapSet(spec: TapDocument, provedBy: string): RecordDocument {
  return {
    kind: 'tap-set',
    isolation: { runIsolated: true, absenceOfVoltageProved: true, provedBy, provedAt: '2026-06-01T10:00:00Z' },
    device: { off: true, locked: true },
    steps: ['set'],
    phasesFound: spec.phases,
    note: null,
  };
}

/** Ten pairs that pass the acceptance rule over 30 ft and more; one of them a bound. */
export function insulationTest(
  type: Pick<BuswayTypeDocument, 'poles' | 'neutral'>,
): Extract<RecordDocument, { kind: 'insulation-test' }> {
  const readings = pairsOf(type).map((pair, index) => {
    const value = index === 2 ? 5000 : 2400 + 10 * index;
    const comparator = index === 2 ? ('>' as const) : ('=' as const);
    return {
      pair,
      reading: { kind: 'value' as const, comparator, value, unit: 'MΩ' as const, written: String(value) },
    };
  });
  return {
    kind: 'insulation-test',
    rule: 'acceptance-1000ft',
    testVoltageV: 1000,
    durationS: 60,
    instrument: { id: 'IR-02', calibrationDue: '2026-11-30', topRange: { value: 5000, unit: 'MΩ' } },
    surfaceTempC: 28,
    ambientTempC: 24,
    humidityPercent: 45,
    lengthTypedMm: null,
    isolations: ['feeder lifted at the feed', 'all tap-off devices off'],
    readings,
    confirmed: [],
    witness: 'Owen Lea',
    note: null,
  };
}

function rowOf(
  context: Context,
  projectId: string,
  { run, subject, subjectId, body, hour, by, outcome }: Made,
  index: number,
) {
  const at = new Date(Date.UTC(2026, 5, 1, 6 + hour));
  return {
    id: context.newId(),
    projectId,
    runId: run.id,
    subject,
    subjectId,
    kind: body.kind,
    body,
    outcome,
    byUserId: `id-${by}`,
    byName: by,
    at,
    recordedAt: at,
    submissionId: `record-${index}`,
    supersedesId: null,
    cause: null,
    seq: index + 1,
  };
}

/** What those records come to. */
async function setStates(tx: Tx, projectId: string): Promise<void> {
  await tx.piece.updateMany({ where: { projectId }, data: { state: 'accepted', lot: 'LOT-7' } });
  await tx.joint.updateMany({ where: { projectId }, data: { state: 'accepted' } });
  await tx.support.updateMany({ where: { projectId }, data: { state: 'set' } });
  await tx.tap.updateMany({ where: { projectId }, data: { state: 'checked' } });
  await tx.$executeRaw`UPDATE "Support" SET "measuredU80" = "atU80" + 2032 WHERE "projectId" = ${projectId} AND "ordinal" % 3 = 1`;
}
