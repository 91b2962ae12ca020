import type { WeightLine } from './loads.ts';
import type { Stretch } from './run-shape.ts';
import { commonDivisor, type IntegerProgram, type Row, type Term } from './solver.ts';
import { type SupportProblem, squaredGaps } from './supports.ts';

/**
 * Where to hang a run, as an integer program: a 0-or-1 choice for each pair of neighbours within the spacing, for each
 * first and each last place; whoever comes to a place leaves it or ends there, each window holds a place, and what a place
 * carries is a sum over the choices that meet in it. Fewest supports, then the least squared gaps in steps, weighed so
 * that one support outweighs them all. Null: no place is near enough to one end, or in one of the windows.
 */
export interface SupportProgram {
  readonly program: IntegerProgram;
  readonly valueOf: (chosen: ReadonlySet<string>) => SupportValue;
}

export interface SupportValue {
  readonly count: number;
  /** In steps of the places. */
  readonly squares: number;
}

interface Choice {
  readonly name: string;
  /** Null: the first support stands at `to`. */
  readonly from: number | null;
  /** Null: the last one stands at `from`. */
  readonly to: number | null;
}

export function supportProgram(problem: SupportProblem): SupportProgram | null {
  const { places, length, maxEndOverhang } = problem;
  const firsts = places.filter((at) => at <= maxEndOverhang).map((at) => ({ name: `f${at}`, from: null, to: at }));
  const lasts = places
    .filter((at) => length - at <= maxEndOverhang)
    .map((at) => ({ name: `l${at}`, from: at, to: null }));
  const isHeld = ({ from, to }: Stretch) => places.some((at) => at >= from && at <= to);
  if (firsts.length === 0 || lasts.length === 0 || !problem.windows.every(isHeld)) return null;
  const choices: Choice[] = [...firsts, ...lasts, ...pairsOf(problem)];
  const step = commonDivisor(places.slice(1).map((at, i) => at - places[i]!));
  return {
    program: { least: weighed(problem, choices, step), rows: rowsOf(problem, choices) },
    valueOf: (chosen) => {
      const taken = choices.filter(({ name, to }) => to !== null && chosen.has(name)).map(({ to }) => to!);
      return supportValue(
        problem,
        taken.sort((a, b) => a - b),
      );
    },
  };
}

/** What a list of places is compared by; the program's own list is valued by this too. */
export function supportValue({ places }: SupportProblem, list: readonly number[]): SupportValue {
  const step = commonDivisor(places.slice(1).map((at, i) => at - places[i]!));
  return { count: list.length, squares: squaredGaps(list) / step ** 2 };
}

function pairsOf({ places, maxSpacing }: SupportProblem): Choice[] {
  return places.flatMap((from, i) =>
    places
      .slice(i + 1)
      .filter((to) => to - from <= maxSpacing)
      .map((to) => ({ name: `p${from}_${to}`, from, to })),
  );
}

/** Gaps add up to no more than the run, so their squares to no more than that times the widest. */
function weighed({ places, maxSpacing }: SupportProblem, choices: readonly Choice[], step: number): Term[] {
  const whole = (places.at(-1)! - places[0]!) / step;
  const oneSupport = whole * Math.ceil(maxSpacing / step) + 1;
  return choices.map(({ name, from, to }) => {
    const gap = from === null || to === null ? 0 : (to - from) / step;
    return { factor: gap ** 2 + (to === null ? 0 : oneSupport), choice: name };
  });
}

function rowsOf(problem: SupportProblem, choices: readonly Choice[]): Row[] {
  const { places, windows, weights, capacityKg } = problem;
  const one = ({ name }: Choice): Term => ({ factor: 1, choice: name });
  const flow = places.map((at): Row => {
    const leaving = choices.filter(({ from }) => from === at).map(({ name }) => ({ factor: -1, choice: name }));
    return { terms: [...choices.filter(({ to }) => to === at).map(one), ...leaving], is: '=', bound: 0 };
  });
  const start: Row = { terms: choices.filter(({ from }) => from === null).map(one), is: '=', bound: 1 };
  const held = windows.map((window): Row => {
    const inside = choices.filter(({ to }) => to !== null && to >= window.from && to <= window.to);
    return { terms: inside.map(one), is: '>=', bound: 1 };
  });
  if (capacityKg === null) return [...flow, start, ...held].filter(hasTerms);
  const carried = places.map((at): Row => {
    const meeting = choices.filter(({ from, to }) => from === at || to === at);
    const terms = meeting.map((choice) => ({ factor: carriedBy(weights, choice, at), choice: choice.name }));
    return { terms, is: '<=', bound: capacityKg };
  });
  return [...flow, start, ...held, ...carried].filter(hasTerms);
}

/** A place that no choice reaches has nothing to balance. */
function hasTerms({ terms }: Row): boolean {
  return terms.length > 0;
}

/** What the stretch between two neighbours puts on one of them, by the lever; the whole of it beyond the first and the last. */
function carriedBy(line: WeightLine, { from, to }: Choice, at: number): number {
  const other = from === at ? to : from;
  const stretch: Stretch =
    from === at ? { from: at, to: to ?? Number.POSITIVE_INFINITY } : { from: from ?? Number.NEGATIVE_INFINITY, to: at };
  const share = (place: number) => (other === null ? 1 : (other - place) / (other - at));
  // What hangs just at a support belongs to the stretch before it, or it would count twice.
  const points = line.points.filter((point) => point.at > stretch.from && point.at <= stretch.to);
  const spread = line.spread.flatMap((one) => {
    const [start, stop] = [Math.max(one.from, stretch.from), Math.min(one.to, stretch.to)];
    if (stop <= start) return [];
    return [{ at: (start + stop) / 2, kg: (one.kg * (stop - start)) / (one.to - one.from) }];
  });
  return [...points, ...spread].reduce((sum, load) => sum + load.kg * share(load.at), 0);
}
