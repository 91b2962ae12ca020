import { z } from 'zod';
import { type RunDocument, runSchema } from '../document/job-document.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import { toMm } from '../domain/units/length.ts';
import { connectedRuns } from '../store/connected-runs.ts';
import type { Reader } from '../store/database.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { once, type Submission } from './once.ts';
import { cut, type Listed, type PageQuery } from './paging.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';
import { assertVersion } from './version.ts';

export const runRowSchema = z.object({
  id: z.string(),
  version: z.number().int(),
  key: z.string().describe('The run in the job document, "F1-R1-A".'),
  level: z.string(),
  type: z.string(),
  area: z.string().nullable(),
  side: z.string().nullable(),
  lengthMm: z.number(),
  layoutOk: z.boolean(),
  stops: z.number().int().describe('Findings of the layout that bar a release.'),
  revision: z.number().int().describe('0 until the run is released to the floor.'),
  changed: z.boolean().describe('The design has moved on since the last release.'),
});
export type RunRow = z.infer<typeof runRowSchema>;

export interface RunView extends RunRow {
  readonly document: RunDocument;
  readonly layout: RunLayout;
}

export interface RunFilter extends PageQuery {
  readonly level?: string | undefined;
  readonly type?: string | undefined;
  readonly side?: string | undefined;
  readonly released?: boolean | undefined;
  readonly q?: string | undefined;
}

/** Runs in document order. */
export async function listRuns(
  context: Context,
  viewer: Viewer,
  projectId: string,
  filter: RunFilter,
): Promise<Listed<RunRow>> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  const where = {
    projectId,
    ...(filter.level === undefined ? {} : { level: { key: filter.level } }),
    ...(filter.type === undefined ? {} : { type: { key: filter.type } }),
    ...(filter.side === undefined ? {} : { side: filter.side }),
    ...(filter.released === undefined ? {} : { revision: filter.released ? { gt: 0 } : 0 }),
    ...(filter.q === undefined || filter.q === '' ? {} : { key: { contains: filter.q } }),
  };
  const [rows, total] = await Promise.all([
    db.run.findMany({ where, orderBy: [{ ordinal: 'asc' }, { key: 'asc' }], ...cut(filter), select: ROW }),
    db.run.count({ where }),
  ]);
  return { items: rows.map(rowOf), total, page: filter.page, limit: filter.limit };
}

export async function getRun(context: Context, viewer: Viewer, projectId: string, id: string): Promise<RunView> {
  await reach(context.database.db, viewer, projectId);
  return readRun(context.database.db, projectId, id);
}

export async function createRun(
  context: Context,
  viewer: Viewer,
  projectId: string,
  run: RunDocument,
  submission: Submission | null,
): Promise<RunView> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'design');
      const taken = await tx.run.findUnique({
        where: { projectId_key: { projectId, key: run.id } },
        select: { id: true },
      });
      if (taken !== null) refuse({ code: 'duplicate', what: 'run', field: 'id', value: run.id });
      await changeDesign(tx, context, projectId, {
        scope: await connectedRuns(tx, projectId, named(run)),
        change: (before) => ({ ...before, runs: [...before.runs, run] }),
        faultPath: shortPath(run.id),
      });
      const made = await tx.run.findUniqueOrThrow({
        where: { projectId_key: { projectId, key: run.id } },
        select: { id: true },
      });
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'run made',
        subject: 'run',
        subjectId: made.id,
        after: run,
      });
      return readRun(tx, projectId, made.id);
    }),
  );
}

/** Changes a run's design and lays it out anew, with every run joined to it by tees. The released pieces stay until the next release. */
export async function changeRun(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
  version: number,
  run: RunDocument,
): Promise<RunView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const current = await readRun(tx, projectId, id);
    assertVersion(current, version, current);
    const { key } = current;
    if (run.id !== key && current.revision > 0)
      refuse({ code: 'in-use', what: `name ${key}`, by: 'the floor: labels and records carry it since its release' });
    await changeDesign(tx, context, projectId, {
      scope: await connectedRuns(tx, projectId, [key, ...named(run)]),
      change: (before) => ({
        ...before,
        runs: before.runs.map((old) => (old.id === key ? run : followed(old, key, run.id))),
      }),
      rename: { noun: 'run', from: key, to: run.id },
      faultPath: shortPath(run.id),
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'run changed',
      subject: 'run',
      subjectId: id,
      before: current.document,
      after: run,
    });
    return readRun(tx, projectId, id);
  });
}

export async function removeRun(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
  version: number,
): Promise<void> {
  await context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const current = await readRun(tx, projectId, id);
    assertVersion(current, version, current);
    if (current.revision > 0)
      refuse({ code: 'in-use', what: 'run', by: `the floor: ${current.key} was released and its records stay` });
    const user = await tx.run.findFirst({
      where: { projectId, OR: [{ pairedKey: current.key }, { parentKey: current.key }] },
      select: { key: true },
    });
    if (user !== null)
      refuse({ code: 'in-use', what: 'run', by: `run ${user.key}, which names it as its pair or its feed` });
    await changeDesign(tx, context, projectId, {
      scope: await connectedRuns(tx, projectId, [current.key]),
      change: (before) => ({ ...before, runs: before.runs.filter((run) => run.id !== current.key) }),
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'run removed',
      subject: 'run',
      subjectId: id,
      before: current.document,
    });
  });
}

/** The runs that a run's document names. */
function named(run: RunDocument): string[] {
  return [run.pairedRun, run.feed.fromRun].filter((key) => key !== undefined);
}

function followed(run: RunDocument, from: string, to: string): RunDocument {
  if (from === to) return run;
  const feed = run.feed.fromRun === from ? { ...run.feed, fromRun: to } : run.feed;
  return { ...run, feed, ...(run.pairedRun === from ? { pairedRun: to } : {}) };
}

function shortPath(key: string) {
  return (path: string, after: { readonly runs: readonly { readonly id: string }[] }) => {
    const index = after.runs.findIndex((run) => run.id === key);
    const prefix = `runs[${index}]`;
    return path.startsWith(prefix) ? path.slice(prefix.length).replace(/^\./, '') : path;
  };
}

const ROW = {
  id: true,
  version: true,
  key: true,
  area: true,
  side: true,
  lengthU80: true,
  layoutOk: true,
  stops: true,
  revision: true,
  changed: true,
  level: { select: { key: true } },
  type: { select: { key: true } },
} as const;

interface StoredRow {
  readonly id: string;
  readonly version: number;
  readonly key: string;
  readonly area: string | null;
  readonly side: string | null;
  readonly lengthU80: number;
  readonly layoutOk: boolean;
  readonly stops: number;
  readonly revision: number;
  readonly changed: boolean;
  readonly level: { readonly key: string };
  readonly type: { readonly key: string };
}

function rowOf({ lengthU80, level, type, ...row }: StoredRow): RunRow {
  return { ...row, level: level.key, type: type.key, lengthMm: toMm(lengthU80) };
}

async function readRun(reader: Reader, projectId: string, id: string): Promise<RunView> {
  const row = await reader.run.findFirst({ where: { projectId, id }, select: { ...ROW, spec: true, layout: true } });
  if (row === null) return refuse({ code: 'not-found', what: 'run' });
  const { spec, layout, ...rest } = row;
  return { ...rowOf(rest), document: runSchema.parse(spec), layout: layout as unknown as RunLayout };
}
