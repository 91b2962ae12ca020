import type { Job } from '../model.ts';
import type { CrewPlan } from '../schedule/plan-crews.ts';
import type { CrewTool } from './ordering.ts';

export interface ToolLine extends CrewTool {
  /** Crews that need it; null: no crew plan, and nobody has said how many. */
  readonly crewCount: number | null;
  readonly quantity: number | null;
  /** Names of the crews of the plan; empty where the number is by hand. */
  readonly crewNames: readonly string[];
}

/**
 * How many of each tool: its number a crew times the crews that need it, which are those of the plan that do its work
 * unless the number is given by hand.
 *
 * Example: a plan of four crews of which one makes joints: one torque wrench, two seating tools at two a crew.
 */
export function crewTools(tools: readonly CrewTool[], plan: Pick<CrewPlan, 'crews'> | null): readonly ToolLine[] {
  return tools.map((tool) => {
    const own = (plan?.crews ?? []).filter(
      ({ activities }) => tool.activity === null || activities.includes(tool.activity),
    );
    const crewCount = tool.crews ?? (plan === null ? null : own.length);
    return {
      ...tool,
      crewCount,
      quantity: crewCount === null ? null : crewCount * tool.perCrew,
      crewNames: tool.crews === null ? own.map(({ name }) => name) : [],
    };
  });
}

/** What a list of tools may start from, in the words of the sheets that the runs name. A suggestion, not saved. */
export function firstTools(job: Job): readonly CrewTool[] {
  const used = new Set(job.runs.map(({ type }) => type));
  const types = job.types.filter(({ id }) => used.has(id));
  const tool = (name: string, activity: CrewTool['activity'], note: string | null = null, perCrew = 1): CrewTool => ({
    tool: name,
    perCrew,
    activity,
    crews: null,
    note,
  });
  return [
    tool('Lift', null, 'Height and floor load from the survey'),
    tool('Hammer drill with dust extraction', 'support', 'Scan for tendons, bars and conduit first'),
    ...types.map(({ id, words }) => tool(`${capital(words.seatingTool ?? 'seating tool')} for ${id}`, 'joint')),
    ...types.map(({ id, joint }) =>
      tool(
        joint.torqueNm === null ? 'Torque wrench' : `Torque wrench that reaches ${joint.torqueNm} N·m`,
        'joint',
        joint.torqueNm === null ? `The torque of ${id} is not stated: see its sheet` : `For ${id}, in calibration`,
      ),
    ),
    tool('Absence-of-voltage tester and locks', 'tap', 'Work de-energised; a qualified person'),
    tool('Insulation tester', 'test-insulation', 'Test voltage by the job’s rule, in calibration'),
    tool('Low-resistance ohmmeter', 'test-joint', 'In calibration'),
    tool('Thermal camera', 'thermal-scan', 'In calibration'),
    tool('Label printer', 'label'),
  ];
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
