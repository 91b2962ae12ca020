import type { BuswayTypeDocument, JobDocument, RunDocument } from '../../../src/document/job-document.ts';

/**
 * What stands fixed along a run before anything is chosen, read straight from the job document by its own page of rules.
 * Part of the references: nothing here comes from the program that is being checked. Lengths are counts of 1/80 mm.
 */
export interface RunShape {
  readonly fittings: readonly ReferenceFitting[];
  /** What sections have to cover, in order; the last one's `to` is as drawn. */
  readonly parts: readonly Stretch[];
  /** Where the last part may end. */
  readonly ends: Stretch;
  /** Joints that the feed makes, beside those where sections and fittings meet. */
  readonly feedJoints: readonly number[];
  /** Where a centre feed stands; 0 for any other feed. */
  readonly feedAt: number;
  /** Open intervals that hold no joint: a joint exactly on a bound passes. */
  readonly jointBars: readonly Stretch[];
}

export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export interface ReferenceFitting extends Stretch {
  readonly kind: 'elbow' | 'tee';
  readonly hand: string | null;
  readonly weightKg: number;
}

export const units = (mm: number): number => Math.round(mm * 80);

export function typeOf(job: JobDocument, run: RunDocument): BuswayTypeDocument {
  return job.buswayTypes.find((type) => type.id === run.type)!;
}

export function runShape(job: JobDocument, run: RunDocument): RunShape {
  const type = typeOf(job, run);
  const start = startOf(run, type);
  const fittings = [...elbowsOf(run, type, start), ...teesOf(job, run, type)].sort((a, b) => a.from - b.from);
  const drawnEnd = run.legs.reduce((sum, leg) => sum + units(leg.lengthMm), start);
  const lastLegStarts = drawnEnd - units(run.legs.at(-1)!.lengthMm);
  const centreFeed = run.feed.kind === 'centre' ? units(run.feed.atMm!) : null;
  return {
    fittings,
    parts: partsBetween(fittings, centreFeed, drawnEnd),
    ends: run.end
      ? { from: lastLegStarts + units(run.end.reachMm), to: lastLegStarts + units(run.end.hardStopMm) }
      : { from: drawnEnd, to: drawnEnd },
    feedJoints: feedJoints(run, type),
    feedAt: centreFeed ?? 0,
    jointBars: jointBars(run, type),
  };
}

/** Where the first leg's length is measured from: a branch's from the centre of its tee, whose arm ends at the branch's 0. */
function startOf(run: RunDocument, type: BuswayTypeDocument): number {
  return run.feed.kind === 'tee' ? -units(type.fittings!.tee!.legMm) : 0;
}

/** An elbow takes its leg off both sides of the corner. Inside: it turns towards the conductor side; up: slot outside. */
function elbowsOf(run: RunDocument, type: BuswayTypeDocument, start: number): ReferenceFitting[] {
  const elbow = type.fittings?.elbow;
  let corner = start;
  return run.legs.flatMap((leg) => {
    corner += units(leg.lengthMm);
    if (leg.turn === 'none') return [];
    const vertical = leg.turn === 'up' ? 'slot-outside' : 'slot-inside';
    const horizontal = leg.turn === run.conductorSide ? 'inside' : 'outside';
    const hand = leg.turn === 'up' || leg.turn === 'down' ? vertical : horizontal;
    return [
      {
        kind: 'elbow' as const,
        from: corner - units(elbow!.legMm),
        to: corner + units(elbow!.legMm),
        hand: elbow!.handed === false ? null : hand,
        weightKg: elbow!.weightKg ?? 0,
      },
    ];
  });
}

/** Near: the branch leaves on the parent's conductor side; left or right: the branch's own side, looking away. */
function teesOf(job: JobDocument, run: RunDocument, type: BuswayTypeDocument): ReferenceFitting[] {
  const tee = type.fittings?.tee;
  return job.runs
    .filter((branch) => branch.feed.kind === 'tee' && branch.feed.fromRun === run.id)
    .map((branch) => ({
      kind: 'tee' as const,
      from: units(branch.feed.atMm!) - units(tee!.legMm),
      to: units(branch.feed.atMm!) + units(tee!.legMm),
      hand:
        tee!.handed === false
          ? null
          : `${branch.feed.branchSide === run.conductorSide ? 'near' : 'far'}-${branch.conductorSide}`,
      weightKg: tee!.weightKg ?? 0,
    }));
}

/** The leg less the fittings' legs at its ends. A centre feed parts the sections without taking length. */
function partsBetween(fittings: readonly ReferenceFitting[], centreFeed: number | null, end: number): Stretch[] {
  const breaks: Stretch[] = [...fittings];
  if (centreFeed !== null) breaks.push({ from: centreFeed, to: centreFeed });
  breaks.sort((a, b) => a.from - b.from);
  const starts = [0, ...breaks.map((one) => one.to)];
  const stops = [...breaks.map((one) => one.from), end];
  return starts.map((from, i) => ({ from, to: stops[i]! }));
}

/**
 * The feed's joint, where the type has one, and a branch's at its tee. A centre feed that joins has two: one more than
 * where its two sections would meet anyway.
 */
function feedJoints(run: RunDocument, type: BuswayTypeDocument): number[] {
  const joins = type.feed?.joins === true;
  if (run.feed.kind === 'centre') return joins ? [units(run.feed.atMm!)] : [];
  return joins || run.feed.kind === 'tee' ? [0] : [];
}

function jointBars(run: RunDocument, type: BuswayTypeDocument): Stretch[] {
  const wall = units(type.crossing?.jointClearMm ?? 0);
  const tap = units(type.tap?.jointClearMm ?? 0);
  const walls = (run.crossings ?? []).map((crossing) => ({
    from: units(crossing.atMm) - units(crossing.thicknessMm) / 2 - wall,
    to: units(crossing.atMm) + units(crossing.thicknessMm) / 2 + wall,
  }));
  const zones = (run.noJoint ?? []).map((zone) => ({ from: units(zone.fromMm), to: units(zone.toMm) }));
  const taps = (run.taps ?? [])
    .filter((one) => one.fixed === true)
    .map((one) => ({ from: units(one.atMm!) - tap, to: units(one.atMm!) + tap }));
  return [...walls, ...zones, ...taps];
}

export function isInside(bars: readonly Stretch[], at: number): boolean {
  return bars.some((bar) => at > bar.from && at < bar.to);
}
