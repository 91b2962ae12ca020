import type { Length } from '../units/length.ts';
import type { SupportSurroundings, Window } from './support-surroundings.ts';

/** One rule that a place breaks: what it is measured from, what it comes to and what it may be at most or must be at least. */
export interface BrokenRule {
  readonly rule:
    | 'past-neighbour'
    | 'gap-before'
    | 'gap-after'
    | 'overhang-start'
    | 'overhang-end'
    | 'joint'
    | 'fitting'
    | 'crossing'
    | 'no-support';
  readonly from: Length;
  readonly distance: Length;
  readonly limit: Length;
  readonly reason: string | null;
}

interface Neighbours {
  readonly previous: Length | null;
  readonly next: Length | null;
}

function neighboursOf({ planned, others }: SupportSurroundings): Neighbours {
  const before = others.filter((other) => other < planned);
  const after = others.filter((other) => other > planned);
  return {
    previous: before.length > 0 ? Math.max(...before) : null,
    next: after.length > 0 ? Math.min(...after) : null,
  };
}

export interface Reach extends Window {
  readonly rule: BrokenRule['rule'];
  readonly measuredFrom: Length;
  readonly limit: Length;
}

/** Stretches that the hanger must stand inside. */
export function spans(around: SupportSurroundings): Reach[] {
  const { previous, next } = neighboursOf(around);
  const { limits, runLength } = around;
  const list: Reach[] = [];
  const add = (
    rule: BrokenRule['rule'],
    measuredFrom: Length,
    limit: Length | null,
    window: (limit: Length) => Window,
  ) => {
    if (limit !== null) list.push({ rule, measuredFrom, limit, ...window(limit) });
  };
  if (previous !== null) {
    add('past-neighbour', previous, 0, () => ({ from: previous, to: runLength }));
    add('gap-before', previous, limits.maxSpacing, (limit) => ({ from: 0, to: previous + limit }));
  }
  if (next !== null) {
    add('past-neighbour', next, 0, () => ({ from: 0, to: next }));
    add('gap-after', next, limits.maxSpacing, (limit) => ({ from: next - limit, to: runLength }));
  }
  const start = around.stretchStart ?? 0;
  if (previous === null)
    add('overhang-start', start, limits.maxEndOverhang, (limit) => ({ from: start, to: start + limit }));
  if (next === null)
    add('overhang-end', runLength, limits.maxEndOverhang, (limit) => ({ from: runLength - limit, to: runLength }));
  for (const arm of armsHeldAlone(around)) add('fitting', arm.face, limits.fittingWithin, () => arm);
  return list;
}

/** The arms of fittings that lose their only hanger when this one stands outside them. */
function armsHeldAlone({ fittings, limits, planned, others }: SupportSurroundings): (Window & { face: Length })[] {
  const within = limits.fittingWithin;
  if (within === null) return [];
  const arms = fittings.flatMap(({ from, to }) => [
    { face: from, from: from - within, to: from },
    { face: to, from: to, to: to + within },
  ]);
  return arms.filter((arm) => inside(planned, arm) && !others.some((other) => inside(other, arm)));
}

export interface Bar extends Window {
  readonly rule: BrokenRule['rule'];
  readonly limit: Length;
  readonly reason: string | null;
}

/** Stretches that the hanger must keep out of; their ends are allowed. */
export function bars({ joints, crossings, noSupport, limits }: SupportSurroundings): Bar[] {
  const { jointClear, crossingClear } = limits;
  const ofJoints = jointClear === null ? [] : joints.map((at): Bar => bar('joint', at, at, jointClear, null));
  const ofCrossings = crossings.map(({ from, to, reason }) => bar('crossing', from, to, crossingClear ?? 0, reason));
  const ofZones = noSupport.map(({ from, to, reason }) => bar('no-support', from, to, 0, reason));
  return [...ofJoints, ...ofCrossings, ...ofZones];
}

function bar(rule: BrokenRule['rule'], from: Length, to: Length, clear: Length, reason: string | null): Bar {
  return { rule, from: from - clear, to: to + clear, limit: clear, reason };
}

export function brokenRules(at: Length, around: SupportSurroundings): BrokenRule[] {
  const left = spans(around).filter((span) => !inside(at, span));
  const hit = bars(around).filter(({ from, to }) => from < at && at < to);
  return [
    ...left.map(({ rule, measuredFrom, limit }) => ({
      rule,
      from: measuredFrom,
      distance: Math.abs(at - measuredFrom),
      limit,
      reason: null,
    })),
    ...hit.map((stretch) => brokenBar(at, stretch)),
  ];
}

/** Distance to the nearer face of what bars the place; 0 inside it. */
function brokenBar(at: Length, { rule, from, to, limit, reason }: Bar): BrokenRule {
  const faces = { near: from + limit, far: to - limit };
  const nearer = Math.abs(at - faces.near) <= Math.abs(at - faces.far) ? faces.near : faces.far;
  const within = faces.near < at && at < faces.far;
  return { rule, from: nearer, distance: within ? 0 : Math.abs(at - nearer), limit, reason };
}

function inside(at: Length, { from, to }: Window): boolean {
  return from <= at && at <= to;
}
