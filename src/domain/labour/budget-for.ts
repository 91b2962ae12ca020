import { linesByRun } from '../takeoff/lines-by-run.ts';
import type { Length } from '../units/length.ts';
import type { Activity, Labour, LabourLine } from './result.ts';

/** One run's hours as a budget to earn against. */
export interface RunBudget {
  readonly run: string;
  readonly hours: ReadonlyMap<Activity, number>;
  /** Hours of one piece of each activity's work: a joint, a tap-off, the run's insulation test. A mean where lengths differ. */
  readonly each: ReadonlyMap<Activity, number>;
  /** Hours of hanging one section of each length. */
  readonly eachSection: ReadonlyMap<Length, number>;
}

/**
 * The budget of every run, by run label: likely hours with all factors in, so that the budgets of all runs and the extras
 * add up to the labour's likely hours.
 *
 * Example: four joints at 2.40 h give `each.get('joint')` 0.60.
 */
export function budgetFor(labour: Labour): ReadonlyMap<string, RunBudget> {
  return new Map([...linesByRun(labour.lines)].map(([run, lines]) => [run, budgetOf(run, lines)]));
}

function budgetOf(run: string, lines: readonly LabourLine[]): RunBudget {
  const hours = new Map<Activity, number>();
  const pieces = new Map<Activity, number>();
  const eachSection = new Map<Length, number>();
  for (const line of lines) {
    if (line.activity === 'extra') continue;
    hours.set(line.activity, (hours.get(line.activity) ?? 0) + line.hours);
    pieces.set(line.activity, (pieces.get(line.activity) ?? 0) + line.pieces);
    if (line.activity === 'section' && line.length !== null) eachSection.set(line.length, line.hours / line.pieces);
  }
  const each = new Map([...hours].map(([activity, sum]) => [activity, sum / (pieces.get(activity) ?? 1)]));
  return { run, hours, each, eachSection };
}
