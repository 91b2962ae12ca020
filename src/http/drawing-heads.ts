import type { SheetHead } from '../../views/drawings/sheet/head.ts';
import type { LevelPlan } from '../actions/boards/level-plan.ts';
import type { RunBoard } from '../actions/boards/run-board.ts';
import type { JobHeading } from '../actions/job-heading.ts';
import { when } from '../paper/closeout/when.ts';

/** What the title block says of a run's strip: of what was released, or of the design as it stands. */
export function stripHead(board: RunBoard, of: 'floor' | 'design', now: Date): SheetHead {
  const { heading, run, level, standing, released } = board;
  const asReleased = released !== null && (of === 'floor' || !standing.changed);
  return {
    ...jobOf(heading, now),
    title: `Strip of run ${run.id}`,
    under: [level.name, run.side === null ? null : `${run.side}-side`, run.area].filter(Boolean).join(', '),
    standing: asReleased
      ? { kind: 'released', revision: released.number }
      : { kind: 'draft', after: standing.revision === 0 ? null : standing.revision },
  };
}

/** Of a plan with a picture under it. */
export const PICTURE_NOTE = 'Picture under the plan: for orientation, not for dimensions. Measure on site.';

export function planHead(
  { heading, level, runs, released }: LevelPlan,
  now: Date,
  notes: readonly string[] = [],
): SheetHead {
  const job = jobOf(heading, now);
  return {
    ...job,
    notes: [...notes, ...job.notes],
    title: `Plan of ${level.name}`,
    under: `${runs.length} ${runs.length === 1 ? 'run' : 'runs'}`,
    standing: { kind: 'level', released, runs: runs.length },
  };
}

function jobOf(
  { reached, project }: JobHeading,
  now: Date,
): Pick<SheetHead, 'jobNumber' | 'jobName' | 'date' | 'units' | 'notes'> {
  const isInvented = /\binvented\b/i.test(`${project.name} ${project.client ?? ''} ${project.site ?? ''}`);
  return {
    jobNumber: reached.number,
    jobName: project.name,
    date: when(now.toISOString(), project.timeZone ?? null).slice(0, 10),
    units: project.units,
    notes: isInvented ? ['Invented data of a demonstration: for no building.'] : [],
  };
}
