import type { Context, Viewer } from './context.ts';
import type { Listed } from './paging.ts';
import { listProjects, mayMakeJobs, type ProjectFilter, type ProjectView } from './projects.ts';

export interface JobRow {
  readonly project: ProjectView;
  readonly runs: number;
  readonly released: number;
}

/** The jobs page: the jobs with how many of their runs are with the floor, and whether the viewer may make another. */
export async function jobList(
  context: Context,
  viewer: Viewer,
  filter: ProjectFilter,
): Promise<Listed<JobRow> & { readonly mayMake: boolean }> {
  const { db } = context.database;
  const [listed, mayMake] = await Promise.all([listProjects(context, viewer, filter), mayMakeJobs(db, viewer)]);
  const ids = listed.items.map((project) => project.id);
  const [all, released] = await Promise.all([
    db.run.groupBy({ by: ['projectId'], where: { projectId: { in: ids } }, _count: true }),
    db.run.groupBy({ by: ['projectId'], where: { projectId: { in: ids }, revision: { gt: 0 } }, _count: true }),
  ]);
  const countIn = (groups: readonly { projectId: string; _count: number }[], id: string) =>
    groups.find((group) => group.projectId === id)?._count ?? 0;
  const items = listed.items.map((project) => ({
    project,
    runs: countIn(all, project.id),
    released: countIn(released, project.id),
  }));
  return { ...listed, items, mayMake };
}

/** The job of this number, if the viewer reaches it. */
export async function findJobByNumber(context: Context, viewer: Viewer, number: string): Promise<string | null> {
  const found = await context.database.db.project.findFirst({
    where: { number, ...(viewer.administrator ? {} : { memberships: { some: { userId: viewer.userId } } }) },
    select: { id: true },
  });
  return found?.id ?? null;
}
