import type { Length } from '../units/length.ts';
import { bestPattern, type Steps } from './best-pattern.ts';
import { type CuttingBound, cuttingBound } from './cutting-bound.ts';
import { searchCuts } from './cutting-search.ts';

export interface CutPieces {
  readonly length: Length;
  readonly count: number;
}

/** How many sticks to buy and how to cut them. `proven` false: the search stopped, and fewer than `least` is impossible. */
export interface CuttingPlan {
  readonly stock: Length;
  readonly sticks: number;
  readonly least: number;
  readonly proven: boolean;
  readonly patterns: readonly { readonly times: number; readonly pieces: readonly CutPieces[] }[];
  /** What is bought and not used, over all sticks. The saw's own cut is not counted. */
  readonly waste: Length;
}

/** Steps of the exact search: less than a second. A job with a few rod lengths takes a few hundred. */
const MOST_STEPS = 20_000_000;
const GREEDY_STEPS = 2_000;

/**
 * The fewest sticks of `stock` that yield all `pieces`. Pieces of one length: floor division. Several lengths: exact
 * one-dimensional cutting stock; where the search has to stop, the plan says so and gives its proven lower bound.
 * A piece longer than the stock, or not longer than nothing, is the caller's mistake (RangeError).
 *
 * Source: Gilmore & Gomory (1961) for the bound; values of Chvatal (1983) and of the AMPL book in the tests.
 * Example: 12 rods of 6.75 ft out of 10 ft stock take 12 sticks, where 81 / 10 would suggest 9.
 */
export function planCuts(stock: Length, pieces: readonly CutPieces[], mostSteps = MOST_STEPS): CuttingPlan {
  const wanted = mergeLengths(pieces);
  for (const { length } of wanted) {
    if (!(length > 0 && length <= stock)) throw new RangeError(`a piece of ${length} cannot be cut from ${stock}`);
  }
  const sizes = wanted.map((piece) => piece.length);
  const demand = wanted.map((piece) => piece.count);
  if (sizes.length === 0) return describe(stock, sizes, [], 0, true);
  const greedy = greedyCuts(stock, sizes, demand);
  if (sizes.length === 1) return describe(stock, sizes, greedy, greedy.length, true);
  return improve(stock, sizes, demand, greedy, mostSteps);
}

/** Tries every number of sticks from the proven least up to the best plan known; the first that works is the optimum. */
function improve(
  stock: Length,
  sizes: readonly Length[],
  demand: readonly number[],
  greedy: Sticks,
  mostSteps: number,
): CuttingPlan {
  const steps: Steps = { left: mostSteps };
  const bound = cuttingBound(stock, sizes, demand, steps);
  const whole = wholeSticks(bound);
  const left = demand.map((count, i) => count - whole.reduce((sum, stick) => sum + stick[i]!, 0));
  const rounded = [...whole, ...greedyCuts(stock, sizes, left)];
  const known = rounded.length < greedy.length ? rounded : greedy;
  for (let target = bound.sticks; target < known.length; target++) {
    const rest = searchCuts(stock, sizes, left, target - whole.length, steps);
    if (rest.outcome === 'found') return describe(stock, sizes, [...whole, ...rest.sticks], target, true);
    const search = searchCuts(stock, sizes, demand, target, steps);
    if (search.outcome === 'found') return describe(stock, sizes, search.sticks, target, true);
    if (search.outcome === 'stopped') return describe(stock, sizes, known, target, false);
  }
  return describe(stock, sizes, known, known.length, true);
}

type Sticks = readonly (readonly number[])[];

/** What the relaxation cuts in whole sticks; the few pieces that remain are left to the exact search. */
function wholeSticks({ patterns }: CuttingBound): Sticks {
  return patterns.flatMap(({ counts, times }) => Array.from({ length: Math.floor(times + 1e-9) }, () => counts));
}

/** Fills one stick after another as full as it can be. */
function greedyCuts(stock: Length, sizes: readonly Length[], demand: readonly number[]): Sticks {
  const left = [...demand];
  const sticks: (readonly number[])[] = [];
  while (left.some((count) => count > 0)) {
    const { counts } = bestPattern(stock, sizes, left, sizes, { left: GREEDY_STEPS });
    const times = Math.min(...counts.flatMap((count, i) => (count > 0 ? [Math.floor(left[i]! / count)] : [])));
    for (let i = 0; i < counts.length; i++) left[i] = left[i]! - times * counts[i]!;
    for (let i = 0; i < times; i++) sticks.push(counts);
  }
  return sticks;
}

function mergeLengths(pieces: readonly CutPieces[]): CutPieces[] {
  const counts = new Map<Length, number>();
  for (const { length, count } of pieces) if (count > 0) counts.set(length, (counts.get(length) ?? 0) + count);
  return [...counts].map(([length, count]) => ({ length, count })).sort((a, b) => b.length - a.length);
}

function describe(
  stock: Length,
  sizes: readonly Length[],
  sticks: Sticks,
  least: number,
  proven: boolean,
): CuttingPlan {
  const times = new Map<string, { counts: readonly number[]; times: number }>();
  for (const counts of sticks) {
    const key = counts.join();
    times.set(key, { counts, times: (times.get(key)?.times ?? 0) + 1 });
  }
  const used = sticks.reduce((sum, counts) => sum + counts.reduce((part, count, i) => part + count * sizes[i]!, 0), 0);
  const patterns = [...times.values()].map((pattern) => ({
    times: pattern.times,
    pieces: pattern.counts.flatMap((count, i) => (count > 0 ? [{ length: sizes[i]!, count }] : [])),
  }));
  return { stock, sticks: sticks.length, least, proven, patterns, waste: sticks.length * stock - used };
}
