import type { Box } from '../scale.ts';
import { textWidth } from '../text-width.ts';

type Point = readonly [number, number];

export interface NamePlace {
  readonly text: string;
  /** Where the run begins and ends on the drawing. */
  readonly start: Point;
  readonly end: Point;
}

export interface PlacedName {
  readonly text: string;
  readonly box: Box;
  /** From the name to its run, where it had to be moved away from it. */
  readonly leader: readonly [Point, Point] | null;
}

interface Room {
  readonly bands: readonly Box[];
  readonly placed: readonly PlacedName[];
  readonly within: Box;
}

const EVERYWHERE: Box = { x: -1e9, y: -1e9, width: 2e9, height: 2e9 };
const AWAY = 14;
/** Where neither end has room, a name stands over or under its run. */
const OVER = 8;
/** How often a name gives way downwards to others before another end of the run is tried. */
const STEPS = 3;

/**
 * Names of runs beside their beginnings: behind the feed where that is free, a little lower where another name stands,
 * else at the other end, else over or under the run. `bands` are the runs
 * themselves, which no name may lie on.
 */
export function placeNames(
  names: readonly NamePlace[],
  size: number,
  bands: readonly Box[],
  within: Box = EVERYWHERE,
): PlacedName[] {
  const placed: PlacedName[] = [];
  const inOrder = [...names].sort((a, b) => a.start[1] - b.start[1] || a.start[0] - b.start[0]);
  for (const name of inOrder) placed.push(placeOne(name, size, { bands, placed, within }));
  return placed;
}

function placeOne(name: NamePlace, size: number, room: Room): PlacedName {
  const width = textWidth(name.text, size);
  const goesRight = name.end[0] >= name.start[0];
  const before = -AWAY - width;
  const [behind, ahead] = goesRight ? [before, AWAY] : [AWAY, before];
  const spots: readonly (readonly [Point, number])[] = [
    [name.start, behind],
    [name.end, ahead],
    [name.start, ahead],
    [name.end, behind],
  ];
  for (const [point, shift] of spots) {
    const box = freeBox({ x: point[0] + shift, y: point[1] - size / 2 - 1, width, height: size + 2 }, room);
    if (box) return named(name.text, box, point, size);
  }
  const [x, y] = name.start;
  for (const top of [y - size - OVER, y + OVER - 2]) {
    const box = freeBox({ x: goesRight ? x + 6 : x - 6 - width, y: top, width, height: size + 2 }, room);
    if (box) return { text: name.text, box, leader: null };
  }
  return named(name.text, { x: x + behind, y: y - size / 2 - 1, width, height: size + 2 }, name.start, size);
}

function freeBox(wanted: Box, { bands, placed, within }: Room): Box | null {
  let box = wanted;
  for (let step = 0; step < STEPS; step++) {
    if (!holds(within, box) || bands.some((band) => meet(band, box))) return null;
    const other = placed.find((name) => meet(name.box, box));
    if (!other) return box;
    box = { ...box, y: other.box.y + other.box.height };
  }
  return null;
}

function named(text: string, box: Box, point: Point, size: number): PlacedName {
  const middle = box.y + size / 2 + 1;
  const edge = point[0] > box.x ? box.x + box.width + 2 : box.x - 2;
  return { text, box, leader: Math.abs(middle - point[1]) > 1 ? [[edge, middle], point] : null };
}

function meet(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

function holds(outer: Box, { x, y, width, height }: Box): boolean {
  return x >= outer.x && y >= outer.y && x + width <= outer.x + outer.width && y + height <= outer.y + outer.height;
}
