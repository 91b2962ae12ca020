import { unsafeUniformIntDistribution } from 'pure-rand/distribution/UnsafeUniformIntDistribution';
import { xoroshiro128plus } from 'pure-rand/generator/XoroShiro';

/** Seeded choices: the same seed and instance give the same ones. */
export interface Dice {
  /** A whole number from `low` to `high`, both included. */
  readonly int: (low: number, high: number) => number;
  /** True in so many of a hundred. */
  readonly chance: (percent: number) => boolean;
  readonly pick: <T>(list: readonly T[]) => T;
}

const GOLDEN = 0x9e3779b1;

/** Dice for one instance of a proof, so that an instance can be looked at without those before it. */
export function dice(seed: number, instance: number): Dice {
  const rng = xoroshiro128plus((seed ^ Math.imul(instance + 1, GOLDEN)) | 0);
  const int = (low: number, high: number) => unsafeUniformIntDistribution(low, high, rng);
  return {
    int,
    chance: (percent) => int(1, 100) <= percent,
    pick: (list) => list[int(0, list.length - 1)]!,
  };
}
