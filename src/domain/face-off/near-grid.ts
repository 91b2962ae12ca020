import { radius, type Solid } from './solid.ts';

/** Things that stand in plan, found by where they are. */
export interface NearGrid<T> {
  /** Whatever may reach into a solid, each once, in the order it was put in. */
  readonly near: (solid: Solid) => readonly T[];
}

/**
 * Puts things into square cells of plan, so that only what is near is looked at: with cells about as large as what is asked
 * for, a question costs what stands around it, however much the level holds. Long things are put in piece by piece.
 */
export function nearGrid<T>(things: readonly (readonly [Solid, T])[], cell: number): NearGrid<T> {
  const boxes = things.map(([solid]) => around(solid));
  const cells = new Map<number, number[]>();
  things.forEach(([solid], index) => {
    forCells(solid, cell, (key) => {
      const here = cells.get(key);
      if (here === undefined) cells.set(key, [index]);
      else if (here.at(-1) !== index) here.push(index);
    });
  });
  const near = (solid: Solid) => {
    const [own, found] = [around(solid), new Set<number>()];
    forCells(solid, cell, (key) => {
      for (const index of cells.get(key) ?? []) if (overlap(own, boxes[index]!)) found.add(index);
    });
    return [...found].sort((a, b) => a - b).map((index) => things[index]![1]);
  };
  return { near };
}

/** The rectangle along the plan's own axes that a solid stands in. */
interface Around {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

const [EAST, NORTH] = [
  { x: 1, y: 0 },
  { x: 0, y: 1 },
] as const;

function around(solid: Solid): Around {
  const [wide, deep] = [radius(solid, EAST), radius(solid, NORTH)];
  return { left: solid.x - wide, right: solid.x + wide, low: solid.y - deep, high: solid.y + deep };
}

function overlap(a: Around, b: Around): boolean {
  return a.left <= b.right && b.left <= a.right && a.low <= b.high && b.low <= a.high;
}

/** More columns than a level can have: a key is a column and a row in one number. */
const COLUMNS = 2 ** 26;

/** The cells that a solid reaches, cut along its length, so that one that lies askew does not fill a square as long as itself. */
function forCells(solid: Solid, cell: number, visit: (key: number) => void): void {
  const { x, y, along, out, halfOut } = solid;
  const count = Math.max(1, Math.ceil((2 * solid.halfAlong) / cell));
  const half = solid.halfAlong / count;
  const wide = half * Math.abs(along.x) + halfOut * Math.abs(out.x);
  const deep = half * Math.abs(along.y) + halfOut * Math.abs(out.y);
  for (let piece = 0; piece < count; piece++) {
    const shift = half * (2 * piece + 1) - solid.halfAlong;
    const [east, north] = [x + along.x * shift, y + along.y * shift];
    const [lastColumn, lastRow] = [Math.floor((east + wide) / cell), Math.floor((north + deep) / cell)];
    for (let column = Math.floor((east - wide) / cell); column <= lastColumn; column++) {
      for (let row = Math.floor((north - deep) / cell); row <= lastRow; row++) visit(column * COLUMNS + row);
    }
  }
}
