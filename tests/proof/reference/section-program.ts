import type { JobDocument, RunDocument } from '../../../src/document/job-document.ts';
import { isInside, type RunShape, runShape, type Stretch, typeOf } from './run-shape.ts';
import { jointCost, type Shop, shopOf } from './sections.ts';
import { commonDivisor, type IntegerProgram, type Row, type Term } from './solver.ts';

/**
 * Which sections to lay, as an integer program over a whole run: a 0-or-1 choice for each section at each place where one
 * could begin, and for each place where the run could end; as much comes to a place as leaves it or ends there, no section
 * leaves a place that may hold no joint, and of the cuts of a part one at most is chosen. Least cost, then nearest to the
 * length drawn, then fewest joints, weighed so that each outweighs the next. Null: some part has no place to end at all.
 */
export interface SectionProgram {
  readonly program: IntegerProgram;
  readonly valueOf: (chosen: ReadonlySet<string>) => SectionValue;
}

/** Cost without the fittings, minor units; how far from the length drawn; all joints of the run. */
export interface SectionValue {
  readonly cost: number;
  readonly offBy: number;
  readonly joints: number;
}

interface Choice {
  readonly name: string;
  readonly part: number;
  readonly from: number;
  /** Null: the part ends at `from`. */
  readonly to: number | null;
  readonly cut: boolean;
  readonly cost: number;
  readonly offBy: number;
}

export function sectionProgram(job: JobDocument, run: RunDocument): SectionProgram | null {
  const shape = runShape(job, run);
  if (shape.feedJoints.some((at) => isInside(shape.jointBars, at))) return null;
  const type = typeOf(job, run);
  const shop = shopOf(type, jointCost(job, type));
  const parts = shape.parts.map((part, i) => choicesOf(shop, shape, part, i));
  if (parts.some((choices) => !choices.some(({ to }) => to === null))) return null;
  const choices = parts.flat();
  const fixed = shape.feedJoints.length + shape.fittings.filter(({ from }) => from > 0).length;
  return {
    program: { least: weighed(choices), rows: parts.flatMap((each, i) => rowsOf(each, shape.parts[i]!)) },
    valueOf: (chosen) => {
      const taken = choices.filter(({ name }) => chosen.has(name));
      const sum = (value: (choice: Choice) => number) => taken.reduce((total, choice) => total + value(choice), 0);
      return { cost: sum(({ cost }) => cost), offBy: sum(({ offBy }) => offBy), joints: fixed + sum(jointOf) };
    },
  };
}

function choicesOf(shop: Shop, shape: RunShape, part: Stretch, index: number): Choice[] {
  const isLast = index === shape.parts.length - 1;
  const ends = isLast ? shape.ends : { from: part.to, to: part.to };
  const choices: Choice[] = [];
  const waiting = new Set([part.from]);
  // A set goes on to what is added to it on the way.
  for (const from of waiting) {
    if (from > ends.to) continue;
    const joins = from === 0 || !isInside(shape.jointBars, from);
    if (from >= ends.from && (isLast || joins)) {
      const offBy = isLast ? Math.abs(from - part.to) : 0;
      choices.push({ name: `e${index}_${from}`, part: index, from, to: null, cut: false, cost: 0, offBy });
    }
    if (!joins) continue;
    const joint = from > 0 ? shop.joint : 0;
    const add = (length: number, cut: boolean) => {
      const cost = shop.priceOf(length) + joint + (cut ? shop.cutSurcharge : 0);
      const name = `${cut ? 'c' : 's'}${index}_${from}_${length}`;
      choices.push({ name, part: index, from, to: from + length, cut, cost, offBy: 0 });
      waiting.add(from + length);
    };
    for (const length of shop.stock) if (from + length <= ends.to) add(length, false);
    for (const length of shop.cuts) if (from + length <= ends.to) add(length, true);
  }
  return choices;
}

/** As much comes to each place as leaves it; at the part's start one begins. */
function rowsOf(choices: readonly Choice[], part: Stretch): Row[] {
  const terms = new Map<number, Term[]>([[part.from, []]]);
  const at = (place: number) => {
    const held = terms.get(place) ?? [];
    terms.set(place, held);
    return held;
  };
  for (const { name, from, to } of choices) {
    at(from).push({ factor: 1, choice: name });
    if (to !== null) at(to).push({ factor: -1, choice: name });
  }
  const flow = [...terms].map(([place, sum]): Row => ({ terms: sum, is: '=', bound: place === part.from ? 1 : 0 }));
  const cuts = choices.filter(({ cut }) => cut).map(({ name }) => ({ factor: 1, choice: name }));
  return cuts.length === 0 ? flow : [...flow, { terms: cuts, is: '<=', bound: 1 }];
}

function weighed(choices: readonly Choice[]): Term[] {
  const cost = commonDivisor(choices.map((choice) => choice.cost));
  const off = commonDivisor(choices.map((choice) => choice.offBy));
  const joints = choices.filter((choice) => choice.to !== null).length;
  // No more joints than places where a section could begin, and one end alone is chosen.
  const most = Math.min(joints, new Set(choices.map(({ part, from }) => `${part}_${from}`)).size) + 1;
  const mostOff = Math.max(...choices.map((choice) => choice.offBy)) / off + 1;
  return choices.map((choice) => ({
    factor: ((choice.cost / cost) * mostOff + choice.offBy / off) * most + jointOf(choice),
    choice: choice.name,
  }));
}

function jointOf({ from, to }: Choice): number {
  return to !== null && from > 0 ? 1 : 0;
}
