import type { RunLayout } from '../../../src/domain/layout/result.ts';
import type { Pair, RevisionDifference, TapAt } from '../../../src/domain/revision/difference.ts';
import type { StripRecord } from '../../drawings/strip.tsx';

const STAYS = { ink: 'thin', word: 'stays' } as const;
const COMES = { ink: 'diagonal', word: 'comes' } as const;
const LEAVES = { ink: 'struck', word: 'leaves' } as const;
const MOVES = { ink: 'half', word: 'moves' } as const;
const CHANGES = { ink: 'half', word: 'changes' } as const;

type Change = typeof STAYS | typeof COMES | typeof LEAVES | typeof MOVES | typeof CHANGES;
const SIGN: Readonly<Record<Change['word'], string>> = { stays: '', comes: '+', leaves: '−', moves: '→', changes: '±' };

/** How the strip of one side of a comparison is inked: every thing by what the revision does to it, with a sign before its mark. */
export function changeRecord(
  layout: RunLayout,
  difference: RevisionDifference,
  side: keyof Pair<unknown>,
): StripRecord {
  const { pieces, joints, supports, taps } = difference;
  const away = side === 'before' ? LEAVES : COMES;
  const lone = side === 'before' ? 'removed' : 'added';
  const indexed = <T extends { readonly index: number }>(
    list: { readonly added: readonly T[]; readonly removed: readonly T[]; readonly moved: readonly Pair<T>[] },
    replaced: readonly Pair<T>[] = [],
  ) =>
    new Map<number, Change>([
      ...list[lone].map((thing) => [thing.index, away] as const),
      ...replaced.map((pair) => [pair[side].index, away] as const),
      ...list.moved.map((pair) => [pair[side].index, MOVES] as const),
    ]);
  const tapChanges = new Map<string, Change>([
    ...taps.changed.map((pair) => [idOf(pair[side]), CHANGES] as const),
    ...taps.moved.map((pair) => [idOf(pair[side]), MOVES] as const),
    ...taps[lone].map((tap) => [idOf(tap), away] as const),
  ]);
  return {
    pieces: items(layout.pieces.length, 'P', 'planned', indexed(pieces, pieces.replaced)),
    joints: items(layout.joints.length, 'J', 'open', indexed(joints)),
    supports: items(layout.supports.length, 'H', 'planned', indexed(supports)),
    taps: Object.fromEntries(
      layout.taps.map(({ id }) => {
        const change = tapChanges.get(id) ?? STAYS;
        return [id, { mark: `${SIGN[change.word]}${id}`, state: 'planned' as const, change }];
      }),
    ),
  };
}

function items<State>(count: number, letter: string, state: State, changes: ReadonlyMap<number, Change>) {
  return Array.from({ length: count }, (_, index) => {
    const change = changes.get(index) ?? STAYS;
    return { mark: `${SIGN[change.word]}${letter}${String(index + 1).padStart(2, '0')}`, state, change };
  });
}

function idOf({ tap }: TapAt): string {
  return tap.id;
}
