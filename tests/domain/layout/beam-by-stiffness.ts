/**
 * A second opinion on continuous beams: Euler–Bernoulli elements with cubic shape functions between all places where anything
 * happens, consistent nodal loads, full Gaussian elimination. Exact for point loads at nodes and uniform loads on elements.
 * Shares nothing with the three-moment equation. Metres and kg; EI = 1.
 */
export interface Beam {
  readonly from: number;
  readonly to: number;
  readonly supports: readonly number[];
  readonly uniform: readonly { readonly from: number; readonly to: number; readonly kgPerM: number }[];
  readonly points: readonly { readonly at: number; readonly kg: number }[];
}

export function reactionsByStiffness(beam: Beam): number[] {
  const nodes = nodesOf(beam);
  const size = 2 * nodes.length;
  const stiffness = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const load = new Array<number>(size).fill(0);
  nodes.slice(1).forEach((to, element) => {
    addElement(stiffness, load, element, to - nodes[element]!, densityAt(beam, (to + nodes[element]!) / 2));
  });
  for (const { at, kg } of beam.points) load[2 * nodes.indexOf(at)]! += kg;
  const held = beam.supports.map((at) => 2 * nodes.indexOf(at));
  if (held.length === 1) return [load.reduce((sum, kg, i) => (i % 2 === 0 ? sum + kg : sum), 0)];
  const free = Array.from({ length: size }, (_, i) => i).filter((i) => !held.includes(i));
  const moved = solve(
    free.map((row) => free.map((column) => stiffness[row]![column]!)),
    free.map((row) => load[row]!),
  );
  return held.map((row) => load[row]! - free.reduce((sum, column, i) => sum + stiffness[row]![column]! * moved[i]!, 0));
}

function nodesOf({ from, to, supports, uniform, points }: Beam): number[] {
  const all = [
    from,
    to,
    ...supports,
    ...uniform.flatMap((part) => [part.from, part.to]),
    ...points.map((point) => point.at),
  ];
  return [...new Set(all)].sort((a, b) => a - b);
}

function densityAt({ uniform }: Beam, at: number): number {
  return uniform.filter((part) => part.from < at && at < part.to).reduce((sum, part) => sum + part.kgPerM, 0);
}

function addElement(stiffness: number[][], load: number[], element: number, length: number, density: number): void {
  const l = length;
  const k = [
    [12, 6 * l, -12, 6 * l],
    [6 * l, 4 * l * l, -6 * l, 2 * l * l],
    [-12, -6 * l, 12, -6 * l],
    [6 * l, 2 * l * l, -6 * l, 4 * l * l],
  ];
  const f = [l / 2, (l * l) / 12, l / 2, -(l * l) / 12];
  for (let row = 0; row < 4; row++) {
    load[2 * element + row]! += density * f[row]!;
    for (let column = 0; column < 4; column++) {
      stiffness[2 * element + row]![2 * element + column]! += k[row]![column]! / l ** 3;
    }
  }
}

function solve(matrix: number[][], right: number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const size = rows.length;
  for (let pivot = 0; pivot < size; pivot++) {
    let best = pivot;
    for (let row = pivot + 1; row < size; row++)
      if (Math.abs(rows[row]![pivot]!) > Math.abs(rows[best]![pivot]!)) best = row;
    [rows[pivot], rows[best]] = [rows[best]!, rows[pivot]!];
    for (let row = pivot + 1; row < size; row++) {
      const factor = rows[row]![pivot]! / rows[pivot]![pivot]!;
      for (let column = pivot; column <= size; column++) rows[row]![column]! -= factor * rows[pivot]![column]!;
    }
  }
  const answer = new Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row--) {
    let sum = rows[row]![size]!;
    for (let column = row + 1; column < size; column++) sum -= rows[row]![column]! * answer[column]!;
    answer[row] = sum / rows[row]![row]!;
  }
  return answer;
}
