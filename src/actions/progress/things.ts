import type { PlacedPiece, RunLayout } from '../../domain/layout/result.ts';
import type { RunProgress } from '../../domain/progress/state-counts.ts';
import type { Counts, RunCounts } from '../../domain/quality/run-status.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../domain/quality/states.ts';
import type { PieceRow, StateRow } from '../../store/run-counts.ts';

/** The things of a run by their state; pieces also by kind and length, as the hours need them. */
export interface Things extends Pick<RunCounts, 'pieces' | 'joints' | 'supports'> {
  readonly taps: Counts<TapState>;
  readonly byLength: RunProgress['pieces'];
}

/** What a run that was never released would need: all of it is still planned. */
export function draftThings(layout: RunLayout): Things {
  return {
    pieces: { planned: layout.pieces.length },
    joints: { open: layout.joints.length },
    supports: { planned: layout.supports.length },
    taps: { planned: layout.taps.length },
    byLength: layout.pieces.map(({ kind, from, to }) => ({ kind, length: to - from, state: 'planned', count: 1 })),
  };
}

export interface ThingRows {
  readonly pieces: readonly PieceRow[];
  readonly joints: readonly StateRow[];
  readonly supports: readonly StateRow[];
  readonly taps: readonly StateRow[];
}

export function releasedThings({ pieces, joints, supports, taps }: ThingRows): Things {
  return {
    pieces: countsOf<PieceState>(pieces),
    joints: countsOf<JointState>(joints),
    supports: countsOf<SupportState>(supports),
    taps: countsOf<TapState>(taps),
    byLength: pieces.map(({ kind, length, state, count }) => ({
      kind: kind as PlacedPiece['kind'],
      length,
      state: state as PieceState,
      count,
    })),
  };
}

function countsOf<State extends string>(rows: readonly StateRow[]): Counts<State> {
  const counts: Partial<Record<string, number>> = {};
  for (const { state, count } of rows) counts[state] = (counts[state] ?? 0) + count;
  return counts as Counts<State>;
}

/** How many things stand in the wanted states; all of them by default. */
export function countIn(counts: Counts<string>, wanted: (state: string) => boolean = () => true): number {
  return Object.entries(counts).reduce((total, [state, count]) => (wanted(state) ? total + (count ?? 0) : total), 0);
}
