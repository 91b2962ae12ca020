import type { Length } from '../units/length.ts';
import type { RunEnd } from './record.ts';
import { isHung, type JointState, type PieceState, type SupportState, type TapState } from './states.ts';

/** How the things of one run stand, in order from the feed. */
export interface RunThings {
  readonly supports: readonly { readonly state: SupportState }[];
  readonly pieces: readonly { readonly state: PieceState; readonly from: Length; readonly to: Length }[];
  readonly joints: readonly { readonly state: JointState; readonly at: Length }[];
  readonly taps: readonly { readonly state: TapState; readonly at: Length }[];
  readonly openEnds: readonly RunEnd[];
  readonly slot: 'open' | 'closed';
  /** `due`: none yet, none that passed, or work was done since. */
  readonly test: 'due' | 'passed';
}

/** What is to be done with one thing: the `index`-th of its list. `ready` is false while something else comes first. */
export type Todo =
  | { readonly doing: 'set-hanger'; readonly index: number; readonly ready: true }
  | { readonly doing: 'hang-piece'; readonly index: number; readonly ready: true }
  | { readonly doing: 'make-joint'; readonly index: number; readonly ready: boolean }
  | { readonly doing: 'accept-joint'; readonly index: number; readonly ready: true }
  | { readonly doing: 'close-end'; readonly end: RunEnd; readonly ready: boolean }
  | { readonly doing: 'close-slot'; readonly ready: boolean }
  | { readonly doing: 'set-tap'; readonly index: number; readonly ready: boolean }
  | { readonly doing: 'check-tap'; readonly index: number; readonly ready: true }
  | { readonly doing: 'test-insulation'; readonly ready: boolean };

/**
 * Everything that is left to do on a run, in working order: hangers, pieces, joints, ends, slot, tap-offs, tests. A joint
 * waits for the pieces beside it, a tap-off for the piece that carries it, the slot for the joints, and the test for all of it.
 * A piece in quarantine is nobody's next step and holds up what touches it. Nothing here permits work on anything energised.
 */
export function workList(things: RunThings): readonly Todo[] {
  const { supports, pieces, joints, taps, openEnds, slot, test } = things;
  const isUp = (at: Length) => beside(pieces, at).every(({ state }) => isHung(state));
  const build: Todo[] = [
    ...supports.flatMap(({ state }, index): Todo[] =>
      state === 'planned' ? [{ doing: 'set-hanger', index, ready: true }] : [],
    ),
    ...pieces.flatMap(({ state }, index): Todo[] =>
      state === 'planned' || state === 'on-site' ? [{ doing: 'hang-piece', index, ready: true }] : [],
    ),
    ...joints.flatMap(({ state, at }, index): Todo[] => jointTodo(state, index, isUp(at))),
    ...openEnds.map((end): Todo => ({ doing: 'close-end', end, ready: isHung(pieceAtEnd(pieces, end) ?? 'planned') })),
    ...(slot === 'open'
      ? [{ doing: 'close-slot' as const, ready: joints.every(({ state }) => state === 'accepted') }]
      : []),
    ...taps.flatMap(({ state, at }, index): Todo[] => tapTodo(state, index, isUp(at))),
  ];
  const isHeld = pieces.some(({ state }) => state === 'quarantined');
  const tests: Todo[] = test === 'due' ? [{ doing: 'test-insulation', ready: build.length === 0 && !isHeld }] : [];
  return [...build, ...tests];
}

/** What can be begun now, the first of the list that waits for nothing; null when nothing can. */
export function nextTodo(list: readonly Todo[]): Todo | null {
  return list.find(({ ready }) => ready) ?? null;
}

function jointTodo(state: JointState, index: number, ready: boolean): Todo[] {
  if (state === 'accepted') return [];
  return state === 'closed' ? [{ doing: 'accept-joint', index, ready: true }] : [{ doing: 'make-joint', index, ready }];
}

function tapTodo(state: TapState, index: number, ready: boolean): Todo[] {
  if (state === 'planned' || state === 'on-site') return [{ doing: 'set-tap', index, ready }];
  return state === 'set' ? [{ doing: 'check-tap', index, ready: true }] : [];
}

/** The pieces that reach to this distance: two at a joint, one elsewhere. */
function beside(pieces: RunThings['pieces'], at: Length): RunThings['pieces'] {
  return pieces.filter(({ from, to }) => from <= at && at <= to);
}

function pieceAtEnd(pieces: RunThings['pieces'], end: RunEnd): PieceState | undefined {
  return (end === 'near' ? pieces[0] : pieces.at(-1))?.state;
}
