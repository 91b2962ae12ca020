import type { Steps } from './best-pattern.ts';
import { cuttingBound } from './cutting-bound.ts';

/** `sticks` as pieces of each size per stick; `impossible` is proven; `stopped` says nothing either way. */
export type CuttingSearch =
  | { readonly outcome: 'found'; readonly sticks: readonly (readonly number[])[] }
  | { readonly outcome: 'impossible' | 'stopped' };

/**
 * Whether `demand[i]` pieces of each `sizes[i]` (longest first) can be cut out of `target` sticks of `stock`. Complete:
 * the longest piece that is left must come out of some stick, so every pattern that holds it and takes no further piece is
 * tried, the linear relaxation's own patterns first, and a branch ends where the relaxation needs more sticks than
 * are left. Stops where `steps` run out.
 */
export function searchCuts(
  stock: number,
  sizes: readonly number[],
  demand: readonly number[],
  target: number,
  steps: Steps,
): CuttingSearch {
  const barred = new Map<string, number>();
  const chosen: (readonly number[])[] = [];

  function cut(left: readonly number[], sticks: number): 'found' | 'impossible' | 'stopped' {
    const longest = left.findIndex((count) => count > 0);
    if (longest < 0) return 'found';
    const key = left.join();
    if (sticks <= (barred.get(key) ?? 0)) return 'impossible';
    if (steps.left <= 0) return 'stopped';
    const relaxed = boundOf(stock, sizes, left, steps);
    if (relaxed.sticks <= sticks) {
      for (const pattern of patternsWith(longest, stock, sizes, left, relaxed.patterns, steps)) {
        chosen.push(pattern);
        const outcome = cut(
          left.map((count, i) => count - pattern[i]!),
          sticks - 1,
        );
        if (outcome !== 'impossible') return outcome;
        chosen.pop();
      }
    }
    if (steps.left <= 0) return 'stopped';
    barred.set(key, sticks);
    return 'impossible';
  }

  const outcome = cut(demand, target);
  return outcome === 'found' ? { outcome, sticks: chosen } : { outcome };
}

/** The bound over the sizes that are still wanted, written again over all sizes. */
function boundOf(stock: number, sizes: readonly number[], left: readonly number[], steps: Steps) {
  const wanted = left.flatMap((count, i) => (count > 0 ? [i] : []));
  const bound = cuttingBound(
    stock,
    wanted.map((i) => sizes[i]!),
    wanted.map((i) => left[i]!),
    steps,
  );
  const patterns = bound.patterns.map(({ counts }) => {
    const all = sizes.map(() => 0);
    wanted.forEach((size, i) => {
      all[size] = counts[i]!;
    });
    return all;
  });
  return { sticks: bound.sticks, patterns };
}

function* patternsWith(
  longest: number,
  stock: number,
  sizes: readonly number[],
  left: readonly number[],
  first: readonly (readonly number[])[],
  steps: Steps,
): Generator<readonly number[]> {
  for (const pattern of first) if (pattern[longest]! > 0) yield filledUp(pattern, stock, sizes, left);
  yield* fullPatterns(longest, stock, sizes, left, steps);
}

/** A pattern with what still fits added, longest pieces first: never worse than the pattern itself. */
function filledUp(pattern: readonly number[], stock: number, sizes: readonly number[], left: readonly number[]) {
  let room = stock - pattern.reduce((sum, count, i) => sum + count * sizes[i]!, 0);
  return pattern.map((count, i) => {
    const more = Math.min(left[i]! - count, Math.floor(room / sizes[i]!));
    room -= more * sizes[i]!;
    return count + more;
  });
}

/** Every pattern with at least one piece of size `longest` into which no further wanted piece fits. */
function* fullPatterns(
  longest: number,
  stock: number,
  sizes: readonly number[],
  left: readonly number[],
  steps: Steps,
): Generator<readonly number[]> {
  const counts: number[] = sizes.map(() => 0);
  function* from(size: number, room: number): Generator<readonly number[]> {
    if (steps.left <= 0) return;
    steps.left -= sizes.length;
    if (size === sizes.length) {
      const anotherFits = sizes.some((length, i) => counts[i]! < left[i]! && length <= room);
      if (!anotherFits) yield [...counts];
      return;
    }
    const least = size === longest ? 1 : 0;
    for (let count = Math.min(left[size]!, Math.floor(room / sizes[size]!)); count >= least; count--) {
      counts[size] = count;
      yield* from(size + 1, room - count * sizes[size]!);
    }
    counts[size] = 0;
  }
  yield* from(longest, stock);
}
