import { z } from 'zod';
import { type JobDocument, type ProjectDocument, projectSchema } from '../document/job-document.ts';
import { ROLES } from '../domain/access.ts';
import { isUniqueViolation, type Reader } from '../store/database.ts';
import { projectColumns } from '../store/designs.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign, checked } from './designs.ts';
import { once, type Submission } from './once.ts';
import { cut, type Listed, type PageQuery } from './paging.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';
import { assertVersion } from './version.ts';

export const projectViewSchema = z.object({
  id: z.string(),
  version: z.number().int(),
  designVersion: z.number().int().describe('Grows with every change of the design.'),
  role: z.enum(ROLES).nullable().describe('Your role in this job; null for an administrator without one.'),
  archived: z.boolean(),
  document: projectSchema,
});
export type ProjectView = z.infer<typeof projectViewSchema>;

export interface ProjectFilter extends PageQuery {
  readonly q?: string | undefined;
  readonly archived?: boolean | undefined;
}

/** The jobs that the viewer may reach, newest first; `q` searches number, name, client and site. */
export async function listProjects(
  context: Context,
  viewer: Viewer,
  filter: ProjectFilter,
): Promise<Listed<ProjectView>> {
  const where = {
    ...(viewer.administrator ? {} : { memberships: { some: { userId: viewer.userId } } }),
    ...(filter.q === undefined || filter.q === '' ? {} : { search: { contains: filter.q.toLowerCase() } }),
    archivedAt: filter.archived === true ? { not: null } : null,
  };
  const { db } = context.database;
  const [rows, total] = await Promise.all([
    db.project.findMany({
      where,
      orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
      ...cut(filter),
      include: { memberships: { where: { userId: viewer.userId } } },
    }),
    db.project.count({ where }),
  ]);
  return { items: rows.map(viewOf), total, page: filter.page, limit: filter.limit };
}

export async function getProject(context: Context, viewer: Viewer, projectId: string): Promise<ProjectView> {
  await reach(context.database.db, viewer, projectId);
  return readProject(context.database.db, viewer, projectId);
}

/** An empty job; its maker becomes its office. */
export async function createProject(
  context: Context,
  viewer: Viewer,
  project: ProjectDocument,
  submission: Submission | null,
): Promise<ProjectView> {
  const document = checked(
    { format: 'busway-jobbook/1', project, levels: [], buswayTypes: [], runs: [] },
    { faultPath: (path) => path.replace(/^project\.?/, '') },
  );
  try {
    return await context.database.write((tx) =>
      once(tx, context, viewer, submission, async () => {
        const projectId = await insertProject(tx, context, viewer, document);
        return readProject(tx, viewer, projectId);
      }),
    );
  } catch (error) {
    if (isUniqueViolation(error)) refuse({ code: 'duplicate', what: 'job', field: 'number', value: project.number });
    throw error;
  }
}

/** The project's row and its maker's membership; the design's parts are saved after it. */
export async function insertProject(
  tx: Parameters<Parameters<Context['database']['write']>[0]>[0],
  context: Context,
  viewer: Viewer,
  document: JobDocument,
): Promise<string> {
  await assertMaker(tx, viewer);
  const taken = await tx.project.findUnique({ where: { number: document.project.number }, select: { id: true } });
  if (taken !== null) refuse({ code: 'duplicate', what: 'job', field: 'number', value: document.project.number });
  const project = await tx.project.create({
    data: {
      id: context.newId(),
      ...projectColumns(document.project),
      extras: [],
      createdAt: context.clock(),
      memberships: { create: { userId: viewer.userId, role: 'office' } },
    },
  });
  await audit(tx, context, viewer, {
    chain: project.id,
    action: 'job made',
    subject: 'project',
    subjectId: project.id,
    after: document.project,
  });
  return project.id;
}

async function assertMaker(reader: Reader, viewer: Viewer): Promise<void> {
  if (!(await mayMakeJobs(reader, viewer))) refuse({ code: 'forbidden', needs: 'office of any job' });
}

/** Jobs are made by administrators and by those who are the office of another job. */
export async function mayMakeJobs(reader: Reader, viewer: Viewer): Promise<boolean> {
  if (viewer.administrator) return true;
  const office = await reader.membership.findFirst({
    where: { userId: viewer.userId, role: 'office' },
    select: { role: true },
  });
  return office !== null;
}

export async function changeProject(
  context: Context,
  viewer: Viewer,
  projectId: string,
  version: number,
  project: ProjectDocument,
): Promise<ProjectView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const current = await readProject(tx, viewer, projectId);
    assertVersion(current, version, current);
    const other = await tx.project.findUnique({ where: { number: project.number }, select: { id: true } });
    if (other !== null && other.id !== projectId)
      refuse({ code: 'duplicate', what: 'job', field: 'number', value: project.number });
    await changeDesign(tx, context, projectId, {
      scope: 'all',
      change: (before) => ({ ...before, project }),
      faultPath: (path) => path.replace(/^project\.?/, ''),
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'job changed',
      subject: 'project',
      subjectId: projectId,
      before: current.document,
      after: project,
    });
    return readProject(tx, viewer, projectId);
  });
}

/** Puts a job away or brings it back; nothing is deleted. */
export async function archiveProject(
  context: Context,
  viewer: Viewer,
  projectId: string,
  version: number,
  archived: boolean,
): Promise<ProjectView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'members');
    const current = await readProject(tx, viewer, projectId);
    assertVersion(current, version, current);
    await tx.project.update({
      where: { id: projectId },
      data: { archivedAt: archived ? context.clock() : null, version: { increment: 1 } },
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: archived ? 'job put away' : 'job brought back',
      subject: 'project',
      subjectId: projectId,
    });
    return readProject(tx, viewer, projectId);
  });
}

async function readProject(reader: Reader, viewer: Viewer, projectId: string): Promise<ProjectView> {
  const row = await reader.project.findUniqueOrThrow({
    where: { id: projectId },
    include: { memberships: { where: { userId: viewer.userId } } },
  });
  return viewOf(row);
}

function viewOf(row: {
  id: string;
  version: number;
  designVersion: number;
  archivedAt: Date | null;
  spec: unknown;
  memberships: readonly { role: string }[];
}): ProjectView {
  return projectViewSchema.parse({
    id: row.id,
    version: row.version,
    designVersion: row.designVersion,
    role: row.memberships[0]?.role ?? null,
    archived: row.archivedAt !== null,
    document: row.spec,
  });
}
