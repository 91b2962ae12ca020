import type { Reader } from '../../store/database.ts';
import type { Context, Viewer } from '../context.ts';
import { cut, type Listed, type PageQuery } from '../paging.ts';
import { reach } from '../reach.ts';
import {
  type JointView,
  jointRow,
  type SectionView,
  type SupportView,
  sectionRow,
  supportRow,
  type TapView,
  tapRow,
} from './rows.ts';

export interface FloorFilter extends PageQuery {
  /** The run's label. */
  readonly run?: string | undefined;
  readonly level?: string | undefined;
  readonly state?: string | undefined;
  /** Absent: what stands. */
  readonly retired?: boolean | undefined;
}

/** Sections and fittings of the released runs, run by run along the run. */
export async function listSections(
  context: Context,
  viewer: Viewer,
  projectId: string,
  filter: FloorFilter,
): Promise<Listed<SectionView>> {
  const { db, find } = await ask(context, viewer, projectId, filter);
  const [rows, total] = await Promise.all([db.piece.findMany(find), db.piece.count({ where: find.where })]);
  return listed(
    filter,
    total,
    rows.map((row) => sectionRow(row, row.run)),
  );
}

export async function listJoints(
  context: Context,
  viewer: Viewer,
  projectId: string,
  filter: FloorFilter,
): Promise<Listed<JointView>> {
  const { db, find } = await ask(context, viewer, projectId, filter);
  const [rows, total] = await Promise.all([db.joint.findMany(find), db.joint.count({ where: find.where })]);
  return listed(
    filter,
    total,
    rows.map((row) => jointRow(row, row.run)),
  );
}

export async function listSupports(
  context: Context,
  viewer: Viewer,
  projectId: string,
  filter: FloorFilter,
): Promise<Listed<SupportView>> {
  const { db, find } = await ask(context, viewer, projectId, filter);
  const [rows, total] = await Promise.all([db.support.findMany(find), db.support.count({ where: find.where })]);
  return listed(
    filter,
    total,
    rows.map((row) => supportRow(row, row.run)),
  );
}

export async function listTaps(
  context: Context,
  viewer: Viewer,
  projectId: string,
  filter: FloorFilter,
): Promise<Listed<TapView>> {
  const { db, find } = await ask(context, viewer, projectId, filter);
  const [rows, total] = await Promise.all([db.tap.findMany(find), db.tap.count({ where: find.where })]);
  return listed(
    filter,
    total,
    rows.map((row) => tapRow(row, row.run)),
  );
}

async function ask(context: Context, viewer: Viewer, projectId: string, filter: FloorFilter) {
  const db: Reader = context.database.db;
  await reach(db, viewer, projectId);
  const along = { ordinal: 'asc' as const };
  const find = {
    where: whereOf(projectId, filter),
    orderBy: [{ run: along }, { run: { key: 'asc' as const } }, along, { id: 'asc' as const }],
    ...cut(filter),
    include: { run: { select: { key: true, level: { select: { key: true } } } } },
  };
  return { db, find };
}

function whereOf(projectId: string, { run, level, state, retired = false }: FloorFilter) {
  const ofRun = {
    ...(run === undefined ? {} : { key: run }),
    ...(level === undefined ? {} : { level: { key: level } }),
  };
  return {
    projectId,
    run: ofRun,
    retiredAt: retired ? { not: null } : null,
    ...(state === undefined ? {} : { state }),
  };
}

function listed<Row>({ page, limit }: PageQuery, total: number, items: Row[]): Listed<Row> {
  return { items, total, page, limit };
}
