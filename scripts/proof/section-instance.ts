import type { BuswayTypeDocument, JobDocument, RunDocument } from '../../src/document/job-document.ts';
import type { Dice } from './dice.ts';
import { distinct, smallJob, smallRun, smallTap, smallType } from './small-jobs.ts';

/** Instances whose coverings a person's patience, or a plain enumeration, can still write out. */
const MOST_COVERINGS = 20_000;
/** What the lengths of an instance are multiples of, mm: millimetres, inches, and the finest length that is kept. */
const GRAINS_MM = [100, 25.4, 12.5, 1.5875] as const;

/**
 * A small run with all that decides a covering: stock, cuts, prices with ties, corners, tees, a centre feed, walls, zones,
 * fixed taps, a free end. Drawn again until there are few enough coverings to write out.
 */
export function sectionInstance(dice: Dice): JobDocument {
  for (;;) {
    const job = drawn(dice);
    if (coveringsOf(job) <= MOST_COVERINGS) return job;
  }
}

function drawn(dice: Dice): JobDocument {
  const grain = dice.pick(GRAINS_MM);
  const type = typeFor(dice, grain);
  const run = runFor(dice, grain, type);
  const branch = dice.chance(25) ? branchOf(dice, grain, run, type) : [];
  return smallJob(type, [run, ...branch], dice.chance(50) ? { labourBook: joiners(dice) } : {});
}

function typeFor(dice: Dice, grain: number): BuswayTypeDocument {
  const stock = distinct(dice, dice.int(1, 4), 4, 24);
  const least = dice.int(2, 8);
  const step = dice.pick([0.5, 1, 1, 2, 3]);
  const cut = { minMm: least * grain, maxMm: (least + dice.int(0, 14) * step) * grain, stepMm: step * grain };
  const leg = { legMm: dice.int(1, 2) * grain, handed: dice.chance(80) };
  return smallType({
    stockLengthsMm: stock.map((length) => length * grain),
    factoryCut: dice.chance(50) ? cut : null,
    feed: { joins: dice.chance(50) },
    tap: { jointClearMm: dice.int(0, 3) * grain },
    crossing: { jointClearMm: dice.int(0, 3) * grain, supportClearMm: 0 },
    fittings: { elbow: leg, tee: leg },
    prices: pricesFor(dice, grain, stock),
  });
}

/** Few different prices, so that many coverings cost the same and the ties decide; now and then none at all. */
function pricesFor(dice: Dice, grain: number, stock: readonly number[]): BuswayTypeDocument['prices'] {
  if (dice.chance(15)) return undefined;
  const priced = stock.filter(() => dice.chance(80));
  const proportional = dice.chance(40);
  return {
    sections: priced.map((length) => ({
      lengthMm: length * grain,
      price: proportional ? 100 * length : 100 * dice.int(3, 12),
    })),
    // Whole minor units at every length of these instances, so that no rounding can decide between two coverings.
    ...(dice.chance(60) && grain === 100 && { sectionPerM: 1000 * dice.int(0, 3) }),
    ...(dice.chance(60) && { cutSurcharge: 100 * dice.int(0, 4) }),
    ...(dice.chance(60) && { jointKit: 100 * dice.int(0, 6) }),
  };
}

function joiners(dice: Dice): NonNullable<JobDocument['labourBook']> {
  return {
    version: 'proof',
    policy: 'add',
    activities: { joint: { unit: 'each', low: 0.5, likely: dice.pick([0.5, 1, 2]), high: 3, factors: [] } },
    crew: [
      { role: 'journeyman', number: 2, ratePerHour: 200, effectiveness: 1 },
      { role: 'foreman', number: 1, ratePerHour: 200, effectiveness: 0 },
    ],
  };
}

const TURNS = ['left', 'right', 'up', 'down'] as const;

function runFor(dice: Dice, grain: number, type: BuswayTypeDocument): RunDocument {
  const count = dice.pick([1, 1, 2, 2, 3]);
  const finer = dice.chance(10) ? 0.5 : 0;
  const lengths = Array.from({ length: count }, () => dice.int(5, 70) + finer);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const legs = lengths.map((length, i) => ({
    lengthMm: length * grain,
    turn: i === count - 1 ? ('none' as const) : dice.pick(TURNS),
  }));
  const last = lengths.at(-1)!;
  const elbow = type.fittings!.elbow!.legMm / grain;
  const reach = Math.max(elbow + 1, last - dice.int(0, 12));
  const places = distinct(dice, dice.int(0, 3), 1, Math.max(5, Math.floor(total) - 1));
  return smallRun({
    conductorSide: dice.pick(['left', 'right'] as const),
    feed:
      dice.chance(12) && lengths[0]! > 8
        ? { kind: 'centre', atMm: dice.int(2, Math.floor(lengths[0]! - elbow - 1)) * grain }
        : { kind: 'end' },
    ...(dice.chance(45) && { end: { reachMm: reach * grain, hardStopMm: (last + dice.int(0, 12)) * grain } }),
    legs,
    crossings: zones(dice, 35, total).map(([from, to]) => ({
      atMm: ((from + to) / 2) * grain,
      thicknessMm: (to - from) * grain,
      kind: 'wall' as const,
    })),
    noJoint: zones(dice, 25, total).map(([from, to]) => ({ fromMm: from * grain, toMm: to * grain })),
    taps: places
      .filter((at) => at < total)
      .map((at, i) => smallTap(`T${i + 1}`, at * grain, { fixed: dice.chance(60) })),
  });
}

function zones(dice: Dice, percent: number, total: number): [number, number][] {
  if (!dice.chance(percent)) return [];
  const from = dice.int(1, Math.max(1, Math.floor(total) - 4));
  return [[from, Math.min(from + dice.int(1, 6), total)]];
}

/** A branch on the first leg, where there is room for a tee. */
function branchOf(dice: Dice, grain: number, parent: RunDocument, type: BuswayTypeDocument): RunDocument[] {
  const leg = type.fittings!.tee!.legMm / grain;
  const room = Math.floor(parent.legs[0]!.lengthMm / grain) - 2 * leg - 1;
  if (parent.feed.kind !== 'end' || room < leg + 1) return [];
  return [
    smallRun({
      id: 'R1-B',
      conductorSide: dice.pick(['left', 'right'] as const),
      feed: {
        kind: 'tee',
        fromRun: parent.id,
        atMm: dice.int(leg, room) * grain,
        branchSide: dice.pick(['left', 'right'] as const),
      },
      legs: [{ lengthMm: dice.int(5, 60) * grain, turn: 'none' }],
    }),
  ];
}

/** An upper bound on the coverings of the longest straight part, counted and not written out. */
function coveringsOf(job: JobDocument): number {
  const type = job.buswayTypes[0]!;
  const longest = Math.max(
    ...job.runs.map((run) => Math.max(...run.legs.map((leg) => leg.lengthMm), run.end?.hardStopMm ?? 0)),
  );
  const cut = type.factoryCut;
  const cuts = cut === null ? 0 : Math.floor((cut.maxMm - cut.minMm) / cut.stepMm + 1e-9) + 1;
  const grainMm = Math.min(...type.stockLengthsMm) / 40;
  const cells = Math.ceil(longest / grainMm);
  const ways = Array.from({ length: cells + 1 }, () => 0);
  ways[0] = 1;
  let all = 1;
  for (let at = 1; at <= cells; at += 1) {
    for (const stock of type.stockLengthsMm) ways[at]! += ways[at - Math.floor(stock / grainMm)] ?? 0;
    all += ways[at]!;
  }
  return all * (1 + cuts);
}
