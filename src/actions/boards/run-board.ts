import type { RunDocument } from '../../document/job-document.ts';
import { toRun } from '../../document/model/to-run.ts';
import { toTap } from '../../document/model/to-tap.ts';
import type { TapDocument } from '../../document/schema/tap.ts';
import { type Finding, orderFindings } from '../../domain/finding.ts';
import type { LabourLine } from '../../domain/labour/result.ts';
import { contextFor } from '../../domain/layout/context-for.ts';
import { coverings, type RunCoverings } from '../../domain/layout/coverings.ts';
import type { RunLayout } from '../../domain/layout/result.ts';
import type { BuswayType, LabourBook, Run, Tap } from '../../domain/model.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../domain/quality/states.ts';
import { runFigures } from '../../domain/run-figures.ts';
import type { Length } from '../../domain/units/length.ts';
import type { Reader } from '../../store/database.ts';
import type { Context, Viewer } from '../context.ts';
import { faceOffsAround } from '../face-offs.ts';
import { type JobHeading, jobHeading } from '../job-heading.ts';
import type { RunStanding } from '../progress/standing.ts';
import { standingOf } from '../progress/standing-of.ts';
import { refuse } from '../refused.ts';
import { runDesignOf } from '../run-design.ts';
import { runStates } from '../run-states.ts';

/** A thing of a released run: its permanent id, its mark and where it stands. */
interface Item<State> {
  readonly id: string;
  readonly mark: string;
  readonly state: State;
}

/** What the floor has: the revision that was released last, and how far each thing of it is, in the order of its layout. */
export interface Released {
  readonly number: number;
  readonly at: Date;
  readonly run: Run;
  readonly layout: RunLayout;
  readonly pieces: readonly (Item<PieceState> & { readonly lot: string | null })[];
  readonly joints: readonly Item<JointState>[];
  readonly supports: readonly (Item<SupportState> & { readonly measured: Length | null })[];
  readonly taps: readonly (Item<TapState> & { readonly at: Length; readonly tap: Tap })[];
}

export interface Revision {
  readonly number: number;
  readonly at: Date;
  readonly byName: string;
  readonly reason: string;
  /** Sections were substituted on the floor. */
  readonly field: boolean;
}

export interface RunBoard {
  readonly heading: JobHeading;
  readonly level: { readonly id: string; readonly name: string };
  readonly version: number;
  readonly standing: RunStanding;
  readonly run: Run;
  readonly type: BuswayType;
  readonly layout: RunLayout;
  /** The best coverings of the design as it stands, worked when asked for. */
  readonly coverings: () => RunCoverings;
  readonly released: Released | null;
  readonly revisions: readonly Revision[];
  readonly findings: readonly Finding[];
  readonly hours: readonly LabourLine[];
  readonly labourBook: LabourBook | null;
  /** Ids of the runs it is joined to or paired with, by label. */
  readonly runIds: ReadonlyMap<string, string>;
}

/** Everything that a run's page shows. Other runs are read only where they are joined to it. */
export async function runBoard(context: Context, viewer: Viewer, projectId: string, runId: string): Promise<RunBoard> {
  const heading = await jobHeading(context, viewer, projectId);
  const { db } = context.database;
  const row = await db.run.findFirst({
    where: { projectId, id: runId },
    select: {
      key: true,
      version: true,
      level: { select: { id: true, name: true } },
      revisions: {
        orderBy: { number: 'desc' },
        select: { number: true, at: true, reason: true, mark: true, byUserId: true },
      },
    },
  });
  if (row === null) return refuse({ code: 'not-found', what: 'run' });
  const design = await runDesignOf(db, projectId, runId);
  const { run, type, layout, job, ids } = design;
  const own = { runs: new Map([[row.key, run]]), layouts: new Map([[row.key, layout]]) };
  const [repeat, faceOffs, [state], released, names] = await Promise.all([
    design.repeat(),
    faceOffsAround(db, projectId, [row.key]),
    runStates(db, projectId, [runId], own),
    readReleased(db, runId, row.revisions[0]?.number),
    db.user.findMany({
      where: { id: { in: row.revisions.map((revision) => revision.byUserId) } },
      select: { id: true, name: true },
    }),
  ]);
  if (state === undefined) return refuse({ code: 'not-found', what: 'run' });
  const { hours, checks } = runFigures(job, run, layout, repeat);
  const across = faceOffs.get(row.key) ?? [];
  return {
    heading,
    level: row.level,
    version: row.version,
    standing: standingOf({ state, run, layout, budget: hours, faceOffs: across }),
    run,
    type,
    layout,
    coverings: () => coverings(run, contextFor(job, run)),
    released,
    revisions: row.revisions.map(({ number, at, byUserId, reason, mark }) => ({
      number,
      at,
      reason,
      field: mark === 'field',
      byName: names.find((user) => user.id === byUserId)?.name ?? 'a closed account',
    })),
    findings: orderFindings([...checks, ...across], new Map()),
    hours,
    labourBook: job.labourBook,
    runIds: ids,
  };
}

async function readReleased(reader: Reader, runId: string, number: number | undefined): Promise<Released | null> {
  if (number === undefined) return null;
  const last = await reader.runRevision.findUniqueOrThrow({
    where: { runId_number: { runId, number } },
    select: { number: true, at: true, spec: true, layout: true },
  });
  const standing = {
    where: { runId, retiredAt: null },
    orderBy: [{ ordinal: 'asc' as const }, { id: 'asc' as const }],
  };
  const [pieces, joints, supports, taps] = await Promise.all([
    reader.piece.findMany(standing),
    reader.joint.findMany(standing),
    reader.support.findMany(standing),
    reader.tap.findMany(standing),
  ]);
  return {
    number: last.number,
    at: last.at,
    run: toRun(last.spec as unknown as RunDocument),
    layout: last.layout as unknown as RunLayout,
    pieces: pieces.map(({ id, mark, state, lot }) => ({ id, mark, state: state as PieceState, lot })),
    joints: joints.map(({ id, mark, state }) => ({ id, mark, state: state as JointState })),
    supports: supports.map(({ id, mark, state, measuredU80 }) => ({
      id,
      mark,
      state: state as SupportState,
      measured: measuredU80,
    })),
    taps: taps.map(({ id, key, state, atU80, spec }) => ({
      id,
      mark: key,
      state: state as TapState,
      at: atU80,
      tap: toTap(spec as unknown as TapDocument),
    })),
  };
}
