import { describe, expect, test } from 'vitest';
import {
  aBook,
  aBranch,
  activity,
  aJob,
  aRun,
  aTap,
  aType,
  checksOf,
  type Json,
  type JsonObject,
  leg,
  printed,
} from './job-text.ts';

const labourOf = (job: JsonObject, activities: JsonObject, book: JsonObject = {}) =>
  printed({ ...job, labourBook: aBook(activities, book) }).labour!;
const hoursOf = (...args: Parameters<typeof labourOf>) => labourOf(...args).hours;
const level = (id: string, order: number, conditions: JsonObject = {}) => ({ id, name: id, order, conditions });

describe('what each activity counts: one run of two sections, one joint, three supports', () => {
  const taps = [aTap('A', 500, { dropMm: 1200 }), aTap('B', 1000, { dropMm: 2400 }), aTap('C', 2000)];
  const run = aRun({
    feed: { kind: 'end', terminations: 5 },
    taps,
    crossings: [{ atMm: 4000, thicknessMm: 100, kind: 'fire-wall' }],
  });
  const quantity = (id: string, unit = 'each', job = aJob({ runs: [run] })) =>
    labourOf(job, { [id]: activity(1, { unit }) }).byActivity;

  test.each([
    ['handle-section', 2],
    ['handle-tap', 3],
    ['support', 3],
    ['section', 2],
    ['joint', 1],
    ['end-feed', 1],
    ['termination', 5],
    ['end-cap', 1],
    ['tap', 3],
    ['drop', 2],
    ['fire-seal', 1],
    ['test-insulation', 1],
    ['test-ground', 1],
    ['test-joint', 1],
    ['torque-log', 1],
    ['test-tap', 3],
    ['thermal-scan', 1],
    ['test-papers', 1],
    ['punch', 1],
    ['label', 4],
  ])('%s: %d', (id, expected) => {
    expect(quantity(id)).toEqual([{ activity: id, quantity: expected, hours: expected }]);
  });
  test('lay-out and slot closure by length, in the unit of the labour book', () => {
    expect(quantity('lay-out', 'm')).toMatchObject([{ quantity: 6 }]);
    expect(quantity('lay-out', '100 ft')).toMatchObject([{ quantity: 0.1968504 }]);
    expect(quantity('slot-closure', 'm')[0]!.quantity).toBeCloseTo(6 - 0.003, 9);
  });
  test('"with feed.joins the feed has a joint at 0, counted in joint hours"; a centre feed two', () => {
    const joins = [aType({ feed: { joins: true, weightKg: 0 } })];
    expect(quantity('joint', 'each', aJob({ buswayTypes: joins }))).toMatchObject([{ quantity: 2 }]);
    const centre = aJob({ buswayTypes: joins, runs: [aRun({ feed: { kind: 'centre', atMm: 3000 } })] });
    expect(quantity('joint', 'each', centre)).toMatchObject([{ quantity: 2 }]);
  });
  test("elbows and tees in the run they stand in, the branch's joint in the branch", () => {
    const job = aJob({
      runs: [
        aRun({ id: 'P', legs: [leg(3300, 'left'), leg(6900)] }),
        aBranch('B', 'P', 6900, 'left', { legs: [leg(3300)] }),
      ],
    });
    const labour = labourOf(job, { elbow: activity(1), tee: activity(10), joint: activity(100) });
    expect(labour.byRun).toEqual([
      { run: 'P', hours: 1 + 10 + 400 },
      { run: 'B', hours: 100 },
    ]);
  });
  test('an activity that the book does not hold has no hours', () => {
    expect(labourOf(aJob(), { joint: activity(1) }).byActivity).toEqual([{ activity: 'joint', quantity: 1, hours: 1 }]);
  });
  test('"bands" go by the length of the piece: up to and at 1500 the first, above the next, beyond the last the last', () => {
    const section = activity(9, {
      bands: [
        { upToMm: 3000, low: 5, likely: 5, high: 5 },
        { upToMm: 1500, low: 1, likely: 1, high: 1 },
      ],
    });
    expect(hoursOf(aJob({ runs: [aRun({ legs: [leg(4500)] })] }), { section }).likely).toBe(6);
    const long = aJob({ buswayTypes: [aType({ stockLengthsMm: [6000] })] });
    expect(hoursOf(long, { section }).likely).toBe(5);
  });
  test('an activity without "factors" is one that no condition touches: the key may be left out', () => {
    const { factors: _, ...plain } = activity(1);
    const job = aJob({ levels: [level('F1', 1, { congestion: 'tight' })] });
    const book = { factors: { congestion: { open: 0, normal: 15, tight: 35 } } };
    expect(hoursOf(job, { section: plain }, book).likely).toBe(2);
  });
});

test('hours under a name that is no activity are told, in the book and in its curve', () => {
  const labourBook = aBook(
    { joints: activity(1), section: activity(1) },
    { learning: { rate: 0.9, referenceRepeat: 1, over: 'run', activities: ['section', 'sections'] } },
  );
  const unknown = checksOf(printed({ ...aJob(), labourBook }), 'labour.unknown-activity');
  expect(unknown.map(({ severity, message }) => [severity, /"(.*)"/.exec(message)![1]])).toEqual([
    ['warning', 'joints'],
    ['warning', 'sections'],
  ]);
});

describe('condition factors: "height"|"congestion"|"storey"|"live", added or compounded', () => {
  const factors: JsonObject = {
    height: [
      { overMm: 4572, percent: 20 },
      { overMm: 3658, percent: 10 },
    ],
    congestion: { open: 1, normal: 15, tight: 35 },
    storeyPercentEach: 1,
    livePercent: 30,
  };
  const hours = (conditions: JsonObject, names: Json[], policy = 'add') =>
    hoursOf(
      aJob({ levels: [level('F1', 1, conditions)] }),
      { section: activity(0.5, { factors: names }) },
      { factors, policy },
    ).likely;
  const all = ['height', 'congestion', 'storey', 'live'];

  test('height bands count strictly over, and the highest alone', () => {
    expect(hours({ mountingHeightMm: 3658 }, ['height'])).toBe(1);
    expect(hours({ mountingHeightMm: 3658.0125 }, ['height'])).toBe(1.1);
    expect(hours({ mountingHeightMm: 4572 }, ['height'])).toBe(1.1);
    expect(hours({ mountingHeightMm: 4573 }, ['height'])).toBe(1.2);
  });
  test('defaults: "conditions open, not live, 0 storeys"', () => {
    expect(hours({}, all)).toBe(1.01);
    expect(hoursOf(aJob(), { section: activity(0.5, { factors: all }) }, { factors }).likely).toBe(1.01);
  });
  test('storeys each, and live only where it is', () => {
    expect(hours({ storeysAboveGrade: 3 }, ['storey'])).toBe(1.03);
    expect(hours({ liveArea: true }, ['live'])).toBe(1.3);
    expect(hours({ liveArea: false }, ['live'])).toBe(1);
  });
  test('1.2, 1.15, 1.05, 1.3: added 1.7, compounded 1.88370', () => {
    const conditions = { mountingHeightMm: 5000, congestion: 'normal', storeysAboveGrade: 5, liveArea: true };
    expect(hours(conditions, all)).toBeCloseTo(1.7, 9);
    expect(hours(conditions, all, 'compound')).toBeCloseTo(1.2 * 1.15 * 1.05 * 1.3, 6);
  });
  test('a factor touches only the activities that name it', () => {
    const conditions = { mountingHeightMm: 5000, congestion: 'tight', liveArea: true };
    expect(hours(conditions, ['congestion'])).toBe(1.35);
    expect(hours(conditions, [])).toBe(1);
  });
  test('a factor that the book does not state adds nothing', () => {
    const job = aJob({
      levels: [level('F1', 1, { congestion: 'tight', liveArea: true, storeysAboveGrade: 9, mountingHeightMm: 9000 })],
    });
    expect(hoursOf(job, { section: activity(1, { factors: all }) }).likely).toBe(2);
  });
});

describe('learning: Crawford unit curve T_n = T_ref (n/n_ref)^(log2 rate), in level order then document order', () => {
  const job = aJob({
    levels: [level('Upper', 2), level('Lower', 1)],
    runs: [
      aRun({ id: 'U1', level: 'Upper' }),
      aRun({ id: 'L1', level: 'Lower' }),
      aRun({ id: 'U2', level: 'Upper' }),
      aRun({ id: 'L2', level: 'Lower' }),
    ],
  });
  const learn = (learning: JsonObject, activities: JsonObject = { section: activity(0.5) }) =>
    labourOf(job, activities, { learning: { rate: 0.5, referenceRepeat: 1, over: 'run', ...learning } });
  const byRun = (learning: JsonObject, activities?: JsonObject) =>
    Object.fromEntries(learn(learning, activities).byRun.map(({ run, hours }) => [run, hours]));

  test('halving at each doubling is 1/n: the lower level comes first', () => {
    expect(byRun({})).toEqual({ L1: 1, L2: 0.5, U1: 0.333333, U2: 0.25 });
  });
  test('over levels all runs of a level are one repeat', () => {
    expect(byRun({ over: 'level' })).toEqual({ L1: 1, L2: 1, U1: 0.5, U2: 0.5 });
  });
  test('the base hours stand for the reference repeat', () => {
    expect(byRun({ referenceRepeat: 4 })).toEqual({ L1: 4, L2: 2, U1: 1.333333, U2: 1 });
  });
  // Crawford 80 %: unit 4 takes 0.64 of the first (table of unit curves).
  test('80 %: 1, 0.8, 0.7021, 0.64', () => {
    expect(byRun({ rate: 0.8 })).toEqual({ L1: 1, L2: 0.8, U1: 0.702104, U2: 0.64 });
  });
  test('only the activities named are learned', () => {
    const activities = { section: activity(0.5), joint: activity(1) };
    expect(byRun({ activities: ['section'] }, activities)).toMatchObject({ L1: 2, U2: 1.25 });
  });
  test('levels and runs are printed in their own orders, and add up', () => {
    const { byLevel, byRun: runs, hours } = learn({});
    expect(byLevel.map((line) => line.level).sort()).toEqual(['Lower', 'Upper']);
    expect(byLevel.reduce((sum, line) => sum + line.hours, 0)).toBeCloseTo(hours.likely, 5);
    expect(runs.map((line) => line.run)).toEqual(['U1', 'L1', 'U2', 'L2']);
  });
});

describe('non-productive time, crew and extras', () => {
  test('nonProductivePercent raises every hour: 2 h become 2.12, in every part', () => {
    const labour = labourOf(aJob(), { section: activity(1) }, { nonProductivePercent: 6 });
    expect(labour.hours.likely).toBe(2.12);
    expect(labour.byActivity[0]!.hours).toBe(2.12);
    expect(labour.byLevel).toEqual([{ level: 'F1', hours: 2.12 }]);
  });
  test('cost of a productive hour: Σ(n·rate)/Σ(n·effectiveness) = 332/3.25', () => {
    const crew = [
      { role: 'Foreman', number: 1, ratePerHour: 9800, effectiveness: 0.5 },
      { role: 'Journeyman', number: 2, ratePerHour: 8800, effectiveness: 1 },
      { role: 'Apprentice', number: 1, ratePerHour: 5800, effectiveness: 0.75 },
    ];
    expect(labourOf(aJob(), { section: activity(1) }, { crew }).costPerProductiveHour).toBeCloseTo(33_200 / 3.25, 6);
    expect(labourOf(aJob(), { section: activity(1) }).costPerProductiveHour).toBeNull();
  });
  test('hours of an extra are its own, times its quantity, at its level', () => {
    const job = {
      ...aJob(),
      extras: [
        { item: 'Hoist', level: 'F1', quantity: 2, unit: 'day', hours: 4 },
        { item: 'Permit', quantity: 1, unit: 'lot', hours: 3 },
        { item: 'Glove', quantity: 9, unit: 'pair' },
      ],
    };
    const labour = labourOf(job, { section: activity(1) });
    expect(labour.hours.likely).toBe(2 + 8 + 3);
    expect(labour.byLevel).toEqual([{ level: 'F1', hours: 10 }]);
    expect(labour.byRun).toEqual([{ run: 'R', hours: 2 }]);
  });
  test('without a labour book there are no hours', () => {
    expect(printed(aJob()).labour).toBeNull();
  });
});

describe('range: PERT mean (a+4m+b)/6 and variance (μ−a)(b−μ)/7, sums with ΣΣρσσ', () => {
  const three = (low: number, likely: number, high: number) => activity(likely, { low, high });
  const mean = (a: number, m: number, b: number) => (a + 4 * m + b) / 6;
  const sd = (a: number, m: number, b: number) => Math.sqrt(((mean(a, m, b) - a) * (b - mean(a, m, b))) / 7);

  test('one activity, two sections of 1/2/5 h', () => {
    const hours = hoursOf(aJob(), { section: three(1, 2, 5) });
    expect(hours.likely).toBe(4);
    expect(hours.mean).toBeCloseTo(2 * mean(1, 2, 5), 5);
    expect(hours.sd).toBeCloseTo(2 * sd(1, 2, 5), 5);
  });
  // The activities of a textbook network: 5/8/17 has mean 9; the six-sigma variance there is 4, ours the beta's own.
  test('5/8/17 has mean 9 and variance (9−5)(17−9)/7', () => {
    const hours = hoursOf(aJob(), { joint: three(5, 8, 17) });
    expect(hours.mean).toBe(9);
    expect(hours.sd).toBeCloseTo(Math.sqrt(32 / 7), 5);
  });
  test('conditions, learning and lost time scale the range like the hours', () => {
    const hours = hoursOf(
      aJob({ levels: [level('F1', 1, { liveArea: true })] }),
      { joint: activity(2, { low: 1, high: 5, factors: ['live'] }) },
      { factors: { livePercent: 50 }, nonProductivePercent: 10 },
    );
    expect(hours.sd).toBeCloseTo(sd(1, 2, 5) * 1.65, 5);
  });
  const two = { section: three(1, 2, 5), joint: three(3, 4, 9), support: activity(1) };
  const sds = [2 * sd(1, 2, 5), sd(3, 4, 9)] as const;
  test('correlation 0: squares add; 1: deviations add; 0.5 between', () => {
    expect(hoursOf(aJob(), two).sd).toBeCloseTo(Math.hypot(...sds), 5);
    expect(hoursOf(aJob(), two, { correlation: 1 }).sd).toBeCloseTo(sds[0] + sds[1], 5);
    expect(hoursOf(aJob(), two, { correlation: 0.5 }).sd).toBeCloseTo(
      Math.sqrt(sds[0] ** 2 + sds[1] ** 2 + sds[0] * sds[1]),
      5,
    );
  });
  test('no spread: every percentile is the likely hours', () => {
    const hours = hoursOf(aJob(), { section: activity(1.5) });
    expect(hours).toEqual({ likely: 3, mean: 3, sd: 0, p10: 3, p50: 3, p80: 3, p90: 3 });
  });
  test('percentiles agree with a Monte Carlo of its own (gamma ratios, another generator) within 1 %', () => {
    const drawn = independentDraws(200_000);
    const hours = hoursOf(aJob(), two, { trials: 100_000 });
    for (const [p, value] of [
      [0.1, hours.p10],
      [0.5, hours.p50],
      [0.8, hours.p80],
      [0.9, hours.p90],
    ] as const) {
      expect(Math.abs(value / drawn[Math.floor(p * drawn.length)]! - 1)).toBeLessThan(0.01);
    }
  });
  test('fully linked, the percentiles of the sum are the sums of the percentiles', () => {
    const linked = (activities: JsonObject) => hoursOf(aJob(), activities, { correlation: 1, trials: 50_000 });
    const [sum, a, b] = [
      linked({ section: two.section, joint: two.joint }),
      linked({ section: two.section }),
      linked({ joint: two.joint }),
    ];
    expect(Math.abs(sum.p90 / (a.p90 + b.p90) - 1)).toBeLessThan(0.01);
    expect(Math.abs(sum.p10 / (a.p10 + b.p10) - 1)).toBeLessThan(0.01);
  });
  test('the seed is 1 and the trials are 10 000 where none are given; another seed moves the percentiles a little', () => {
    const plain = hoursOf(aJob(), two);
    expect(hoursOf(aJob(), two, { seed: 1, trials: 10_000, correlation: 0 })).toEqual(plain);
    const other = hoursOf(aJob(), two, { seed: 2 });
    expect(other.p80).not.toBe(plain.p80);
    expect(Math.abs(other.p80 / plain.p80 - 1)).toBeLessThan(0.02);
  });
  test('a single trial and percentiles in order', () => {
    const { p10, p50, p80, p90 } = hoursOf(aJob(), two, { trials: 1 });
    expect([p10, p50, p80, p90].every((value) => value === p10)).toBe(true);
    const range = hoursOf(aJob(), two);
    expect(range.p10 < range.p50 && range.p50 < range.p80 && range.p80 < range.p90).toBe(true);
  });
});

/** 2 x PERT(1, 2, 5) + PERT(3, 4, 9) + 3, one draw an activity, sorted. */
function independentDraws(count: number): number[] {
  const random = mulberry(20_240_101);
  const pert = (a: number, m: number, b: number) => {
    const x = gamma(1 + (4 * (m - a)) / (b - a), random);
    const y = gamma(1 + (4 * (b - m)) / (b - a), random);
    return a + ((b - a) * x) / (x + y);
  };
  return Array.from({ length: count }, () => 2 * pert(1, 2, 5) + pert(3, 4, 9) + 3).sort((a, b) => a - b);
}

/** Marsaglia and Tsang's method for shapes of 1 and more. */
function gamma(shape: number, random: () => number): number {
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - random()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

function mulberry(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}
