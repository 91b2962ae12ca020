import type { LabourBook } from '../model.ts';
import { pertBetaVariance, pertMean } from './pert.ts';
import type { Activity, LabourLine, LabourRange } from './result.ts';
import { simulateHours, weightOf } from './simulate-hours.ts';

type RangeSettings = Pick<LabourBook, 'correlation' | 'seed' | 'trials'>;

/**
 * The range of the total hours. `mean` and `sd` are worked in closed form: within an activity everything moves together,
 * so standard deviations add; between activities the variance is sum-sum rho sigma sigma. P10 to P90 come from the
 * trials of `simulateHours`. `likely` is the sum of the lines' likely hours, which is less than the mean when
 * estimates lean towards high.
 */
export function hoursRange(lines: readonly LabourLine[], settings: RangeSettings): LabourRange {
  const totals = simulateHours(lines, settings);
  return {
    likely: lines.reduce((sum, line) => sum + line.hours, 0),
    mean: lines.reduce((sum, line) => sum + weightOf(line) * pertMean(line.base), 0),
    sd: Math.sqrt(varianceOf([...activitySpread(lines).values()], settings.correlation)),
    p10: percentile(totals, 0.1),
    p50: percentile(totals, 0.5),
    p80: percentile(totals, 0.8),
    p90: percentile(totals, 0.9),
  };
}

/** Standard deviation of each activity's hours, by activity. Hours added by hand are certain and have none. */
export function activitySpread(lines: readonly LabourLine[]): ReadonlyMap<Activity, number> {
  const spread = new Map<Activity, number>();
  const deviations = new Map<LabourLine['base'], number>();
  for (const line of lines) {
    if (line.activity === 'extra') continue;
    const known = deviations.get(line.base);
    const deviation = known ?? Math.sqrt(pertBetaVariance(line.base));
    if (known === undefined) deviations.set(line.base, deviation);
    spread.set(line.activity, (spread.get(line.activity) ?? 0) + weightOf(line) * deviation);
  }
  return spread;
}

/** Which activities drive the spread: each one's share of the variance of the total, greatest first; shares sum to 1. */
export function spreadShares(
  lines: readonly LabourLine[],
  correlation: number,
): readonly { readonly activity: Activity; readonly share: number }[] {
  const spread = [...activitySpread(lines)];
  const sds = spread.map(([, sd]) => sd);
  const sum = sds.reduce((total, sd) => total + sd, 0);
  const variance = varianceOf(sds, correlation);
  return spread
    .map(([activity, sd]) => {
      const withAll = (1 - correlation) * sd * sd + correlation * sd * sum;
      return { activity, share: variance > 0 ? withAll / variance : 0 };
    })
    .sort((a, b) => b.share - a.share);
}

/** Sum-sum rho sigma sigma with one correlation between all: (1 - rho) sum(sd^2) + rho (sum sd)^2. */
function varianceOf(sds: readonly number[], correlation: number): number {
  const squares = sds.reduce((sum, sd) => sum + sd * sd, 0);
  const sum = sds.reduce((total, sd) => total + sd, 0);
  return (1 - correlation) * squares + correlation * sum * sum;
}

/** The value that a part `p` of the sorted totals stays below, between neighbours on a straight line. */
export function percentile(sorted: Float64Array, p: number): number {
  const place = p * (sorted.length - 1);
  const below = Math.floor(place);
  const left = sorted[below] ?? 0;
  const right = sorted[below + 1] ?? left;
  return left + (place - below) * (right - left);
}
