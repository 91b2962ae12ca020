import type { Prepared, Timed } from './bench.ts';

export interface Ratio {
  readonly median: number;
  /** Half of the rounds lie between these. */
  readonly low: number;
  readonly high: number;
  readonly rounds: number;
  /** Median time of what was measured, ms. */
  readonly took: number;
}

/** Too short a time to read off a shared machine's clock: quicker work is repeated until it takes this long, ms. */
const LEAST_MS = 20;

/**
 * Measures both kinds of work in turns, so that a busy moment of the machine strikes both, and gives the ratio of each
 * round's times. One round before is not counted: it warms both up.
 */
export async function compare(work: Prepared | Timed, rounds: number): Promise<Ratio> {
  const ratios: number[] = [];
  const times: number[] = [];
  for (let round = 0; round <= rounds; round += 1) {
    const { measured, baseline } = 'round' in work ? await work.round() : await timesOf(work);
    if (round === 0) continue;
    ratios.push(measured / baseline);
    times.push(measured);
  }
  return {
    median: quantile(ratios, 0.5),
    low: quantile(ratios, 0.25),
    high: quantile(ratios, 0.75),
    rounds,
    took: quantile(times, 0.5),
  };
}

async function timesOf({ measured, baseline, between }: Prepared) {
  return { measured: await timeOf(measured, between), baseline: await timeOf(baseline, between) };
}

async function timeOf(work: () => unknown, between: Prepared['between']): Promise<number> {
  if (between !== undefined) {
    await between();
    return timed(work, 1);
  }
  for (let times = 1; ; times *= 2) {
    const took = await timed(work, times);
    if (took >= LEAST_MS) return took / times;
  }
}

async function timed(work: () => unknown, times: number): Promise<number> {
  const began = performance.now();
  for (let i = 0; i < times; i += 1) await work();
  return performance.now() - began;
}

/** By straight line between the neighbours. `quantile([1, 2, 4], 0.75) = 3`. */
export function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const place = part * (sorted.length - 1);
  const below = sorted[Math.floor(place)]!;
  const above = sorted[Math.ceil(place)]!;
  return below + (above - below) * (place - Math.floor(place));
}
