import { originOf } from '../layout/context-for.ts';
import { isVertical, tapDirection } from '../layout/frame.ts';
import { pointAt, type RunGeometry, runGeometry, worldDirection } from '../layout/geometry.ts';
import type { RunLayout } from '../layout/result.ts';
import type { BuswayType, Run, UnpricedJob } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { Direction, Solid } from './solid.ts';

/** A level stretch of a run between two corners, with the way its taps face. */
export interface Stretch {
  /** Its number among the run's straight stretches, risers included, so that neighbours round a corner are known. */
  readonly order: number;
  readonly from: Length;
  readonly to: Length;
  readonly start: { readonly x: number; readonly y: number; readonly z: number };
  readonly along: Direction;
  readonly out: Direction;
}

/** A run whose place in plan and whose sections are known. */
export interface StandingRun {
  readonly run: Run;
  readonly type: BuswayType;
  readonly layout: RunLayout;
  readonly stretches: readonly Stretch[];
}

/** What takes room in plan: a tap's box, or the housing of a stretch, which counts by its centre line. */
export interface Obstacle {
  readonly run: StandingRun;
  readonly stretch: Stretch;
  readonly solid: Solid;
  /** null for housing. `clear` is the room that has to stay free before the box. */
  readonly tap: { readonly id: string; readonly at: Length; readonly clear: Length } | null;
}

/**
 * The runs that can be compared in plan, in document order. Left out are runs that state no place (and the branches of such),
 * runs whose sections cannot be laid, which have a stop already, and legs that are vertical or lie on their side.
 */
export function standingRuns(job: UnpricedJob, layouts: readonly RunLayout[]): readonly StandingRun[] {
  const byRun = new Map(layouts.map((layout) => [layout.run, layout]));
  const isPlaced = placeTest(job);
  return job.runs.flatMap((run) => {
    const layout = byRun.get(run.id);
    if (layout === undefined || !layout.ok || !isPlaced(run)) return [];
    const { type, parent } = originOf(job, run);
    return [{ run, type, layout, stretches: stretchesOf(run, runGeometry(run, parent), layout.length) }];
  });
}

/** A run states where it begins; a branch begins where its parent's tee stands. */
function placeTest(job: UnpricedJob): (run: Run) => boolean {
  const byId = new Map(job.runs.map((run) => [run.id, run]));
  const known = new Map<string, boolean>();
  const isPlaced = (run: Run): boolean => {
    if (run.feed.kind !== 'tee') return run.hasStart;
    const before = known.get(run.id);
    if (before !== undefined) return before;
    known.set(run.id, false); // a ring of tees has no place
    const parent = byId.get(run.feed.fromRun ?? '');
    const placed = parent !== undefined && isPlaced(parent);
    known.set(run.id, placed);
    return placed;
  };
  return isPlaced;
}

/** Legs that go straight on are one stretch: a tap's box may stand across their corner. */
function stretchesOf(run: Run, geometry: RunGeometry, length: Length): readonly Stretch[] {
  const spans: { from: Length; to: Length; leg: RunGeometry['legs'][number] }[] = [];
  geometry.legs.forEach((leg, index) => {
    const last = spans.at(-1);
    const to = index === geometry.legs.length - 1 ? length : leg.to;
    if (last !== undefined && geometry.legs[index - 1]?.turn === 'none') last.to = to;
    else spans.push({ from: leg.from, to, leg });
  });
  return spans.flatMap(({ from, to, leg }, order) => {
    const out = tapDirection(leg.frame, run.conductorSide);
    if (leg.vertical || isVertical(out) || to <= from) return [];
    const start = pointAt(geometry, from);
    const along = worldDirection(geometry.axisDeg, leg.frame.heading);
    return [{ order, from, to, start, along, out: worldDirection(geometry.axisDeg, out) }];
  });
}

/** The box of one of a run's taps at a distance on a stretch; null for a type that does not state how far it stands out. */
export function boxAt({ type }: StandingRun, stretch: Stretch, at: Length): Solid | null {
  const { boxDepth, boxHeight } = type.tapFront;
  if (boxDepth === null) return null;
  const { start, along, out, from } = stretch;
  const [ahead, aside] = [at - from, boxDepth / 2];
  return {
    x: start.x + along.x * ahead + out.x * aside,
    y: start.y + along.y * ahead + out.y * aside,
    z: start.z,
    along,
    out,
    halfAlong: (type.tap.boxLength ?? 0) / 2,
    halfOut: aside,
    halfUp: boxHeight === null ? null : boxHeight / 2,
  };
}

/** Everything of a run that takes room: its housing, and the boxes of its taps. */
export function obstaclesOf(run: StandingRun): readonly Obstacle[] {
  const housing = run.stretches.map((stretch): Obstacle => ({ run, stretch, solid: centreLine(stretch), tap: null }));
  const clear = run.type.tapFront.clearRoom ?? 0;
  const boxes = run.layout.taps.flatMap(({ id, at }): Obstacle[] => {
    const stretch = run.stretches.find(({ from, to }) => at >= from && at <= to);
    const solid = stretch && boxAt(run, stretch, at);
    return solid ? [{ run, stretch, solid, tap: { id, at, clear } }] : [];
  });
  return [...housing, ...boxes];
}

function centreLine({ start, along, out, from, to }: Stretch): Solid {
  const half = (to - from) / 2;
  const centre = { x: start.x + along.x * half, y: start.y + along.y * half, z: start.z };
  return { ...centre, along, out, halfAlong: half, halfOut: 0, halfUp: 0 };
}
