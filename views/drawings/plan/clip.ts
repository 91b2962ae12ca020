import type { Box } from '../scale.ts';

export type Point = readonly [number, number];

/** That part of a line which lies in the box, by arithmetic (Liang and Barsky 1984): a PDF and a page then show the same. null when none does. */
export function clipLine(from: Point, to: Point, box: Box): readonly [Point, Point] | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const edges = [
    [-dx, from[0] - box.x],
    [dx, box.x + box.width - from[0]],
    [-dy, from[1] - box.y],
    [dy, box.y + box.height - from[1]],
  ] as const;
  let [first, last] = [0, 1];
  for (const [towards, room] of edges) {
    if (towards === 0 && room < 0) return null;
    if (towards === 0) continue;
    const part = room / towards;
    if (towards < 0) first = Math.max(first, part);
    else last = Math.min(last, part);
  }
  if (first > last) return null;
  return [
    [from[0] + dx * first, from[1] + dy * first],
    [from[0] + dx * last, from[1] + dy * last],
  ];
}

export function isIn([x, y]: Point, box: Box): boolean {
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
}
