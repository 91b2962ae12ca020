import { canonicalJson } from '../canonical-json.ts';
import type { LabourLine } from '../labour/result.ts';
import { isTurnedOver, type Match, matchJoints, matchLayouts, matchSupports } from '../layout/match-pieces.ts';
import type { RunLayout } from '../layout/result.ts';
import type { Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import { compareFacts } from './compare-facts.ts';
import { compareTaps } from './compare-taps.ts';
import type { HoursDifference, Pair, PieceAt, RevisionDifference, ThingsDifference } from './difference.ts';

/** One revision of a run, or its draft, with its likely hours. */
export interface Revised {
  readonly run: Run;
  readonly layout: RunLayout;
  readonly hours: readonly Pick<LabourLine, 'activity' | 'hours'>[];
}

/**
 * What two revisions of a run differ in, and what the step from the one to the other takes up again. Identity is that of a
 * release (`matchLayouts`), so what is listed here as the same keeps its records. Lengths in 1/80 mm, hours as `labourLines`.
 * `boundary` are the runs that one insulation test measures together.
 *
 * @example compareRevisions(released, draft, ['F1-R1-A']).pieces.added.length
 */
export function compareRevisions(before: Revised, after: Revised, boundary: readonly string[]): RevisionDifference {
  const match = matchLayouts(before.layout, after.layout);
  const pieces = comparePieces(before.layout, after.layout, match);
  const joints = comparePoints(
    before.layout.joints,
    after.layout.joints,
    matchJoints(before.layout, after.layout, match),
  );
  const hangers = matchSupports(before.layout.supports, after.layout.supports);
  const supports = comparePoints(before.layout.supports, after.layout.supports, hangers);
  const taps = compareTaps(before, after);
  const isTouched =
    [pieces.added, pieces.removed, pieces.replaced, joints.added, joints.removed].some((list) => list.length > 0) ||
    [taps.added, taps.removed, taps.moved].some((list) => list.length > 0) ||
    taps.changed.some(isOtherWork);
  return {
    length: { before: before.layout.length, after: after.layout.length },
    facts: compareFacts(before, after),
    pieces,
    joints,
    supports,
    taps,
    reopened: {
      joints: joints.added,
      supports: supports.added,
      loads: otherLoads(before.layout, after.layout, hangers),
      rods: hasOtherRods(before.run, after.run) ? supports.same : 0,
      turnedOver: isTurnedOver(before.layout, after.layout),
      insulationTests: isTouched ? boundary : [],
      labels: {
        joints: joints.added,
        taps: [...taps.added.map(({ tap }) => tap.id), ...taps.changed.filter(isOtherWork).map(nameOf)],
      },
      drops: otherDrops(before.run, after.run),
      hours: compareHours(before.hours, after.hours),
    },
  };
}

/** True when two revisions are the same to the floor. */
export function isSameToFloor({
  pieces,
  joints,
  supports,
  taps,
  reopened,
  length,
  facts,
}: RevisionDifference): boolean {
  const lists = [pieces.added, pieces.removed, pieces.moved, pieces.replaced, joints.added, joints.removed];
  const more = [joints.moved, supports.added, supports.removed, taps.added, taps.removed, taps.moved, taps.changed];
  return (
    length.before === length.after && [...lists, ...more, reopened.loads, facts].every((list) => list.length === 0)
  );
}

function comparePieces(before: RunLayout, after: RunLayout, match: Match): RevisionDifference['pieces'] {
  const old = (index: number): PieceAt => ({ index, piece: before.pieces[index]! });
  const now = (index: number): PieceAt => ({ index, piece: after.pieces[index]! });
  const place = ({ piece }: PieceAt) => `${piece.from} ${piece.to}`;
  const coming = new Map(match.added.map((index) => [place(now(index)), now(index)]));
  const replaced = match.removed.flatMap((index): Pair<PieceAt>[] => {
    const next = coming.get(place(old(index)));
    return next === undefined ? [] : [{ before: old(index), after: next }];
  });
  const gone = new Set(replaced.map((pair) => pair.before.index));
  const come = new Set(replaced.map((pair) => pair.after.index));
  const kept = match.kept.map(([from, to]) => ({ before: old(from), after: now(to) }));
  const moved = kept.filter((pair) => pair.before.piece.from !== pair.after.piece.from);
  return {
    added: match.added.filter((index) => !come.has(index)).map(now),
    removed: match.removed.filter((index) => !gone.has(index)).map(old),
    moved,
    replaced,
    same: kept.length - moved.length,
  };
}

function comparePoints(
  before: readonly { readonly at: Length }[],
  after: readonly { readonly at: Length }[],
  match: Match,
): ThingsDifference {
  const old = (index: number) => ({ index, at: before[index]!.at });
  const now = (index: number) => ({ index, at: after[index]!.at });
  const kept = match.kept.map(([from, to]) => ({ before: old(from), after: now(to) }));
  const moved = kept.filter((pair) => pair.before.at !== pair.after.at);
  return {
    added: match.added.map(now),
    removed: match.removed.map(old),
    moved,
    same: kept.length - moved.length,
  };
}

/** Below this a load is the same to any hanger, kg. */
const LOAD_STEP = 0.1;

function otherLoads(before: RunLayout, after: RunLayout, match: Match) {
  return match.kept.flatMap(([from, to]) => {
    const [old, now] = [before.supports[from]!, after.supports[to]!];
    const worst = Math.max(Math.abs(old.loadKg - now.loadKg), Math.abs(old.continuousLoadKg - now.continuousLoadKg));
    if (worst < LOAD_STEP) return [];
    return [{ before: { at: old.at, loadKg: old.loadKg }, after: { at: now.at, loadKg: now.loadKg } }];
  });
}

/** Another length, size or hold above: each hanger that stays is taken down to its rods. */
function hasOtherRods(before: Run, after: Run): boolean {
  return before.drop !== after.drop || before.rod !== after.rod || before.attachment !== after.attachment;
}

/** Cord and weight apart: the device itself, its phases or what its label says. */
function isOtherWork({ before, after }: RevisionDifference['taps']['changed'][number]): boolean {
  const bare = ({
    place: _place,
    drop: _drop,
    weightKg: _kg,
    fixed: _f,
    movablePhase: _m,
    ...rest
  }: typeof before.tap) => canonicalJson(rest);
  return bare(before.tap) !== bare(after.tap);
}

function nameOf({ after }: RevisionDifference['taps']['changed'][number]): string {
  return after.tap.id;
}

function otherDrops(before: Run, after: Run) {
  const old = new Map(before.taps.map((tap) => [tap.id, tap.drop]));
  const now = new Map(after.taps.map((tap) => [tap.id, tap.drop]));
  return [...new Set([...old.keys(), ...now.keys()])].flatMap((tap) => {
    const cord = { tap, before: old.get(tap) ?? null, after: now.get(tap) ?? null };
    return cord.before === cord.after ? [] : [cord];
  });
}

function compareHours(before: Revised['hours'], after: Revised['hours']): HoursDifference[] {
  const sum = (lines: Revised['hours'], activity: LabourLine['activity']) =>
    lines.filter((line) => line.activity === activity).reduce((total, line) => total + line.hours, 0);
  return [...new Set([...before, ...after].map((line) => line.activity))]
    .map((activity) => ({ activity, before: sum(before, activity), after: sum(after, activity) }))
    .filter((line) => Math.abs(line.after - line.before) > 1e-9);
}
