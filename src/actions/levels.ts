import { z } from 'zod';
import { type LevelDocument, levelSchema } from '../document/job-document.ts';
import type { Reader } from '../store/database.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { once, type Submission } from './once.ts';
import { cut, type Listed, type PageQuery } from './paging.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';
import { assertVersion } from './version.ts';

export const levelViewSchema = z.object({ id: z.string(), version: z.number().int(), document: levelSchema });
export type LevelView = z.infer<typeof levelViewSchema>;

export async function listLevels(
  context: Context,
  viewer: Viewer,
  projectId: string,
  page: PageQuery,
): Promise<Listed<LevelView>> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  const [rows, total] = await Promise.all([
    db.level.findMany({ where: { projectId }, orderBy: [{ ordinal: 'asc' }, { key: 'asc' }], ...cut(page) }),
    db.level.count({ where: { projectId } }),
  ]);
  return { items: rows.map(viewOf), total, page: page.page, limit: page.limit };
}

export async function getLevel(context: Context, viewer: Viewer, projectId: string, id: string): Promise<LevelView> {
  await reach(context.database.db, viewer, projectId);
  return readLevel(context.database.db, projectId, id);
}

export async function createLevel(
  context: Context,
  viewer: Viewer,
  projectId: string,
  level: LevelDocument,
  submission: Submission | null,
): Promise<LevelView> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'design');
      await changeDesign(tx, context, projectId, {
        scope: [],
        change: (before) => ({ ...before, levels: [...before.levels, level] }),
        faultPath: shortPath,
      });
      const made = await tx.level.findUniqueOrThrow({ where: { projectId_key: { projectId, key: level.id } } });
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'level made',
        subject: 'level',
        subjectId: made.id,
        after: level,
      });
      return viewOf(made);
    }),
  );
}

export async function changeLevel(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
  version: number,
  level: LevelDocument,
): Promise<LevelView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const current = await readLevel(tx, projectId, id);
    assertVersion(current, version, current);
    const { id: key } = current.document;
    await changeDesign(tx, context, projectId, {
      scope: 'all',
      change: (before) => ({
        ...before,
        levels: before.levels.map((old) => (old.id === key ? level : old)),
        runs: before.runs.map((run) => (run.level === key ? { ...run, level: level.id } : run)),
      }),
      rename: { noun: 'level', from: key, to: level.id },
      faultPath: shortPath,
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'level changed',
      subject: 'level',
      subjectId: id,
      before: current.document,
      after: level,
    });
    return readLevel(tx, projectId, id);
  });
}

export async function removeLevel(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
  version: number,
): Promise<void> {
  await context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const current = await readLevel(tx, projectId, id);
    assertVersion(current, version, current);
    const user = await tx.run.findFirst({ where: { levelId: id }, select: { key: true } });
    if (user !== null) refuse({ code: 'in-use', what: 'level', by: `run ${user.key}` });
    await changeDesign(tx, context, projectId, {
      scope: [],
      change: (before) => ({ ...before, levels: before.levels.filter((level) => level.id !== current.document.id) }),
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'level removed',
      subject: 'level',
      subjectId: id,
      before: current.document,
    });
  });
}

async function readLevel(reader: Reader, projectId: string, id: string): Promise<LevelView> {
  const row = await reader.level.findFirst({ where: { projectId, id } });
  return row === null ? refuse({ code: 'not-found', what: 'level' }) : viewOf(row);
}

function viewOf(row: { id: string; version: number; spec: unknown }): LevelView {
  return levelViewSchema.parse({ id: row.id, version: row.version, document: row.spec });
}

function shortPath(path: string): string {
  return path.replace(/^levels\[\d+\]\.?/, '');
}
