import { xoroshiro128plus } from 'pure-rand/generator/XoroShiro';
import type { LabourBook } from '../model.ts';
import { quantileTable, readTable, TABLE_NODES } from './quantile-table.ts';
import type { LabourLine } from './result.ts';

/**
 * Total hours in each trial, least first. A trial draws once per activity, so that all joints of the job turn out well or
 * badly together, and the draws of two activities have the book's correlation (a Gaussian copula: one common and one own
 * normal deviate). Hours added by hand are certain. The same lines, seed and trials always give the same totals.
 *
 * Source: PERT-beta and the equicorrelated Gaussian copula, as in handbooks of cost-risk analysis.
 */
export function simulateHours(lines: readonly LabourLine[], settings: Settings): Float64Array {
  const { correlation, seed, trials } = settings;
  const key = `${correlation} ${seed} ${trials}`;
  const known = worked.get(lines);
  if (known?.key === key) return known.totals;
  const totals = runTrials(lines, settings);
  worked.set(lines, { key, totals });
  return totals;
}

type Settings = Pick<LabourBook, 'correlation' | 'seed' | 'trials'>;

/** The range, the contingency of a bid and the picture ask for the same trials of the same lines: they are run once. */
const worked = new WeakMap<readonly LabourLine[], { readonly key: string; readonly totals: Float64Array }>();

function runTrials(lines: readonly LabourLine[], { correlation, seed, trials }: Settings): Float64Array {
  const tables = activityTables(lines);
  const certain = lines.filter((line) => line.activity === 'extra').reduce((sum, line) => sum + line.hours, 0);
  const common = Math.sqrt(correlation);
  const own = Math.sqrt(1 - correlation);
  const deviate = normalDeviates(seed);
  const totals = new Float64Array(trials);
  for (let trial = 0; trial < trials; trial++) {
    const shared = common * deviate();
    let total = certain;
    for (const table of tables) total += readTable(table, shared + own * deviate());
    totals[trial] = total;
  }
  return totals.sort();
}

/** One table of hours per activity: its lines' quantile tables, each weighted by what the line multiplies its base with. */
function activityTables(lines: readonly LabourLine[]): readonly Float64Array[] {
  const shapes = new Map<number, Float64Array>();
  return [...weightsByBase(lines).values()].map((weights) => {
    const table = new Float64Array(TABLE_NODES);
    for (const { base, weight } of weights.values()) {
      const quantiles = quantileTable(base, shapes);
      for (let i = 0; i < TABLE_NODES; i++) table[i] = table[i]! + weight * quantiles[i]!;
    }
    return table;
  });
}

type Weights = Map<string, { readonly base: LabourLine['base']; weight: number }>;

function weightsByBase(lines: readonly LabourLine[]): ReadonlyMap<string, Weights> {
  const activities = new Map<string, Weights>();
  for (const line of lines) {
    if (line.activity === 'extra') continue;
    const weights = activities.get(line.activity) ?? new Map();
    activities.set(line.activity, weights);
    const key = `${line.base.low} ${line.base.likely} ${line.base.high}`;
    weights.set(key, { base: line.base, weight: (weights.get(key)?.weight ?? 0) + weightOf(line) });
  }
  return activities;
}

/** What one base hour of the line becomes. */
export function weightOf(line: LabourLine): number {
  return line.quantity * line.conditionFactor * line.learningFactor * line.nonProductiveFactor;
}

/** Standard normal deviates by Box and Muller, two from each pair of uniform numbers. */
function normalDeviates(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  const uniform = () => ((generator.unsafeNext() >>> 0) + 0.5) / 2 ** 32;
  // Seeds that lie close together start alike; the first numbers are thrown away.
  for (let i = 0; i < 64; i++) generator.unsafeNext();
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const deviate = spare;
      spare = null;
      return deviate;
    }
    const radius = Math.sqrt(-2 * Math.log(uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
