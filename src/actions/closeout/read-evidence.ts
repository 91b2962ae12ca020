import type { BuswayTypeDocument, RunDocument } from '../../document/job-document.ts';
import { toRun } from '../../document/model/to-run.ts';
import type { TapDocument } from '../../document/schema/tap.ts';
import type { InsulationStanding, RunEvidence, TypeEvidence } from '../../domain/closeout/evidence.ts';
import type { RunLayout } from '../../domain/layout/result.ts';
import { openEnds, runCard } from '../../domain/quality/end-card.ts';
import type { Verdict } from '../../domain/quality/insulation/verdict.ts';
import type { SiteRecord } from '../../domain/quality/record.ts';
import { boundariesOf, isStale, lastWorkInBoundary, VOIDS_TESTS } from '../../domain/quality/stale.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../domain/quality/states.ts';
import { groupBy } from '../../domain/takeoff/group-by.ts';
import type { Reader } from '../../store/database.ts';
import { draftMark } from './dossier-of.ts';
import { isTest, siteRecord } from './site-records.ts';

export interface JobEvidence {
  readonly runs: readonly RunEvidence[];
  readonly types: readonly TypeEvidence[];
}

/** What the record holds of every run, in document order: states as they stand, and the records that speak of a run as a whole. */
export async function readEvidence(reader: Reader, projectId: string): Promise<JobEvidence> {
  const [runs, drafts, types, things, records, lastWork] = await Promise.all([
    readRuns(reader, projectId),
    readDrafts(reader, projectId),
    reader.buswayType.findMany({
      where: { projectId },
      orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
      select: { id: true, key: true, spec: true },
    }),
    readThings(reader, projectId),
    readRecords(reader, projectId),
    readLastWork(reader, projectId),
  ]);
  const keys = new Map(runs.map((run) => [run.id, run.key]));
  const connections = runs.flatMap((run) => (run.parentKey === null ? [] : [[run.key, run.parentKey] as const]));
  const boundaries = boundariesOf([...keys.values()], connections);
  const work = lastWorkInBoundary(new Map([...lastWork].map(([id, at]) => [keys.get(id) ?? '', at])), boundaries);
  const used = new Set(runs.map((run) => run.typeId));
  return {
    runs: runs.map((run) =>
      evidenceOf(
        { ...run, layout: drafts.get(run.id) ?? null },
        things,
        records.get(run.id),
        work.get(run.key) ?? null,
      ),
    ),
    types: types
      .filter((type) => used.has(type.id))
      .map((type) => ({ type: type.key, sheetNamed: hasSheet(type.spec as unknown as BuswayTypeDocument) })),
  };
}

function hasSheet(type: BuswayTypeDocument): boolean {
  return type.sheet !== undefined;
}

type RunRow = Awaited<ReturnType<typeof readRuns>>[number] & { readonly layout: unknown };

function readRuns(reader: Reader, projectId: string) {
  return reader.run.findMany({
    where: { projectId },
    orderBy: [{ level: { ordinal: 'asc' } }, { level: { key: 'asc' } }, { ordinal: 'asc' }, { key: 'asc' }],
    select: { id: true, key: true, parentKey: true, typeId: true, revision: true, changed: true, spec: true },
  });
}

/** Layouts of runs that were never released. */
async function readDrafts(reader: Reader, projectId: string): Promise<ReadonlyMap<string, unknown>> {
  const rows = await reader.run.findMany({ where: { projectId, revision: 0 }, select: { id: true, layout: true } });
  return new Map(rows.map((row) => [row.id, row.layout]));
}

interface Thing {
  readonly id: string;
  readonly runId: string;
  readonly mark: string;
  readonly state: string;
}

interface Things {
  readonly pieces: ReadonlyMap<string, readonly Thing[]>;
  readonly joints: ReadonlyMap<string, readonly Thing[]>;
  readonly supports: ReadonlyMap<string, readonly Thing[]>;
  readonly taps: ReadonlyMap<string, readonly (Thing & { readonly hasDrop: boolean })[]>;
  /** Tap-offs whose drop has its first support recorded. */
  readonly supported: ReadonlySet<string>;
}

async function readThings(reader: Reader, projectId: string): Promise<Things> {
  const standing = {
    where: { projectId, retiredAt: null },
    orderBy: [{ runId: 'asc' as const }, { ordinal: 'asc' as const }, { id: 'asc' as const }],
  };
  const select = { id: true, runId: true, mark: true, state: true };
  const [pieces, joints, supports, taps, drops] = await Promise.all([
    reader.piece.findMany({ ...standing, select }),
    reader.joint.findMany({ ...standing, select }),
    reader.support.findMany({ ...standing, select }),
    reader.tap.findMany({ ...standing, select: { id: true, runId: true, key: true, state: true, spec: true } }),
    readStanding(reader, projectId, ['drop-supported']),
  ]);
  const tapThings = taps.map(({ id, runId, key, state, spec }) => ({
    id,
    runId,
    mark: key,
    state,
    hasDrop: (spec as unknown as TapDocument).dropMm !== undefined,
  }));
  return {
    pieces: byRun(pieces),
    joints: byRun(joints),
    supports: byRun(supports),
    taps: byRun(tapThings),
    supported: new Set(drops.map((record) => record.subjectId)),
  };
}

function byRun<T extends { readonly runId: string }>(rows: readonly T[]): ReadonlyMap<string, readonly T[]> {
  return new Map(groupBy(rows, (row) => row.runId).map((group) => [group[0].runId, group]));
}

const WHOLE_RUN = ['end-closed', 'end-opened', 'slot-closed', 'slot-opened', 'activity-done', 'insulation-test'];

interface RunRecords {
  readonly records: readonly SiteRecord[];
  /** The newest standing test, by when it was made. */
  readonly test: { readonly verdict: string | null; readonly at: string } | null;
}

async function readRecords(reader: Reader, projectId: string): Promise<ReadonlyMap<string, RunRecords>> {
  const rows = await readStanding(reader, projectId, WHOLE_RUN);
  return new Map(
    groupBy(rows, (row) => row.runId).map((group) => {
      const tests = group
        .filter((row) => row.kind === 'insulation-test')
        .sort((a, b) => a.at.getTime() - b.at.getTime());
      const newest = tests.at(-1);
      const test = newest === undefined ? null : { verdict: newest.outcome, at: newest.at.toISOString() };
      return [group[0].runId, { records: group.map(siteRecord), test }];
    }),
  );
}

/** Records of these kinds that no later one replaced, in the order in which they reached the book. */
async function readStanding(reader: Reader, projectId: string, kinds: readonly string[]) {
  const [rows, replaced] = await Promise.all([
    reader.inspection.findMany({
      where: { projectId, kind: { in: [...kinds] } },
      orderBy: [{ recordedAt: 'asc' }, { at: 'asc' }, { id: 'asc' }],
    }),
    readReplaced(reader, projectId),
  ]);
  return rows.filter((row) => !replaced.has(row.id)).map((row) => ({ ...row, supersedesId: null }));
}

async function readReplaced(reader: Reader, projectId: string): Promise<ReadonlySet<string>> {
  const rows = await reader.inspection.findMany({
    where: { projectId, supersedesId: { not: null } },
    select: { supersedesId: true },
  });
  return new Set(rows.map((row) => row.supersedesId ?? ''));
}

/**
 * The last standing work on each run that makes an older test stale. One question for all runs; only runs where such work
 * was corrected or withdrawn are read record by record.
 */
async function readLastWork(reader: Reader, projectId: string): Promise<ReadonlyMap<string, string>> {
  const where = { projectId, kind: { in: [...VOIDS_TESTS] } };
  const [rows, replaced] = await Promise.all([
    reader.inspection.groupBy({ by: ['runId'], where, _max: { at: true } }),
    readReplaced(reader, projectId),
  ]);
  const last = new Map(rows.flatMap((row) => (row._max.at === null ? [] : [[row.runId, row._max.at] as const])));
  const mended = await reader.inspection.findMany({
    where: { ...where, id: { in: [...replaced] } },
    select: { runId: true },
    distinct: ['runId'],
  });
  for (const { runId } of mended) {
    const works = await reader.inspection.findMany({
      where: { ...where, runId },
      orderBy: { at: 'desc' },
      select: { id: true, at: true },
    });
    const standing = works.find((work) => !replaced.has(work.id));
    if (standing === undefined) last.delete(runId);
    else last.set(runId, standing.at);
  }
  return new Map([...last].map(([runId, at]) => [runId, at.toISOString()]));
}

function evidenceOf(run: RunRow, things: Things, of: RunRecords | undefined, lastWork: string | null): RunEvidence {
  const spec = run.spec as unknown as RunDocument;
  const records = of?.records ?? [];
  const card = runCard(openEnds(toRun(spec).feed), records);
  const seals = card.reported.get('fire-seal') ?? 0;
  const needed = (spec.crossings ?? []).filter((crossing) => (crossing.fireRatingMin ?? 0) > 0).length;
  return {
    run: run.key,
    runId: run.id,
    revision: run.revision,
    changed: run.changed,
    ...(run.revision === 0 ? draftThings(run) : releasedThings(run, things)),
    ends: card.ends.map(({ end, closed }) => ({ end, closed: closed !== null })),
    slotClosed: card.slot !== null,
    fireSeals: { needed, reported: seals === 'all' ? needed : seals },
    insulation: standingOf(of?.test ?? null, lastWork),
    instruments: records.filter(isTest).map(({ id, body: { instrument } }) => ({
      id: instrument.id,
      calibrationDue: instrument.calibrationDue,
      testId: id,
    })),
  };
}

type RunThings = Pick<RunEvidence, 'pieces' | 'joints' | 'supports' | 'taps'>;

function releasedThings(run: RunRow, things: Things): RunThings {
  return {
    pieces: evidence<PieceState>(things.pieces.get(run.id)),
    joints: evidence<JointState>(things.joints.get(run.id)),
    supports: evidence<SupportState>(things.supports.get(run.id)),
    taps: (things.taps.get(run.id) ?? []).map((tap) => ({
      id: tap.id,
      mark: `${run.key}-${tap.mark}`,
      state: tap.state as TapState,
      dropSupported: tap.hasDrop ? things.supported.has(tap.id) : null,
    })),
  };
}

/** What a run that was never released would need: nothing of it has an identity yet, and all of it is asked for. */
function draftThings(run: RunRow): RunThings {
  const layout = run.layout as unknown as RunLayout;
  const spec = run.spec as unknown as RunDocument;
  const draft = <State extends string>(count: number, letter: string, state: State) =>
    Array.from({ length: count }, (_, index) => ({
      id: run.id,
      mark: `${run.key}-${draftMark(letter, index)}`,
      state,
    }));
  return {
    pieces: draft(layout.pieces.length, 'P', 'planned'),
    joints: draft(layout.joints.length, 'J', 'open'),
    supports: draft(layout.supports.length, 'H', 'planned'),
    taps: (spec.taps ?? []).map((tap) => ({
      id: run.id,
      mark: `${run.key}-${tap.id}`,
      state: 'planned',
      dropSupported: tap.dropMm === undefined ? null : false,
    })),
  };
}

function evidence<State extends string>(rows: readonly Thing[] | undefined) {
  return (rows ?? []).map(({ id, mark, state }) => ({ id, mark, state: state as State }));
}

function standingOf(test: RunRecords['test'], lastWork: string | null): InsulationStanding {
  if (test === null) return { kind: 'missing' };
  switch (test.verdict as Verdict | null) {
    case 'pass':
      return { kind: isStale(test.at, lastWork) ? 'stale' : 'passing' };
    case 'fail':
      return { kind: 'failed' };
    case 'information-only':
      return { kind: 'information-only' };
    case 'incomplete':
    case null:
      return { kind: 'incomplete' };
  }
}
