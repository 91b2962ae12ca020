import type { JobDocument, RunDocument } from '../../../src/document/job-document.ts';
import { runShape, typeOf, units } from './run-shape.ts';

/** What hangs along a run: evenly spread weights, kg over each stretch, and the taps at their points. */
export interface WeightLine {
  readonly length: number;
  readonly spread: readonly { readonly from: number; readonly to: number; readonly kg: number }[];
  readonly points: readonly { readonly at: number; readonly kg: number }[];
}

/** Busway by its weight per metre, a fitting's over its legs, each tap and the feed at its place. An absent weight is 0. */
export function weightLine(job: JobDocument, run: RunDocument, length: number): WeightLine {
  const type = typeOf(job, run);
  const spread: { from: number; to: number; kg: number }[] = [];
  let at = 0;
  for (const { from, to, weightKg } of runShape(job, run).fittings) {
    spread.push({ from: at, to: from, kg: (type.weightKgPerM * (from - at)) / 80_000 }, { from, to, kg: weightKg });
    at = to;
  }
  spread.push({ from: at, to: length, kg: (type.weightKgPerM * (length - at)) / 80_000 });
  const taps = (run.taps ?? []).map((tap) => ({ at: units(tap.atMm!), kg: tap.weightKg ?? 0 }));
  const feed = run.feed.kind === 'end' ? [{ at: 0, kg: type.feed?.weightKg ?? 0 }] : [];
  return { length, spread: spread.filter(({ from, to }) => to > from), points: [...feed, ...taps] };
}

/**
 * What a support carries when the busway is cut at every support: its share of the span on each side by the lever rule,
 * and the whole of an overhang. `before` and `after` are its neighbours; null where there is none.
 */
export function simpleSpanLoad(line: WeightLine, before: number | null, at: number, after: number | null): number {
  const share = (place: number): number => {
    if (place <= at) return before === null ? 1 : Math.max(0, (place - before) / (at - before));
    return after === null ? 1 : Math.max(0, (after - place) / (after - at));
  };
  const points = line.points.reduce((sum, { at: place, kg }) => sum + kg * share(place), 0);
  return points + line.spread.reduce((sum, one) => sum + spreadShare(one, [before, at, after], share), 0);
}

/** The share is straight between the neighbours, so each straight bit of it weighs as much as its middle. */
function spreadShare(
  { from, to, kg }: WeightLine['spread'][number],
  bends: readonly (number | null)[],
  share: (place: number) => number,
): number {
  const inside = bends.filter((bend) => bend !== null).filter((bend) => bend > from && bend < to);
  const marks = [from, ...inside, to];
  return marks.slice(1).reduce((sum, mark, i) => {
    const start = marks[i]!;
    return sum + (kg * (mark - start) * share((start + mark) / 2)) / (to - from);
  }, 0);
}
