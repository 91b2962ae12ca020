import type { Activity, LabourLine } from '../labour/result.ts';
import type { Length } from '../units/length.ts';
import { creditOf } from './credit.ts';

/** A line of the labour budget: likely hours of so many pieces of work, in one run and of one length. */
export type BudgetLine = Pick<LabourLine, 'activity' | 'run' | 'level' | 'length' | 'pieces' | 'hours'>;

/**
 * So many things of one run stand in one state. With a length it speaks of the budget line of that length; without one it is
 * spread over the run's lines of the activity in proportion to their pieces.
 */
export interface StateCount {
  readonly run: string;
  readonly activity: Activity;
  readonly length: Length | null;
  readonly state: string;
  readonly count: number;
}

export interface EarnedLine {
  readonly activity: LabourLine['activity'];
  readonly run: string | null;
  readonly level: string | null;
  readonly length: Length | null;
  readonly pieces: number;
  /** Pieces' worth of work done by the rules of credit; null where nothing at all was reported, which is not nought. */
  readonly credited: number | null;
  /** Pieces that the counts speak of; it differs from `pieces` where the design went on after the budget. */
  readonly counted: number | null;
  readonly budgetHours: number;
  readonly earnedHours: number | null;
}

export interface EarnedSum {
  readonly key: string;
  readonly budgetHours: number;
  readonly earnedHours: number;
  readonly percent: number | null;
  /** Budget hours of the lines on which nothing was reported: they are in the budget, and their progress is unknown. */
  readonly unreportedHours: number;
}

export interface Earned {
  readonly lines: readonly EarnedLine[];
  readonly byRun: readonly EarnedSum[];
  readonly byLevel: readonly EarnedSum[];
  readonly byActivity: readonly EarnedSum[];
  readonly total: EarnedSum;
  /** Lines whose counts do not add up to the budgeted pieces: the design changed after the budget, or a count is missing. */
  readonly unmatched: readonly EarnedLine[];
}

/**
 * Hours earned of the budget: on each line, its hours per piece × Σ (count × credit of the state), never more than the line.
 * Extras and lines without counts are unreported. Times are likely hours with all factors in.
 *
 * Example: 48 sections at 0.60 h, 24 accepted and 8 hung: (24 + 8 × 0.6) × 0.60 = 17.28 h of 28.8 h.
 */
export function earned(budget: readonly BudgetLine[], counts: readonly StateCount[]): Earned {
  const tallies = tally(counts);
  const inAll = piecesByActivity(budget);
  const lines = budget.map((line) => earnedLine(line, shareOf(line, tallies, inAll)));
  return {
    lines,
    byRun: sumBy(lines, ({ run }) => run),
    byLevel: sumBy(lines, ({ level }) => level),
    byActivity: sumBy(lines, ({ activity }) => activity),
    total: sumOf('total', lines),
    unmatched: lines.filter(({ counted, pieces }) => counted !== null && Math.abs(counted - pieces) > 1e-9),
  };
}

interface Tally {
  readonly credited: number;
  readonly counted: number;
}

function tally(counts: readonly StateCount[]): ReadonlyMap<string, Tally> {
  const tallies = new Map<string, Tally>();
  for (const { run, activity, length, state, count } of counts) {
    const key = keyOf(run, activity, length);
    const before = tallies.get(key) ?? { credited: 0, counted: 0 };
    tallies.set(key, {
      credited: before.credited + count * creditOf(activity, state),
      counted: before.counted + count,
    });
  }
  return tallies;
}

function keyOf(run: string | null, activity: string, length: Length | null): string {
  return `${length ?? ''} ${activity} ${run ?? ''}`;
}

function piecesByActivity(budget: readonly BudgetLine[]): ReadonlyMap<string, number> {
  const inAll = new Map<string, number>();
  for (const { run, activity, pieces } of budget) {
    const key = keyOf(run, activity, null);
    inAll.set(key, (inAll.get(key) ?? 0) + pieces);
  }
  return inAll;
}

/** What the counts say of one line: its own length's, else its share of the counts without a length, else nothing. */
function shareOf(
  { run, activity, length, pieces }: BudgetLine,
  tallies: ReadonlyMap<string, Tally>,
  inAll: ReadonlyMap<string, number>,
): Tally | null {
  const own = tallies.get(keyOf(run, activity, length));
  if (own !== undefined && length !== null) return own;
  const key = keyOf(run, activity, null);
  const all = tallies.get(key);
  if (all === undefined) return null;
  const share = pieces / (inAll.get(key) || 1);
  return { credited: all.credited * share, counted: all.counted * share };
}

function earnedLine(line: BudgetLine, found: Tally | null): EarnedLine {
  const { activity, run, level, length, pieces, hours } = line;
  const credited = found === null ? null : Math.min(found.credited, pieces);
  return {
    activity,
    run,
    level,
    length,
    pieces,
    credited,
    counted: found?.counted ?? null,
    budgetHours: hours,
    earnedHours: credited === null ? null : pieces === 0 ? 0 : (hours * credited) / pieces,
  };
}

function sumBy(lines: readonly EarnedLine[], keyOfLine: (line: EarnedLine) => string | null): readonly EarnedSum[] {
  const groups = new Map<string, EarnedLine[]>();
  for (const line of lines) {
    const key = keyOfLine(line);
    if (key === null) continue;
    const group = groups.get(key);
    if (group) group.push(line);
    else groups.set(key, [line]);
  }
  return [...groups].map(([key, group]) => sumOf(key, group));
}

function sumOf(key: string, lines: readonly EarnedLine[]): EarnedSum {
  const budgetHours = total(lines, ({ budgetHours: hours }) => hours);
  const earnedHours = total(lines, ({ earnedHours: hours }) => hours ?? 0);
  const unreportedHours = total(lines, ({ earnedHours: done, budgetHours: hours }) => (done === null ? hours : 0));
  const percent = budgetHours === 0 ? null : (100 * earnedHours) / budgetHours;
  return { key, budgetHours, earnedHours, percent, unreportedHours };
}

function total(lines: readonly EarnedLine[], of: (line: EarnedLine) => number): number {
  return lines.reduce((sum, line) => sum + of(line), 0);
}
