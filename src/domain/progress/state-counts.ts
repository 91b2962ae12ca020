import type { Activity } from '../labour/result.ts';
import type { PlacedPiece } from '../layout/result.ts';
import type { ReportedActivity } from '../quality/record.ts';
import type { Counts } from '../quality/run-status.ts';
import type { JointState, PieceState, SupportState, TapState } from '../quality/states.ts';
import type { Length } from '../units/length.ts';
import type { StateCount } from './earned.ts';

/** One run's progress as grouped counts, from its rows and its run card. */
export interface RunProgress {
  readonly run: string;
  readonly pieces: readonly {
    readonly kind: PlacedPiece['kind'];
    readonly length: Length;
    readonly state: PieceState;
    readonly count: number;
  }[];
  readonly joints: Counts<JointState>;
  readonly supports: Counts<SupportState>;
  readonly taps: Counts<TapState>;
  readonly drops: { readonly supported: number; readonly of: number };
  readonly ends: { readonly open: number; readonly closed: number };
  readonly slot: 'open' | 'closed';
  /** `done`: the newest insulation test passes and is not stale. */
  readonly insulationTest: 'open' | 'done';
  readonly reported: ReadonlyMap<ReportedActivity, number | 'all'>;
  /** Pieces of work in each activity of the run's budget: what "all of it" comes to. */
  readonly budgetPieces: ReadonlyMap<Activity, number>;
}

/** The counts that `earned` sets against the budget. What nobody reported gives no count at all, so that it stays unknown. */
export function stateCounts(progress: RunProgress): readonly StateCount[] {
  const { run, joints, supports, taps, drops, ends, slot, insulationTest } = progress;
  const counts: StateCount[] = progress.pieces.flatMap((piece) => pieceCounts(run, piece));
  const add = (activity: Activity, states: Counts<string>) => counts.push(...countsOf(run, activity, states));
  add('joint', joints);
  add('support', supports);
  add('tap', taps);
  add('handle-tap', taps);
  add('drop', { done: drops.supported, open: drops.of - drops.supported });
  add('end-cap', { done: ends.closed, open: ends.open });
  add('slot-closure', { [slot === 'closed' ? 'done' : 'open']: 1 });
  add('test-insulation', { [insulationTest]: 1 });
  for (const [activity, reported] of progress.reported) add(activity, reportedCounts(progress, activity, reported));
  return counts;
}

function pieceCounts(run: string, { kind, length, state, count }: RunProgress['pieces'][number]): StateCount[] {
  if (kind === 'elbow' || kind === 'tee') return [{ run, activity: kind, length: null, state, count }];
  return [
    { run, activity: 'section', length, state, count },
    { run, activity: 'handle-section', length, state, count },
  ];
}

function countsOf(run: string, activity: Activity, states: Counts<string>): StateCount[] {
  return Object.entries(states).flatMap(([state, count]) =>
    count ? [{ run, activity, length: null, state, count }] : [],
  );
}

function reportedCounts(
  { budgetPieces }: RunProgress,
  activity: ReportedActivity,
  reported: number | 'all',
): Counts<string> {
  const total = budgetPieces.get(activity) ?? 0;
  const done = reported === 'all' ? total : Math.min(reported, total);
  return { done, open: total - done };
}
