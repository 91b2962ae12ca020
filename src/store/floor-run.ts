import type { BuswayTypeDocument, ProjectDocument, RunDocument } from '../document/job-document.ts';
import { toBuswayType } from '../document/model/to-busway-type.ts';
import { toRun } from '../document/model/to-run.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import type { BuswayType, Run } from '../domain/model.ts';
import type { InsulationRule } from '../domain/quality/insulation/criterion.ts';
import type { Length } from '../domain/units/length.ts';
import type { Reader } from './database.ts';

type PieceRow = NonNullable<Awaited<ReturnType<Reader['piece']['findFirst']>>>;
type JointRow = NonNullable<Awaited<ReturnType<Reader['joint']['findFirst']>>>;
type SupportRow = NonNullable<Awaited<ReturnType<Reader['support']['findFirst']>>>;
type TapRow = NonNullable<Awaited<ReturnType<Reader['tap']['findFirst']>>>;

export type { JointRow, PieceRow, SupportRow, TapRow };

/** A released run as the floor has it: the revision that was released last, with every thing of it that still stands. */
export interface FloorRun {
  readonly id: string;
  readonly key: string;
  readonly projectId: string;
  readonly version: number;
  readonly revision: number;
  /** The design has moved on since the release. */
  readonly changed: boolean;
  readonly level: { readonly key: string; readonly name: string };
  readonly area: string | null;
  readonly side: string | null;
  readonly run: Run;
  readonly type: BuswayType;
  readonly layout: RunLayout;
  readonly project: FloorProject;
  readonly pieces: readonly PieceRow[];
  readonly joints: readonly JointRow[];
  readonly supports: readonly SupportRow[];
  readonly taps: readonly TapRow[];
  /** The tee that this run branches off; null for a run that is fed in another way. `piece` is null until that run is released. */
  readonly teedOff: { readonly key: string; readonly piece: PieceRow | null } | null;
  /** Released runs teed off this one, with the joint at their own 0. */
  readonly branches: readonly { readonly key: string; readonly at: Length; readonly joint: JointRow }[];
}

export interface FloorProject {
  readonly id: string;
  readonly version: number;
  readonly document: ProjectDocument;
  readonly insulationRule: InsulationRule | null;
}

const byOrdinal = [{ ordinal: 'asc' as const }, { id: 'asc' as const }];

/** Reads one run of a job as the floor has it; null when there is none, or when it was never released. */
export async function readFloorRun(reader: Reader, projectId: string, runId: string): Promise<FloorRun | null> {
  // One question after the other, and no two relations in one: inside a transaction there is one connection.
  const row = await reader.run.findFirst({ where: { projectId, id: runId, revision: { gt: 0 } } });
  if (row === null) return null;
  const released = await reader.runRevision.findUniqueOrThrow({
    where: { runId_number: { runId, number: row.revision } },
    select: { spec: true, layout: true },
  });
  const project = await readProject(reader, projectId);
  const type = await reader.buswayType.findUniqueOrThrow({ where: { id: row.typeId }, select: { spec: true } });
  const run = toRun(released.spec as unknown as RunDocument);
  const standing = { where: { runId, retiredAt: null }, orderBy: byOrdinal };
  return {
    id: row.id,
    key: row.key,
    projectId,
    version: row.version,
    revision: row.revision,
    changed: row.changed,
    level: await reader.level.findUniqueOrThrow({ where: { id: row.levelId }, select: { key: true, name: true } }),
    area: row.area,
    side: row.side,
    run,
    type: toBuswayType(type.spec as unknown as BuswayTypeDocument, project.document.units),
    layout: released.layout as unknown as RunLayout,
    project,
    pieces: await reader.piece.findMany(standing),
    joints: await reader.joint.findMany(standing),
    supports: await reader.support.findMany(standing),
    taps: await reader.tap.findMany(standing),
    teedOff: await readTee(reader, projectId, run),
    branches: await readBranches(reader, projectId, row.key),
  };
}

async function readProject(reader: Reader, projectId: string): Promise<FloorProject> {
  const row = await reader.project.findUniqueOrThrow({
    where: { id: projectId },
    select: { version: true, spec: true, insulationRule: true },
  });
  return {
    id: projectId,
    version: row.version,
    document: row.spec as unknown as ProjectDocument,
    insulationRule: row.insulationRule as InsulationRule | null,
  };
}

async function readTee(reader: Reader, projectId: string, { feed }: Run): Promise<FloorRun['teedOff']> {
  const { kind, fromRun: key, at } = feed;
  if (kind !== 'tee' || key === null || at === null) return null;
  const piece = await reader.piece.findFirst({
    where: { run: { projectId, key }, kind: 'tee', retiredAt: null, fromU80: { lte: at }, toU80: { gte: at } },
  });
  return { key, piece };
}

async function readBranches(reader: Reader, projectId: string, key: string): Promise<FloorRun['branches']> {
  const rows = await reader.run.findMany({
    where: { projectId, parentKey: key, revision: { gt: 0 } },
    select: { key: true, revisions: { orderBy: { number: 'desc' }, take: 1, select: { spec: true } } },
  });
  const joints = await reader.joint.findMany({
    where: { run: { projectId, parentKey: key }, retiredAt: null, atU80: 0 },
    include: { run: { select: { key: true } } },
  });
  return rows.flatMap(({ key: branch, revisions }) => {
    const joint = joints.find((candidate) => candidate.run.key === branch);
    const { feed } = toRun(revisions[0]?.spec as unknown as RunDocument);
    const isHere = feed.kind === 'tee' && feed.fromRun === key && feed.at !== null;
    return joint !== undefined && isHere ? [{ key: branch, at: feed.at ?? 0, joint }] : [];
  });
}
