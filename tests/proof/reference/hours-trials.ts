import jStat from 'jstat';
import type { LabourLine } from '../../../src/domain/labour/result.ts';

/**
 * Total hours of a job in each trial, written plainly from the rules: for every trial one normal deviate for all and one for
 * each activity, the deviates themselves correlated as stated, and for every line the library's inverse of its own PERT-beta at the activity's
 * probability. No tables, no sums worked beforehand, another generator. Slow.
 */
export function plainTrials(
  lines: readonly LabourLine[],
  { correlation, seed, trials }: { readonly correlation: number; readonly seed: number; readonly trials: number },
): number[] {
  const uniform = generator(seed);
  const deviate = () => jStat.normal.inv(uniform(), 0, 1);
  const totals: number[] = [];
  for (let trial = 0; trial < trials; trial += 1) {
    const shared = deviate();
    const own = new Map<string, number>();
    let total = 0;
    for (const line of lines) {
      if (line.activity === 'extra') {
        total += line.hours;
        continue;
      }
      let probability = own.get(line.activity);
      if (probability === undefined) {
        const drawn = Math.sqrt(correlation) * shared + Math.sqrt(1 - correlation) * deviate();
        probability = jStat.normal.cdf(drawn, 0, 1);
        own.set(line.activity, probability);
      }
      const { low, likely, high } = line.base;
      const spread = high - low;
      const part =
        spread === 0
          ? 0
          : jStat.beta.inv(probability, 1 + (4 * (likely - low)) / spread, 1 + (4 * (high - likely)) / spread);
      total +=
        line.quantity * (low + part * spread) * line.conditionFactor * line.learningFactor * line.nonProductiveFactor;
    }
    totals.push(total);
  }
  return totals.sort((a, b) => a - b);
}

/** Park and Miller's minimal standard generator: 16807 x mod (2^31 - 1). Source: CACM 31 (1988). */
function generator(seed: number): () => number {
  let state = 1 + (Math.abs(seed * 7919) % 2_147_483_646);
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
