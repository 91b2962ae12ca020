/**
 * A second opinion on face-offs, written without the program's own: polygons are clipped by half-planes, every pair is looked
 * at, and every whole place of a run is tried. Lengths are bare units.
 */
export interface BruteTap {
  readonly id: string;
  readonly at: number;
}

export interface BruteRun {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly degrees: number;
  readonly side: 'left' | 'right';
  readonly length: number;
  readonly taps: readonly BruteTap[];
}

export interface BruteSizes {
  readonly boxLength: number;
  readonly depth: number;
  readonly clear: number;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Touching is no meeting: whatever is less than this deep in something is not in it. */
export const HAIR = 1e-6;

/** Whether a tap at a place of a run clashes, and how: with what of the other runs. */
export function bruteClash(
  run: BruteRun,
  at: number,
  others: readonly BruteRun[],
  sizes: BruteSizes,
  hair = HAIR,
): 'stop' | 'warning' | null {
  const box = rectangle(run, at, 0, sizes);
  const room = rectangle(run, at, sizes.clear, sizes);
  let worst: 'stop' | 'warning' | null = null;
  for (const other of others) {
    const line = [pointOf(other, 0, 0), pointOf(other, other.length, 0)];
    const things = [line, ...other.taps.map((tap) => rectangle(other, tap.at, 0, sizes))];
    if (things.some((thing) => share(box, thing, hair))) return 'stop';
    if (things.some((thing) => share(room, thing, hair))) worst = 'warning';
    if (other.taps.some((tap) => share(rectangle(other, tap.at, sizes.clear, sizes), box, hair))) worst = 'warning';
  }
  return worst;
}

/** Room before a rectangle until another polygon stands in it, up to `needed`. */
export function bruteRoom(
  run: BruteRun,
  at: number,
  other: readonly Point[],
  needed: number,
  sizes: BruteSizes,
): number {
  const strip = rectangle(run, at, needed, sizes);
  const inside = clipped(other, strip, HAIR);
  if (inside.length === 0) return needed;
  const { out, origin } = axes(run, at);
  const ahead = inside.map((point) => (point.x - origin.x) * out.x + (point.y - origin.y) * out.y - sizes.depth);
  return Math.max(0, Math.min(needed, ...ahead));
}

/** Corners of a tap's box with so much room before it, counter-clockwise. */
export function rectangle(run: BruteRun, at: number, room: number, { boxLength, depth }: BruteSizes): readonly Point[] {
  const front = depth + room;
  const corners = [
    pointOf(run, at - boxLength / 2, 0),
    pointOf(run, at + boxLength / 2, 0),
    pointOf(run, at + boxLength / 2, front),
    pointOf(run, at - boxLength / 2, front),
  ];
  return run.side === 'left' ? corners : corners.reverse();
}

function axes(run: BruteRun, at: number) {
  const radians = (run.degrees * Math.PI) / 180;
  const sign = run.side === 'left' ? 1 : -1;
  return { out: { x: -Math.sin(radians) * sign, y: Math.cos(radians) * sign }, origin: pointOf(run, at, 0) };
}

function pointOf(run: BruteRun, along: number, aside: number): Point {
  const radians = (run.degrees * Math.PI) / 180;
  const sign = run.side === 'left' ? 1 : -1;
  return {
    x: run.x + Math.cos(radians) * along - Math.sin(radians) * aside * sign,
    y: run.y + Math.sin(radians) * along + Math.cos(radians) * aside * sign,
  };
}

function share(convex: readonly Point[], other: readonly Point[], hair: number): boolean {
  return clipped(other, convex, hair).length > 0;
}

/** What of a polygon or a line lies inside a convex polygon, drawn in by a hair (Sutherland and Hodgman's clipping). */
function clipped(subject: readonly Point[], convex: readonly Point[], hair: number): readonly Point[] {
  let points = subject;
  convex.forEach((from, index) => {
    const to = convex[(index + 1) % convex.length]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const inside = (p: Point) => ((to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x)) / length - hair;
    const next: Point[] = [];
    points.forEach((point, i) => {
      const before = points[(i + points.length - 1) % points.length]!;
      const [now, then] = [inside(point), inside(before)];
      if (now > 0 !== then > 0) {
        const part = then / (then - now);
        next.push({ x: before.x + (point.x - before.x) * part, y: before.y + (point.y - before.y) * part });
      }
      if (now > 0) next.push(point);
    });
    points = next;
  });
  return points;
}
