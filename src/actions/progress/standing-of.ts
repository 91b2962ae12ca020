import type { Activity } from '../../domain/labour/result.ts';
import type { RunLayout } from '../../domain/layout/result.ts';
import type { Run } from '../../domain/model.ts';
import { type BudgetLine, type EarnedSum, earned } from '../../domain/progress/earned.ts';
import { type RunProgress, stateCounts } from '../../domain/progress/state-counts.ts';
import type { RunCard } from '../../domain/quality/end-card.ts';
import type { Verdict } from '../../domain/quality/insulation/verdict.ts';
import { runStatus } from '../../domain/quality/run-status.ts';
import { isStale } from '../../domain/quality/stale.ts';
import { isHung } from '../../domain/quality/states.ts';
import { bars } from '../releases.ts';
import type { RunStanding } from './standing.ts';
import { countIn, type Things } from './things.ts';

/** Everything that the record and the design say of one run. */
export interface FoundRun {
  readonly row: { readonly id: string; readonly key: string; readonly revision: number; readonly changed: boolean };
  readonly run: Run;
  readonly layout: RunLayout;
  readonly things: Things;
  readonly card: RunCard;
  /** The newest standing insulation test. */
  readonly test: { readonly verdict: Verdict; readonly at: string } | null;
  /** The last work in the run's boundary that makes an older test stale. */
  readonly lastWork: string | null;
  /** Tap-offs whose drop is supported. */
  readonly drops: number;
  readonly budget: readonly BudgetLine[];
}

export function standingOf(found: FoundRun): RunStanding {
  const { row, run, layout, things, card, test, lastWork } = found;
  const { pieces, joints, supports, taps } = things;
  const { ends, slot } = closuresOf(card);
  const { status, open } = runStatus({ ...things, ends, slot, test, lastWork });
  return {
    id: row.id,
    key: row.key,
    level: run.level,
    area: run.area,
    side: run.side,
    length: layout.length,
    revision: row.revision,
    changed: row.changed,
    status,
    open,
    planned: {
      pieces: countIn(pieces),
      joints: countIn(joints),
      supports: countIn(supports),
      taps: countIn(taps, (state) => state !== 'removed'),
    },
    done: {
      pieces: countIn(pieces, isHung),
      joints: joints.accepted ?? 0,
      supports: countIn(supports, (state) => state !== 'planned'),
      taps: (taps.checked ?? 0) + (taps['in-service'] ?? 0),
    },
    hours: found.budget.length === 0 ? null : earnedOf(found),
    bars: bars([...layout.findings].sort((a, b) => Number(b.severity === 'stop') - Number(a.severity === 'stop'))),
  };
}

function closuresOf(card: RunCard): Pick<RunProgress, 'ends' | 'slot'> {
  const closed = card.ends.filter((end) => end.closed !== null).length;
  return { ends: { open: card.ends.length - closed, closed }, slot: card.slot === null ? 'open' : 'closed' };
}

function earnedOf({ run, things, card, test, lastWork, budget, drops }: FoundRun): EarnedSum {
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
    ...closuresOf(card),
    insulationTest: isTested ? 'done' : 'open',
    reported: card.reported,
    budgetPieces,
  });
  return earned(budget, counts).total;
}
