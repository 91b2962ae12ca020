import type { WhereOnFloor } from '../../../actions/boards/field/where-on-floor.ts';
import type { Context } from '../../../actions/context.ts';
import { jobSheet } from '../job-sheet.ts';
import type { Sheet } from '../page.ts';
import type { PageTrouble } from './take-record.ts';

type Own = Pick<Sheet, 'title'> & Partial<Sheet> & { readonly trouble?: PageTrouble | null };

/** The sheet of a page that is read on the floor: large targets, the way back over the floor and the run. */
export function fieldSheet(context: Context, where: WhereOnFloor, { trouble, ...own }: Own): Sheet {
  const { heading, level, run } = where;
  const { projectId, number } = heading.reached;
  return {
    ...jobSheet(context, heading, {
      part: 'floors',
      theme: 'field',
      revision: run.revision === 0 ? 'draft' : String(run.revision),
      trail: [
        { word: number, href: `/jobs/${projectId}/floors` },
        { word: level.name, href: floorHref(projectId, level.id) },
        { word: run.key, href: fieldRunHref(projectId, level.id, run.id) },
      ],
      ...own,
    }),
    ...(trouble ? { status: trouble.status, flash: { kind: 'stop' as const, text: trouble.notice } } : {}),
  };
}

export function floorHref(jobId: string, levelId: string): string {
  return `/jobs/${jobId}/floors/${levelId}`;
}

export function fieldRunHref(jobId: string, levelId: string, runId: string): string {
  return `${floorHref(jobId, levelId)}/runs/${runId}`;
}
