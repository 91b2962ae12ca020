import { expect, test } from 'vitest';
import type { RunLayout } from '../../../src/domain/layout/result.ts';
import type { Job, Run } from '../../../src/domain/model.ts';
import type { TakeoffItem } from '../../../src/domain/takeoff/result.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { fromMm } from '../../../src/domain/units/length.ts';
import { bidScenario } from '../../support/bid-scenario.ts';
import { aJob, aLayout, aRun, aTap, aType, feet, supportsAt } from '../../support/job.ts';

const lines = (job: Job, layouts: readonly RunLayout[], item: TakeoffItem) =>
  takeOff(job, layouts).filter((line) => line.item === item);
const count = (job: Job, layouts: readonly RunLayout[], item: TakeoffItem) =>
  lines(job, layouts, item).reduce((sum, line) => sum + line.quantity, 0);

/** The L-run of the worked scenario: two legs of 60 and 35 ft net round an inside elbow, through a fire wall at 39 ft. */
function lRun(): { run: Run; layout: RunLayout } {
  const run = aRun({
    crossings: [{ at: feet(39), thickness: feet(1), kind: 'fire-wall', fireRatingMin: 60 }],
    drop: feet(6.75),
    rod: '3/8',
  });
  const places = [0, 20, 30, 50, 60, 62, 82, 92, 97];
  const layout = aLayout(run, [], {
    length: feet(97),
    pieces: places.slice(0, -1).map((from, i) => ({
      from: feet(from),
      to: feet(places[i + 1]!),
      kind: from === 60 ? 'elbow' : 'stock',
      hand: from === 60 ? 'inside' : null,
    })),
    joints: places.slice(0, -1).map((place) => ({ at: feet(place) })),
    supports: supportsAt(2, 11.5, 21.25, 31, 40, 49, 58, 64, 71.75, 79.5, 87.25, 95),
  });
  return { run, layout };
}

test('the worked L-run takes 8 joints, an inside elbow, one cap, 12 hangers and 12 sticks of rod', () => {
  const { run, layout } = lRun();
  const job = aJob({ runs: [run] });
  const sections = lines(job, [layout], 'section').map(({ length, quantity }) => [length, quantity]);
  expect(sections).toEqual([
    [feet(20), 3],
    [feet(10), 3],
    [feet(5), 1],
  ]);
  expect(lines(job, [layout], 'elbow')).toMatchObject([{ hand: 'inside', quantity: 1, places: [feet(60)] }]);
  expect(count(job, [layout], 'contact-set')).toBe(8);
  expect(count(job, [layout], 'clamp')).toBe(16);
  expect(count(job, [layout], 'end-cap')).toBe(1);
  expect(count(job, [layout], 'support')).toBe(12);
  expect(lines(job, [layout], 'rod')).toMatchObject([{ kind: '3/8', length: feet(6.75), quantity: 12 }]);
  expect(lines(job, [layout], 'rod-stock')).toMatchObject([
    { kind: '3/8', length: feet(10), quantity: 12, run: null, level: null },
  ]);
  expect(count(job, [layout], 'nut')).toBe(36);
  expect(lines(job, [layout], 'fire-seal')).toMatchObject([{ kind: '60 min', quantity: 1, places: [feet(39)] }]);
});

test('a standard run of the bid scenario takes 24 labels and leaves 50 ft of slot to close', () => {
  const { job, layouts } = bidScenario();
  const own = takeOff(job, layouts).filter((line) => line.run === 'L1-R01');
  expect(own.find((line) => line.item === 'label')?.quantity).toBe(24);
  expect(own.find((line) => line.item === 'slot-closure')).toMatchObject({ quantity: 15.24, unit: 'm' });
  expect(own.find((line) => line.item === 'drop')).toMatchObject({ length: feet(4), quantity: 20 });
  expect(own.find((line) => line.item === 'tap')).toMatchObject({ kind: 'L1-N 30 A', quantity: 20 });
});

test('clamps, contact sets and bolts follow the numbers of the sheet', () => {
  const type = aType({ joint: { clamps: 4, contactSets: 2, bolts: 0, torqueNm: null, steps: null } });
  const job = aJob({ types: [type] });
  const layouts = [aLayout(job.runs[0]!, [20, 20, 10])];
  expect(count(job, layouts, 'clamp')).toBe(8);
  expect(count(job, layouts, 'contact-set')).toBe(4);
  expect(lines(job, layouts, 'bolt')).toEqual([]);
});

test('a run with no joints still needs its end cap and its feed', () => {
  const job = aJob();
  const layouts = [aLayout(job.runs[0]!, [20])];
  expect(lines(job, layouts, 'clamp')).toEqual([]);
  expect(lines(job, layouts, 'end-cap')).toMatchObject([{ quantity: 1, places: [feet(20)] }]);
  expect(lines(job, layouts, 'end-feed')).toMatchObject([{ kind: null, quantity: 1 }]);
});

test('a centre-fed run has a centre feed and two open ends', () => {
  const run = aRun({}, { kind: 'centre', at: feet(20) });
  const job = aJob({ runs: [run] });
  const layouts = [aLayout(run, [20, 20])];
  expect(lines(job, layouts, 'end-feed')).toMatchObject([{ kind: 'centre', quantity: 1, places: [feet(20)] }]);
  expect(lines(job, layouts, 'end-cap')).toMatchObject([{ quantity: 2, places: [0, feet(40)] }]);
});

test('a branch has one end cap and no feed of its own, and its tee is counted in the parent run', () => {
  const parent = aRun({ id: 'P' });
  const branch = aRun({ id: 'B' }, { kind: 'tee', fromRun: 'P', at: feet(21), branchSide: 'left' });
  const job = aJob({ runs: [parent, branch] });
  const pieces = [
    { from: 0, to: feet(20), kind: 'stock', hand: null },
    { from: feet(20), to: feet(22), kind: 'tee', hand: 'near-left' },
    { from: feet(22), to: feet(32), kind: 'stock', hand: null },
  ] as const;
  const layouts = [aLayout(parent, [], { pieces, length: feet(32) }), aLayout(branch, [10])];
  expect(lines(job, layouts, 'tee')).toMatchObject([{ run: 'P', hand: 'near-left', quantity: 1 }]);
  expect(lines(job, layouts, 'end-feed').map(({ run }) => run)).toEqual(['P']);
  expect(lines(job, layouts, 'end-cap').map(({ run, quantity }) => [run, quantity])).toEqual([
    ['P', 1],
    ['B', 1],
  ]);
});

test('a cut section is a line of its own beside a stock section of the same length', () => {
  const job = aJob();
  const pieces = [
    { from: 0, to: feet(10), kind: 'stock', hand: null },
    { from: feet(10), to: feet(20), kind: 'cut', hand: null },
  ] as const;
  expect(lines(job, [aLayout(job.runs[0]!, [], { pieces })], 'section')).toMatchObject([
    { kind: 'stock', length: feet(10), quantity: 1, unit: 'each' },
    { kind: 'cut', length: feet(10), quantity: 1, unit: 'each' },
  ]);
});

test('elbows of different hands are different parts', () => {
  const job = aJob();
  const pieces = [
    { from: 0, to: feet(2), kind: 'elbow', hand: 'inside' },
    { from: feet(2), to: feet(4), kind: 'elbow', hand: 'outside' },
    { from: feet(4), to: feet(6), kind: 'elbow', hand: 'inside' },
  ] as const;
  expect(lines(job, [aLayout(job.runs[0]!, [], { pieces })], 'elbow')).toMatchObject([
    { hand: 'inside', quantity: 2, places: [0, feet(4)] },
    { hand: 'outside', quantity: 1 },
  ]);
});

test('boxes that cover more than the slot leave nothing to close, and a box of unknown length covers nothing', () => {
  const taps = [1, 2, 3].map((place) => aTap({ id: `T${place}`, place: { at: feet(place) } }));
  const run = aRun({ taps });
  const covered = aJob({ types: [aType({ tap: { ...aType().tap, boxLength: feet(4) } })], runs: [run] });
  expect(lines(covered, [aLayout(run, [10])], 'slot-closure')).toEqual([]);
  const unknown = aJob({ types: [aType({ tap: { ...aType().tap, boxLength: null } })], runs: [run] });
  expect(lines(unknown, [aLayout(run, [10])], 'slot-closure')).toMatchObject([{ quantity: 3.048, unit: 'm' }]);
});

test('rod, nuts and anchors are counted only where the run says what they are', () => {
  const supports = supportsAt(1, 9);
  const bare = aRun();
  expect(takeOff(aJob({ runs: [bare] }), [aLayout(bare, [10], { supports })]).map(({ item }) => item)).not.toContain(
    'rod',
  );
  const told = aRun({ rod: '1/2', attachment: 'beam-clamp' });
  const job = aJob({ runs: [told] });
  const layouts = [aLayout(told, [10], { supports })];
  expect(lines(job, layouts, 'rod')).toMatchObject([{ kind: '1/2', length: null, quantity: 2 }]);
  expect(lines(job, layouts, 'anchor')).toMatchObject([{ kind: 'beam-clamp', quantity: 2 }]);
  expect(lines(job, layouts, 'nut')).toMatchObject([{ kind: '1/2', quantity: 6 }]);
  expect(lines(job, layouts, 'rod-stock')).toEqual([]);
});

test('rods of one diameter are cut together across runs, and each diameter for itself', () => {
  const runs = [
    aRun({ id: 'A', rod: '3/8', drop: feet(6) }),
    aRun({ id: 'B', rod: '3/8', drop: feet(4) }),
    aRun({ id: 'C', rod: '1/2', drop: feet(4) }),
  ];
  const job = aJob({ runs });
  const layouts = runs.map((run) => aLayout(run, [10], { supports: supportsAt(2, 8) }));
  expect(lines(job, layouts, 'rod-stock').map(({ kind, quantity }) => [kind, quantity])).toEqual([
    ['3/8', 2],
    ['1/2', 1],
  ]);
});

test('a fire wall of unknown rating is sealed, a rated floor too, and a plain wall is not', () => {
  const at = feet(5);
  const run = aRun({
    crossings: [
      { at, thickness: fromMm(200), kind: 'fire-wall', fireRatingMin: 0 },
      { at: feet(6), thickness: fromMm(200), kind: 'floor', fireRatingMin: 120 },
      { at: feet(7), thickness: fromMm(200), kind: 'wall', fireRatingMin: 0 },
    ],
  });
  expect(lines(aJob({ runs: [run] }), [aLayout(run, [10])], 'fire-seal')).toMatchObject([
    { kind: null, quantity: 1 },
    { kind: '120 min', quantity: 1 },
  ]);
});

test('tap-offs are ordered by connection, neutral and device, and only those with a drop take a cord', () => {
  const taps = [
    aTap({ id: 'a', phases: 'L1', deviceA: 30, drop: null }),
    aTap({ id: 'b', phases: 'L1-L2', neutral: false, deviceA: 20, drop: feet(4) }),
    aTap({ id: 'c', phases: 'L1-L2-L3', neutral: true, deviceA: 30, drop: feet(6) }),
    aTap({ id: 'd', phases: 'L1', deviceA: 30, drop: feet(4) }),
  ];
  const run = aRun({ taps });
  const job = aJob({ runs: [run] });
  const layouts = [aLayout(run, [10])];
  expect(lines(job, layouts, 'tap').map(({ kind, quantity }) => [kind, quantity])).toEqual([
    ['L1-N 30 A', 2],
    ['L1-L2 20 A', 1],
    ['L1-L2-L3-N 30 A', 1],
  ]);
  expect(lines(job, layouts, 'drop').map(({ length, quantity }) => [length, quantity])).toEqual([
    [feet(6), 1],
    [feet(4), 2],
  ]);
});

test('a run without a sound layout is left out, and what the estimator added stands last', () => {
  const runs = [aRun({ id: 'A' }), aRun({ id: 'B' })];
  const extra = { item: 'Lift', level: 'F1', quantity: 2.5, unit: 'week', price: null, hours: null, note: null };
  const job = aJob({ runs, extras: [extra] });
  const layouts = [aLayout(runs[0]!, [10], { ok: false }), aLayout(runs[1]!, [10])];
  const takeoff = takeOff(job, layouts);
  expect(new Set(takeoff.map(({ run }) => run))).toEqual(new Set(['B', null]));
  expect(takeoff.at(-1)).toMatchObject({ item: 'extra', kind: 'Lift', level: 'F1', quantity: 2.5, unit: 'week' });
});

test('every counted line can be opened at the places it was counted from', () => {
  const { run, layout } = lRun();
  const counted = takeOff(aJob({ runs: [run] }), [layout]).filter((line) => line.run !== null);
  const once: readonly TakeoffItem[] = [
    'section',
    'elbow',
    'end-feed',
    'end-cap',
    'support',
    'rod',
    'fire-seal',
    'label',
  ];
  for (const line of counted.filter(({ item }) => once.includes(item))) expect(line.places).toHaveLength(line.quantity);
  for (const line of counted) expect(line.places).toEqual([...line.places].sort((a, b) => a - b));
});
