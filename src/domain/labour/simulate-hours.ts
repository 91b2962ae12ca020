import jStat from 'jstat';
import { xoroshiro128plus } from 'pure-rand/generator/XoroShiro';
import type { LabourBook } from '../model.ts';
import { copulaCorrelation } from './copula-correlation.ts';
import { quantileTable, readTable, TABLE_NODES } from './quantile-table.ts';
import type { LabourLine } from './result.ts';

/**
 * Total hours in each trial, least first. A trial draws once per activity, so that all joints of the job turn out well or
 * badly together, and the hours of the activities have the book's correlation (a Gaussian copula: one common and one own
 * normal deviate). Each deviate takes every part of its distribution once over the trials, in chance order, so that few trials
 * tell as much as many would at random. Hours added by hand are certain. The same lines, seed and trials always give the same
 * totals.
 *
 * Source: PERT-beta and the equicorrelated Gaussian copula, as in handbooks of cost-risk analysis; Latin hypercube sampling
 * (McKay, Beckman and Conover, 1979).
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
  const rho = copulaCorrelation(tables, correlation);
  const common = Math.sqrt(rho);
  const own = Math.sqrt(1 - rho);
  const next = uniformNumbers(seed);
  const shared = shuffled(normalScores(trials), next);
  const totals = new Float64Array(trials).fill(certain);
  for (const table of tables) {
    const draws = shuffled(normalScores(trials), next);
    for (let trial = 0; trial < trials; trial++)
      totals[trial] = totals[trial]! + readTable(table, common * shared[trial]! + own * draws[trial]!);
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

interface Weight {
  readonly base: LabourLine['base'];
  weight: number;
}
type Weights = Map<string, Weight>;

function weightsByBase(lines: readonly LabourLine[]): ReadonlyMap<string, Weights> {
  const activities = new Map<string, Weights>();
  // Lines share their bases, and a look at an object is far quicker than one at a text that is put together for each line.
  const known = new Map<string, Map<LabourLine['base'], Weight>>();
  for (const line of lines) {
    if (line.activity === 'extra') continue;
    const ofActivity = known.get(line.activity) ?? new Map<LabourLine['base'], Weight>();
    known.set(line.activity, ofActivity);
    const weight = ofActivity.get(line.base) ?? weightOfBase(activities, line);
    ofActivity.set(line.base, weight);
    weight.weight += weightOf(line);
  }
  return activities;
}

/** Bases of equal hours are one, whichever piece they are of. */
function weightOfBase(activities: Map<string, Weights>, { activity, base }: LabourLine): Weight {
  const weights: Weights = activities.get(activity) ?? new Map();
  activities.set(activity, weights);
  const key = `${base.low} ${base.likely} ${base.high}`;
  const weight = weights.get(key) ?? { base, weight: 0 };
  weights.set(key, weight);
  return weight;
}

/** What one base hour of the line becomes. */
export function weightOf(line: LabourLine): number {
  return line.quantity * line.conditionFactor * line.learningFactor * line.nonProductiveFactor;
}

/** Scores of the last number of trials: a job is asked for the same number again and again. */
let scores = new Float64Array(0);

/** One standard normal deviate from the middle of each of `trials` equally probable parts, rising. */
function normalScores(trials: number): Float64Array {
  if (scores.length !== trials)
    scores = Float64Array.from({ length: trials }, (_, i) => jStat.normal.inv((i + 0.5) / trials, 0, 1));
  return scores;
}

/** A copy in chance order (Fisher and Yates). */
function shuffled(values: Float64Array, next: () => number): Float64Array {
  const order = values.slice();
  for (let last = order.length - 1; last > 0; last--) {
    const other = Math.floor(next() * (last + 1));
    const value = order[last]!;
    order[last] = order[other]!;
    order[other] = value;
  }
  return order;
}

/** Numbers between 0 and 1, the same for the same seed. */
function uniformNumbers(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  // Seeds that lie close together start alike; the first numbers are thrown away.
  for (let i = 0; i < 64; i++) generator.unsafeNext();
  return () => ((generator.unsafeNext() >>> 0) + 0.5) / 2 ** 32;
}
