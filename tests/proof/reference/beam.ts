import type { WeightLine } from './loads.ts';

/**
 * Reactions of a continuous beam by the stiffness method: two-noded Euler–Bernoulli elements with a deflection and a
 * rotation at each node, a node wherever something changes, consistent nodal loads of wL/2 and ±wL²/12, supports as fixed
 * deflections, and the whole system solved at once. Source: any textbook of matrix structural analysis (element matrix
 * EI/L³·[12 6L −12 6L; 6L 4L² −6L 2L²; …]). Lengths in 1/80 mm, loads and answers in kg.
 */
export function beamReactions(line: WeightLine, supports: readonly number[]): readonly number[] {
  const total = [...line.spread, ...line.points].reduce((sum, { kg }) => sum + kg, 0);
  if (supports.length === 1) return [total]; // one support carries all; as a beam it would turn over
  const nodes = nodesOf(line, supports);
  const { stiffness, load } = assembled(line, nodes);
  const held = new Set(supports.map((at) => 2 * nodes.indexOf(at)));
  const free = load.map((_, i) => i).filter((i) => !held.has(i));
  const solution = solved(
    free.map((row) => free.map((column) => stiffness[row]![column]!)),
    free.map((row) => load[row]!),
  );
  const moved = load.map(() => 0);
  for (const [k, i] of free.entries()) moved[i] = solution[k]!;
  return supports.map((at) => {
    const row = 2 * nodes.indexOf(at);
    return stiffness[row]!.reduce((sum, k, i) => sum + k * moved[i]!, 0) - load[row]!;
  });
}

function nodesOf(line: WeightLine, supports: readonly number[]): number[] {
  const marks = [0, line.length, ...supports, ...line.points.map(({ at }) => at)];
  for (const { from, to } of line.spread) marks.push(from, to);
  return [...new Set(marks)].sort((a, b) => a - b);
}

/** Deflection up, load down: a hanging weight enters as a negative force. EI is 1: it moves no reaction. */
function assembled(line: WeightLine, nodes: readonly number[]): { stiffness: number[][]; load: number[] } {
  const size = 2 * nodes.length;
  const stiffness = Array.from({ length: size }, () => Array.from({ length: size }, () => 0));
  const load = Array.from({ length: size }, () => 0);
  for (const [n, from] of nodes.slice(0, -1).entries()) {
    const to = nodes[n + 1]!;
    const L = (to - from) / 80_000;
    const matrix = [
      [12, 6 * L, -12, 6 * L],
      [6 * L, 4 * L * L, -6 * L, 2 * L * L],
      [-12, -6 * L, 12, -6 * L],
      [6 * L, 2 * L * L, -6 * L, 4 * L * L],
    ];
    for (const [i, row] of matrix.entries()) {
      for (const [j, k] of row.entries()) stiffness[2 * n + i]![2 * n + j]! += k / L ** 3;
    }
    const kg = line.spread.reduce((sum, one) => {
      return from >= one.from && to <= one.to ? sum + (one.kg * (to - from)) / (one.to - one.from) : sum;
    }, 0);
    for (const [i, part] of [1 / 2, L / 12, 1 / 2, -L / 12].entries()) load[2 * n + i]! -= kg * part;
  }
  for (const { at, kg } of line.points) load[2 * nodes.indexOf(at)]! -= kg;
  return { stiffness, load };
}

/** Gauss with the largest pivot of each column. */
function solved(matrix: number[][], right: number[]): number[] {
  const n = right.length;
  for (let column = 0; column < n; column += 1) {
    let pivot = column;
    for (let row = column + 1; row < n; row += 1) {
      if (Math.abs(matrix[row]![column]!) > Math.abs(matrix[pivot]![column]!)) pivot = row;
    }
    [matrix[column], matrix[pivot]] = [matrix[pivot]!, matrix[column]!];
    [right[column], right[pivot]] = [right[pivot]!, right[column]!];
    for (let row = column + 1; row < n; row += 1) {
      const factor = matrix[row]![column]! / matrix[column]![column]!;
      if (factor === 0) continue;
      for (let k = column; k < n; k += 1) matrix[row]![k]! -= factor * matrix[column]![k]!;
      right[row]! -= factor * right[column]!;
    }
  }
  for (let row = n - 1; row >= 0; row -= 1) {
    for (let k = row + 1; k < n; k += 1) right[row]! -= matrix[row]![k]! * right[k]!;
    right[row]! /= matrix[row]![row]!;
  }
  return right;
}
