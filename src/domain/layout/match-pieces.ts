import { FEED, piecesAtJoints } from './pieces-at-joints.ts';
import type { PlacedPiece, PlacedSupport, RunLayout } from './result.ts';

/** What stays itself from one revision to the next, by places in the old and the new list; the rest goes or is new. */
export interface Match {
  /** `[old, new]`, ascending in both. */
  readonly kept: readonly (readonly [number, number])[];
  readonly removed: readonly number[];
  readonly added: readonly number[];
}

/**
 * Which pieces stay the same piece: equal in kind, length and hand, matched in order by a longest common subsequence, and of
 * several longest the one whose pieces move least in all. A record never moves to another piece.
 */
export function matchPieces(before: readonly PlacedPiece[], after: readonly PlacedPiece[]): Match {
  const away = (i: number, j: number) => Math.abs((before[i]?.from ?? 0) - (after[j]?.from ?? 0));
  const kept = longestCommon(before.length, after.length, (i, j) => isSame(before[i], after[j]), away);
  return matchOf(kept, before.length, after.length);
}

/**
 * The pieces of one layout that stay themselves in the next. None does where the run is turned over, its tap-offs to face the
 * other side: whatever hangs comes down, so what was recorded of its hanging holds no longer. A turn of the whole route does
 * not count: the run faces the same side of its own way.
 */
export function matchLayouts(
  before: Pick<RunLayout, 'pieces' | 'facing'>,
  after: Pick<RunLayout, 'pieces' | 'facing'>,
): Match {
  if (isTurnedOver(before, after)) return matchOf([], before.pieces.length, after.pieces.length);
  return matchPieces(before.pieces, after.pieces);
}

/** True when the tap-offs of the first leg face the other side of the way. */
export function isTurnedOver(before: Pick<RunLayout, 'facing'>, after: Pick<RunLayout, 'facing'>): boolean {
  const [was, is] = [before.facing[0]?.relative, after.facing[0]?.relative];
  return was !== undefined && is !== undefined && was !== is;
}

/** A joint stays the joint while both pieces that it joins stay and still meet; the feed counts as one that always stays. */
export function matchJoints(
  before: Pick<RunLayout, 'pieces' | 'joints'>,
  after: Pick<RunLayout, 'pieces' | 'joints'>,
  pieces: Match,
): Match {
  const renewed = new Map(pieces.kept);
  const now = new Map(
    piecesAtJoints(after.pieces, after.joints).map(({ left, right }, index) => [`${left} ${right}`, index]),
  );
  const kept = piecesAtJoints(before.pieces, before.joints).flatMap(({ left, right }, index): [number, number][] => {
    const name = [left, right].map((piece) => (piece === FEED ? FEED : renewed.get(piece)));
    const found = name.includes(undefined) ? undefined : now.get(name.join(' '));
    return found === undefined ? [] : [[index, found]];
  });
  return matchOf(kept, before.joints.length, after.joints.length);
}

/** A support stays the support while its distance is equal. */
export function matchSupports(
  before: readonly Pick<PlacedSupport, 'at'>[],
  after: readonly Pick<PlacedSupport, 'at'>[],
): Match {
  const kept = longestCommon(
    before.length,
    after.length,
    (i, j) => before[i]?.at === after[j]?.at,
    () => 0,
  );
  return matchOf(kept, before.length, after.length);
}

type Pairs = [number, number][];

/** Longest common subsequence, of equal length the least total distance; the table holds both, from each place to the end. */
function longestCommon(
  rows: number,
  columns: number,
  isEqual: (row: number, column: number) => boolean,
  away: (row: number, column: number) => number,
): Pairs {
  const width = columns + 1;
  const length = new Int32Array((rows + 1) * width);
  const distance = new Float64Array((rows + 1) * width);
  const took = new Uint8Array((rows + 1) * width);
  const offer = (cell: number, from: number, more: number, far: number, step: number) => {
    const difference = length[from]! + more - length[cell]!;
    if (difference < 0 || (difference === 0 && distance[from]! + far >= distance[cell]!)) return;
    length[cell] = length[from]! + more;
    distance[cell] = distance[from]! + far;
    took[cell] = step;
  };
  for (let row = rows - 1; row >= 0; row--) {
    for (let column = columns - 1; column >= 0; column--) {
      const cell = row * width + column;
      distance[cell] = Number.POSITIVE_INFINITY;
      if (isEqual(row, column)) offer(cell, cell + width + 1, 1, away(row, column), PAIR);
      offer(cell, cell + width, 0, 0, SKIP_ROW);
      offer(cell, cell + 1, 0, 0, SKIP_COLUMN);
    }
  }
  return walked(rows, columns, took);
}

const PAIR = 1;
const SKIP_ROW = 2;
const SKIP_COLUMN = 3;

function walked(rows: number, columns: number, took: Uint8Array): Pairs {
  const pairs: Pairs = [];
  for (let row = 0, column = 0; row < rows && column < columns; ) {
    const step = took[row * (columns + 1) + column];
    if (step === PAIR) pairs.push([row, column]);
    if (step !== SKIP_COLUMN) row++;
    if (step !== SKIP_ROW) column++;
  }
  return pairs;
}

function isSame(a: PlacedPiece | undefined, b: PlacedPiece | undefined): boolean {
  if (a === undefined || b === undefined) return false;
  return a.kind === b.kind && a.hand === b.hand && a.to - a.from === b.to - b.from;
}

function matchOf(kept: Pairs, before: number, after: number): Match {
  const gone = new Set(kept.map(([old]) => old));
  const come = new Set(kept.map(([, next]) => next));
  const places = (count: number, taken: ReadonlySet<number>) =>
    Array.from({ length: count }, (_, place) => place).filter((place) => !taken.has(place));
  return { kept, removed: places(before, gone), added: places(after, come) };
}
