import type { Activity } from '../domain/labour/result.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import type { Run } from '../domain/model.ts';
import { type BudgetLine, type EarnedSum, earned } from '../domain/progress/earned.ts';
import { stateCounts } from '../domain/progress/state-counts.ts';
import type { Counts, OpenPoint, RunStatus } from '../domain/quality/run-status.ts';
import { isStale } from '../domain/quality/stale.ts';
import { isHung } from '../domain/quality/states.ts';
import { linesByRun } from '../domain/takeoff/lines-by-run.ts';
import type { Length } from '../domain/units/length.ts';
import type { Reader } from '../store/database.ts';
import { figuresOf, type JobFigures } from './figures.ts';
import { bars } from './releases.ts';
import { type RunState, runStates } from './run-states.ts';

/** How far one run is, and what is in the way. */
export interface RunStanding {
  readonly id: string;
  readonly key: string;
  readonly level: string;
  readonly area: string | null;
  readonly side: string | null;
  readonly length: Length;
  /** 0 until the run is released. */
  readonly revision: number;
  /** The design has moved on since the last release. */
  readonly changed: boolean;
  readonly status: RunStatus;
  readonly open: readonly OpenPoint[];
  readonly planned: Tally;
  /** Pieces hung, joints accepted, hangers set, tap-offs checked. */
  readonly done: Tally;
  /** null without a labour book or a sound layout. */
  readonly hours: EarnedSum | null;
  /** What keeps the design, as it stands, from the floor. */
  readonly bars: readonly string[];
}

export interface Tally {
  readonly pieces: number;
  readonly joints: number;
  readonly supports: number;
  readonly taps: number;
}

export interface JobProgress {
  readonly figures: JobFigures;
  /** In document order. */
  readonly runs: readonly RunStanding[];
}

const KEPT = 4;
/** Whatever changes a job appends to its audit chain, so the progress of its last few readings is kept by each process. */
const kept = new Map<string, Promise<JobProgress>>();

/** How far every run of a job is. The caller has asked who is reading. */
export async function progressOf(reader: Reader, projectId: string): Promise<JobProgress> {
  const last = await reader.auditEntry.findFirst({
    where: { chain: projectId },
    orderBy: { seq: 'desc' },
    select: { seq: true, hash: true },
  });
  const key = `${projectId}@${last?.seq ?? 0} ${last?.hash ?? ''}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const reading = readProgress(reader, projectId);
  kept.set(key, reading);
  for (const old of [...kept.keys()].slice(0, Math.max(0, kept.size - KEPT))) kept.delete(old);
  reading.catch(() => kept.delete(key));
  return reading;
}

async function readProgress(reader: Reader, projectId: string): Promise<JobProgress> {
  const figures = await figuresOf(reader, projectId);
  const design = {
    runs: new Map(figures.job.runs.map((run) => [run.id, run])),
    layouts: new Map(figures.figures.layouts.map((layout) => [layout.run, layout])),
  };
  const budget = linesByRun(figures.figures.labour?.lines ?? []);
  const standings = (await runStates(reader, projectId, 'all', design)).flatMap((state) => {
    const run = design.runs.get(state.key);
    const layout = design.layouts.get(state.key);
    if (run === undefined || layout === undefined) return []; // made after the design was read: the next reading has it
    return [standingOf({ state, run, layout, budget: budget.get(state.key) ?? [] })];
  });
  return { figures, runs: standings };
}

interface Found {
  readonly state: RunState;
  readonly run: Run;
  readonly layout: RunLayout;
  readonly budget: readonly BudgetLine[];
}

function standingOf(found: Found): RunStanding {
  const { state, run, layout } = found;
  const { id, key, revision, changed, status, open } = state;
  const { pieces, joints, supports, taps } = state.things;
  return {
    id,
    key,
    level: run.level,
    area: run.area,
    side: run.side,
    length: layout.length,
    revision,
    changed,
    status,
    open,
    planned: { pieces: sum(pieces), joints: sum(joints), supports: sum(supports), taps: sum(taps, isThere) },
    done: {
      pieces: sum(pieces, isHung),
      joints: joints.accepted ?? 0,
      supports: sum(supports, (state) => state !== 'planned'),
      taps: (taps.checked ?? 0) + (taps['in-service'] ?? 0),
    },
    hours: found.budget.length === 0 ? null : earnedOf(found),
    bars: bars([...layout.findings].sort((a, b) => Number(b.severity === 'stop') - Number(a.severity === 'stop'))),
  };
}

function earnedOf({ state, run, budget }: Found): EarnedSum {
  const { things, card, test, lastWork, drops, ends, slot } = state;
  const budgetPieces = new Map<Activity, number>();
  for (const { activity, pieces } of budget)
    if (activity !== 'extra') budgetPieces.set(activity, (budgetPieces.get(activity) ?? 0) + pieces);
  const isTested = test?.verdict === 'pass' && !isStale(test.at, lastWork);
  const counts = stateCounts({
    run: run.id,
    pieces: things.byLength,
    joints: things.joints,
    supports: things.supports,
    taps: things.taps,
    drops: { supported: drops, of: Math.max(drops, budgetPieces.get('drop') ?? 0) },
    ends,
    slot,
    insulationTest: isTested ? 'done' : 'open',
    reported: card.reported,
    budgetPieces,
  });
  return earned(budget, counts).total;
}

function isThere(state: string): boolean {
  return state !== 'removed';
}

function sum(counts: Counts<string>, wanted: (state: string) => boolean = () => true): number {
  return Object.entries(counts).reduce((total, [state, count]) => (wanted(state) ? total + (count ?? 0) : total), 0);
}
