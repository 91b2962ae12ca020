import type { Context, Viewer } from '../../context.ts';
import { type JobHeading, jobHeading } from '../../job-heading.ts';
import { refuse } from '../../refused.ts';

/** Where a run hangs, for the head of every page about it. */
export interface WhereOnFloor {
  readonly heading: JobHeading;
  readonly level: { readonly id: string; readonly key: string; readonly name: string };
  readonly run: {
    readonly id: string;
    readonly key: string;
    readonly revision: number;
    readonly changed: boolean;
    readonly version: number;
  };
}

export async function whereOnFloor(
  context: Context,
  viewer: Viewer,
  projectId: string,
  runId: string,
): Promise<WhereOnFloor> {
  const heading = await jobHeading(context, viewer, projectId);
  const row = await context.database.db.run.findFirst({
    where: { projectId, id: runId },
    select: {
      id: true,
      key: true,
      revision: true,
      changed: true,
      version: true,
      level: { select: { id: true, key: true, name: true } },
    },
  });
  if (row === null) return refuse({ code: 'not-found', what: 'run' });
  const { level, ...run } = row;
  return { heading, level, run };
}
