import type { BuswayType, Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import { type Frame, isVertical, LEVEL, turned, type Vector } from './frame.ts';

/** A point in the building, 1/80 mm, not yet rounded. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** One leg by the distances of its corners along the run. */
export interface LegGeometry {
  readonly from: Length;
  readonly to: Length;
  readonly frame: Frame;
  readonly vertical: boolean;
  /** The turn that is built at the end of the leg; none at the end of the last leg. */
  readonly turn: Run['legs'][number]['turn'];
}

export interface RunGeometry {
  /** Heading in plan of the run's own first axis, degrees from east to north. */
  readonly axisDeg: number;
  readonly start: Point;
  readonly legs: readonly LegGeometry[];
  /** What the tee's branch arm takes off the first leg of a branch; 0 for any other run. */
  readonly arm: Length;
  /** Length from the face at 0 to the end of the last leg as drawn. */
  readonly length: Length;
}

/** The run that a branch is teed off. */
export interface ParentRun {
  readonly run: Run;
  readonly type: BuswayType;
  readonly geometry: RunGeometry;
}

/**
 * The centre line of a run: corners by distance, with the frame of each leg.
 *
 * Legs are centre line to centre line. A branch's first leg is measured from its parent's centre line, and its distance 0
 * is the face of the tee's branch arm, so the arm comes off that leg; start point and heading follow from the parent.
 */
export function runGeometry(run: Run, parent: ParentRun | null): RunGeometry {
  const origin = parent === null ? ownOrigin(run) : branchOrigin(run, parent);
  const legs: LegGeometry[] = [];
  let { frame } = origin;
  let corner = -origin.arm;
  run.legs.forEach((leg, index) => {
    const turn = index === run.legs.length - 1 ? 'none' : leg.turn;
    const from = index === 0 ? 0 : corner;
    corner += leg.length;
    legs.push({ from, to: corner, frame, vertical: isVertical(frame.heading), turn });
    frame = turned(frame, turn);
  });
  return { axisDeg: origin.axisDeg, start: origin.start, legs, arm: origin.arm, length: corner };
}

/** The leg that a distance lies on; the last one also serves what lies beyond the end. */
export function legAt(geometry: RunGeometry, distance: number): LegGeometry {
  const leg = geometry.legs.find((candidate) => distance <= candidate.to) ?? geometry.legs.at(-1);
  if (leg === undefined) throw new Error('a run without legs has no geometry');
  return leg;
}

/** The point of the centre line at a distance from the feed. */
export function pointAt(geometry: RunGeometry, distance: number): Point {
  let point = geometry.start;
  const last = legAt(geometry, distance);
  for (const leg of geometry.legs) {
    const along = (leg === last ? distance : leg.to) - leg.from;
    point = moved(point, worldDirection(geometry.axisDeg, leg.frame.heading), along);
    if (leg === last) break;
  }
  return point;
}

/** A direction along the run's axes as one in the building. */
export function worldDirection(axisDeg: number, [ahead, left, up]: Vector): Point {
  const { cos, sin } = exactTurn(axisDeg);
  return { x: ahead * cos - left * sin, y: ahead * sin + left * cos, z: up };
}

export function moved(from: Point, direction: Point, by: number): Point {
  return { x: from.x + direction.x * by, y: from.y + direction.y * by, z: from.z + direction.z * by };
}

interface Origin {
  readonly axisDeg: number;
  readonly start: Point;
  readonly frame: Frame;
  readonly arm: Length;
}

function ownOrigin(run: Run): Origin {
  return { axisDeg: run.headingDeg, start: run.start, frame: LEVEL, arm: 0 };
}

function branchOrigin(run: Run, parent: ParentRun): Origin {
  const at = run.feed.at ?? 0;
  const arm = parent.type.tee?.leg ?? 0;
  const frame = turned(legAt(parent.geometry, at).frame, run.feed.branchSide ?? 'left');
  const { axisDeg } = parent.geometry;
  const start = moved(pointAt(parent.geometry, at), worldDirection(axisDeg, frame.heading), arm);
  return { axisDeg, start, frame, arm };
}

/** Cosine and sine, exact at the quarter turns that nearly every run is drawn in. */
function exactTurn(degrees: number): { readonly cos: number; readonly sin: number } {
  const quarters = (((degrees / 90) % 4) + 4) % 4;
  const known = [
    { cos: 1, sin: 0 },
    { cos: 0, sin: 1 },
    { cos: -1, sin: 0 },
    { cos: 0, sin: -1 },
  ][quarters];
  const radians = (degrees * Math.PI) / 180;
  return known ?? { cos: Math.cos(radians), sin: Math.sin(radians) };
}
