import type { Finding } from '../../domain/finding.ts';
import type { Activity } from '../../domain/labour/result.ts';
import type { RunLayout } from '../../domain/layout/result.ts';
import type { Run } from '../../domain/model.ts';
import { type BudgetLine, type EarnedSum, earned } from '../../domain/progress/earned.ts';
import { stateCounts } from '../../domain/progress/state-counts.ts';
import { isStale } from '../../domain/quality/stale.ts';
import { isHung } from '../../domain/quality/states.ts';
import { bars } from '../releases.ts';
import type { RunState } from '../run-states.ts';
import type { RunStanding } from './standing.ts';
import { countIn } from './things.ts';

/** What the record and the design say of one run. */
interface FoundRun {
  readonly state: RunState;
  readonly run: Run;
  readonly layout: RunLayout;
  readonly budget: readonly BudgetLine[];
  /** What other runs have to do with: `faceOffsOf`. */
  readonly faceOffs: readonly Finding[];
}

export function standingOf(found: FoundRun): RunStanding {
  const { state, run, layout, faceOffs } = found;
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
    bars: bars(
      [...layout.findings, ...faceOffs].sort((a, b) => Number(b.severity === 'stop') - Number(a.severity === 'stop')),
    ),
  };
}

function earnedOf({ state, run, budget }: FoundRun): EarnedSum {
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
