import type { JobDocument, RunDocument } from '../../../src/document/job-document.ts';
import { simpleSpanLoad, type WeightLine, weightLine } from './loads.ts';
import { runShape, type Stretch, typeOf, units } from './run-shape.ts';

/**
 * Where supports may stand and which list of them wins: fewest, then the least sum of squared gaps, then the smallest
 * list. Two ways to find it, neither of them the program's: every subset there is, and for longer runs a plain table over
 * all pairs of neighbours. Written from the job document's page alone; only for runs without vertical legs.
 */
export interface SupportProblem {
  readonly length: number;
  /** Places that nothing bars, in order. */
  readonly places: readonly number[];
  readonly maxSpacing: number;
  readonly maxEndOverhang: number;
  /** Closed intervals, each of which needs a support. */
  readonly windows: readonly Stretch[];
  readonly weights: WeightLine;
  readonly capacityKg: number | null;
}

const NEC_368_30_MM = 1524;

/** The problem that a run poses once its sections, and so its joints, are chosen. */
export function supportProblem(
  job: JobDocument,
  run: RunDocument,
  length: number,
  joints: readonly number[],
): SupportProblem {
  const type = typeOf(job, run);
  const bars = supportBars(run, type, joints);
  return {
    length,
    places: lattice(job, run, length).filter((at) => !bars.some((bar) => at > bar.from && at < bar.to)),
    maxSpacing: units(type.support?.maxSpacingMm ?? NEC_368_30_MM),
    maxEndOverhang: units(type.support!.maxEndOverhangMm!),
    windows: windowsOf(job, run, length),
    weights: weightLine(job, run, length),
    capacityKg: run.supportCapacityKg ?? null,
  };
}

function lattice(job: JobDocument, run: RunDocument, length: number): number[] {
  const grid = run.structure?.kind === 'grid' ? run.structure : null;
  const defaultStep = job.project.units === 'ft-in' ? 25.4 : 50;
  const pitch = units(grid?.pitchMm ?? typeOf(job, run).support?.stepMm ?? defaultStep);
  const offset = units(grid?.offsetMm ?? 0);
  const places: number[] = [];
  for (let at = offset - Math.floor(offset / pitch) * pitch; at <= length; at += pitch) places.push(at);
  return places;
}

function supportBars(run: RunDocument, type: ReturnType<typeof typeOf>, joints: readonly number[]): Stretch[] {
  const joint = units(type.support?.jointClearMm ?? 0);
  const wall = units(type.crossing?.supportClearMm ?? 0);
  const zones = (run.noSupport ?? []).map((zone) => ({ from: units(zone.fromMm), to: units(zone.toMm) }));
  const walls = (run.crossings ?? []).map((crossing) => ({
    from: units(crossing.atMm) - units(crossing.thicknessMm) / 2 - wall,
    to: units(crossing.atMm) + units(crossing.thicknessMm) / 2 + wall,
  }));
  return [...joints.map((at) => ({ from: at - joint, to: at + joint })), ...zones, ...walls];
}

/** One support within the stated distance of each fitting's face, on that arm; a branch begins at its tee's face. */
function windowsOf(job: JobDocument, run: RunDocument, length: number): Stretch[] {
  const within = typeOf(job, run).support?.fittingWithinMm;
  if (within === undefined) return [];
  const { fittings } = runShape(job, run);
  const arms = fittings.flatMap(({ from, to }) => [
    { from: from - units(within), to: from },
    { from: to, to: to + units(within) },
  ]);
  const atTee = run.feed.kind === 'tee' ? [{ from: 0, to: units(within) }] : [];
  return [...atTee, ...arms].map(({ from, to }) => ({ from: Math.max(0, from), to: Math.min(length, to) }));
}

/** The winner among all subsets of the places: 2ⁿ of them. */
export function bestBySubsets(problem: SupportProblem): readonly number[] | null {
  const { places } = problem;
  let best: readonly number[] | null = null;
  for (let mask = 1; mask < 2 ** places.length; mask += 1) {
    const chosen = places.filter((_, i) => (mask & (1 << i)) !== 0);
    if (best !== null && chosen.length > best.length) continue;
    if (holds(problem, chosen) && (best === null || isBetter(chosen, best))) best = chosen;
  }
  return best;
}

function holds(problem: SupportProblem, chosen: readonly number[]): boolean {
  const { length, maxSpacing, maxEndOverhang, windows, weights, capacityKg } = problem;
  if (chosen[0]! > maxEndOverhang || length - chosen.at(-1)! > maxEndOverhang) return false;
  if (chosen.some((at, i) => i > 0 && at - chosen[i - 1]! > maxSpacing)) return false;
  if (!windows.every(({ from, to }) => chosen.some((at) => at >= from && at <= to))) return false;
  if (capacityKg === null) return true;
  return chosen.every(
    (at, i) => simpleSpanLoad(weights, chosen[i - 1] ?? null, at, chosen[i + 1] ?? null) <= capacityKg,
  );
}

export function squaredGaps(list: readonly number[]): number {
  return list.reduce((sum, at, i) => (i === 0 ? 0 : sum + (at - list[i - 1]!) ** 2), 0);
}

function isBetter(a: readonly number[], b: readonly number[]): boolean {
  if (a.length !== b.length) return a.length < b.length;
  const gaps = squaredGaps(a) - squaredGaps(b);
  if (gaps !== 0) return gaps < 0;
  const i = a.findIndex((at, k) => at !== b[k]);
  return i >= 0 && a[i]! < b[i]!;
}

/**
 * The same winner by a table: for each pair of neighbours the best list that goes on from the second. What a support
 * carries depends on its two neighbours alone, and a window is missed only if it lies whole between two neighbours or
 * past an end, so the pair is all there is to remember.
 */
export function bestByPairs(problem: SupportProblem): readonly number[] | null {
  const { places } = problem;
  const known = new Map<number, readonly number[] | null>();
  const startsHere = places.filter((at) => at <= problem.maxEndOverhang && !missesWindow(problem, null, at));
  let best: readonly number[] | null = null;
  for (const at of startsHere) {
    const rest = bestFrom(problem, known, null, places.indexOf(at));
    if (rest !== null && (best === null || isBetter(rest, best))) best = rest;
  }
  return best;
}

function bestFrom(
  problem: SupportProblem,
  known: Map<number, readonly number[] | null>,
  before: number | null,
  here: number,
): readonly number[] | null {
  const key = (before ?? -1) * problem.places.length + here;
  const found = known.get(key);
  if (found !== undefined) return found;
  const at = problem.places[here]!;
  const previous = before === null ? null : problem.places[before]!;
  let best: readonly number[] | null = null;
  const offer = (list: readonly number[]) => {
    if (best === null || isBetter(list, best)) best = list;
  };
  if (mayEnd(problem, previous, at)) offer([at]);
  for (let next = here + 1; next < problem.places.length; next += 1) {
    const to = problem.places[next]!;
    if (to - at > problem.maxSpacing) break;
    if (missesWindow(problem, at, to) || !carries(problem, previous, at, to)) continue;
    const rest = bestFrom(problem, known, here, next);
    if (rest !== null) offer([at, ...rest]);
  }
  known.set(key, best);
  return best;
}

function mayEnd(problem: SupportProblem, previous: number | null, at: number): boolean {
  const near = problem.length - at <= problem.maxEndOverhang;
  return near && !missesWindow(problem, at, null) && carries(problem, previous, at, null);
}

function missesWindow({ windows }: SupportProblem, from: number | null, to: number | null): boolean {
  return windows.some((window) => (from === null || window.from > from) && (to === null || window.to < to));
}

function carries(problem: SupportProblem, before: number | null, at: number, after: number | null): boolean {
  return problem.capacityKg === null || simpleSpanLoad(problem.weights, before, at, after) <= problem.capacityKg;
}
