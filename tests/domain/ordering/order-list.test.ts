import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model.ts';
import type { Manning } from '../../../src/domain/ordering/need-dates.ts';
import { type Order, orderList } from '../../../src/domain/ordering/order-list.ts';
import { type OrderThing, orderThings } from '../../../src/domain/ordering/order-things.ts';
import type { Ordering } from '../../../src/domain/ordering/ordering.ts';
import { sparesOf } from '../../../src/domain/ordering/spares.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { bidScenario } from '../../support/bid-scenario.ts';
import { aJob, aLayout, aLevel, aRun, feet, supportsAt } from '../../support/job.ts';
import { anOrdering, aSpareRule, manned } from '../../support/ordering.ts';

const levels = [aLevel({ id: 'F1', order: 1 }), aLevel({ id: 'F2', order: 2 })];
const runs = levels.map(({ id }) => aRun({ id: `${id}-R1`, level: id, rod: '3/8', drop: feet(6) }));
const layouts = runs.map((run) =>
  aLayout(run, [20, 10], {
    supports: supportsAt(2, 11, 20, 28),
    joints: [{ at: 0 }, { at: feet(20) }],
  }),
);
const extra = { item: 'Hookstick', level: 'F1', quantity: 2, unit: 'each', price: null, hours: null, note: null };

function ordered(ordering: Partial<Ordering>, manning: Manning | null, changes: Partial<Job> = {}): readonly Order[] {
  const base = aJob({ levels, runs, extras: [extra], ...changes });
  const rules = anOrdering(ordering);
  const job = { ...base, project: { ...base.project, ordering: rules } };
  const things = orderThings(job, layouts, takeOff(job, layouts));
  return orderList(things, sparesOf(things, rules.spares).lines, { levels, ordering: rules, manning });
}

const say = (orders: readonly Order[]) =>
  orders.map(({ level, number, need, orderBy, lines }) => [
    `${level ?? 'job'} ${number}`,
    need.date ?? need.why,
    orderBy,
    lines.map(({ item }) => item).join(' '),
  ]);

// By hand (see `manned`): hangers start on 4 and 7 May, sections on 7 and 12 May; 42 days before are 26 and 31 March.
test('material stands by floor and need date, the last day to order is the lead time before it', () => {
  const leadDays = new Map([
    ['section', 42],
    ['support', 7],
  ] as const);
  expect(say(ordered({ leadDays }, manned(levels)))).toEqual(
    [
      ['F1 1', '2026-05-07', '2026-03-26', 'section'],
      ['F1 2', '2026-05-04', '2026-04-27', 'support'],
      ['F1 3', '2026-05-04', null, 'nut'],
      ['F1 4', '2026-05-07', null, 'clamp contact-set bolt'],
      ['F1 5', 'by-hand', null, 'extra'],
      ['F1 6', 'no-crew', null, 'end-feed end-cap slot-closure label'],
      ['F2 1', '2026-05-12', '2026-03-31', 'section'],
      ['F2 2', '2026-05-07', '2026-04-30', 'support'],
      ['F2 3', '2026-05-07', null, 'nut'],
      ['F2 4', '2026-05-12', null, 'clamp contact-set bolt'],
      ['F2 5', 'no-crew', null, 'end-feed end-cap slot-closure label'],
      ['job 1', '2026-05-04', null, 'rod-stock'],
    ].map(([order, need, orderBy, items]) => [order, need, orderBy, items === 'section' ? 'section section' : items]),
  );
});

test('without a crew plan the list is by floor and no date is made up', () => {
  const orders = ordered({ leadDays: new Map([['section', 42]]) }, null);
  expect(orders.every(({ need, orderBy }) => need.date === null && orderBy === null)).toBe(true);
  expect(orders.flatMap(({ lines }) => lines).filter(({ need }) => need.why !== 'no-plan')).toMatchObject([
    { item: 'extra', kind: 'Hookstick', need: { why: 'by-hand' } },
  ]);
});

test('a plan without hours gives no dates either', () => {
  const { plan } = manned(levels);
  const orders = ordered({}, { plan, schedule: null });
  expect(orders.flatMap(({ need }) => need.why)).toContain('no-hours');
  expect(orders.every(({ need }) => need.date === null)).toBe(true);
});

test('waste and spares come with the first of their thing, the owner’s with the last, each on a line of its own', () => {
  const spares = [aSpareRule('clamp', { wastePercent: 5, percent: 10, minimum: 3, ownerSpares: 2 })];
  const clamps = ordered({ spares }, manned(levels))
    .flatMap(({ lines }) => lines)
    .filter(({ item }) => item === 'clamp');
  expect(clamps.map(({ purpose, level, quantity, need }) => [purpose, level, quantity, need.date])).toEqual([
    ['work', 'F1', 4, '2026-05-07'],
    ['work', 'F2', 4, '2026-05-12'],
    ['waste', null, 1, '2026-05-07'], // 5 % of 8 are 0.4
    ['spare', null, 3, '2026-05-07'], // 10 % of 8 are 0.8
    ['owner', null, 2, '2026-05-12'],
  ]);
});

test('the two hands of an elbow are two lines, each with its place', () => {
  const run = aRun({ level: 'F1' });
  const pieces = [
    { from: 0, to: feet(2), kind: 'elbow', hand: 'inside' },
    { from: feet(2), to: feet(4), kind: 'elbow', hand: 'outside' },
  ] as const;
  const job = aJob({ levels, runs: [run] });
  const own = [aLayout(run, [], { pieces, length: feet(4) })];
  const things = orderThings(job, own, takeOff(job, own));
  const elbows = orderList(things, [], { levels, ordering: null, manning: null })
    .flatMap(({ lines }) => lines)
    .filter(({ item }) => item === 'elbow');
  expect(elbows.map(({ hand, quantity, parts }) => [hand, quantity, parts[0]?.places])).toEqual([
    ['inside', 1, [0]],
    ['outside', 1, [feet(2)]],
  ]);
  // What the owner furnishes stands in the list, since the floor needs it, and says so.
  const furnished = orderList(things, [], { levels, ordering: null, manning: null, byOwner: ['elbow', 'joint-kit'] });
  const byOwner = new Map(furnished.flatMap(({ lines }) => lines).map((line) => [line.item, line.byOwner]));
  expect([byOwner.get('elbow'), byOwner.get('end-feed')]).toEqual([true, false]);
});

test('washers and braces follow their rule: two a rod, one for every three hangers of a run or part of them', () => {
  const lines = ordered({ washersPerRod: 2, braceEverySupports: 3 }, null).flatMap((order) => order.lines);
  const quantities = (item: string) => lines.filter((line) => line.item === item).map(({ quantity }) => quantity);
  expect(quantities('washer')).toEqual([8, 8]);
  expect(quantities('brace')).toEqual([2, 2]);
  expect(ordered({}, null).flatMap((order) => order.lines.map(({ item }) => item))).not.toContain('washer');
});

test('rods are bought as the stock of the cutting plan; those of unknown length stay as they are', () => {
  const untold = runs.map((run, i) => (i === 0 ? { ...run, drop: null } : run));
  const lines = ordered({}, null, { runs: untold }).flatMap((order) => order.lines);
  expect(lines.filter(({ item }) => item === 'rod').map(({ level, quantity }) => [level, quantity])).toEqual([
    ['F1', 4],
  ]);
  expect(lines.filter(({ item }) => item === 'rod-stock')).toMatchObject([{ level: null, quantity: 4 }]); // 6 ft from 10 ft
});

const total = (things: readonly OrderThing[], item: string) =>
  things.filter((thing) => thing.item === item).reduce((sum, { quantity }) => sum + quantity, 0);

test('by level, by run and over the job the order adds up to the takeoff, however the runs are split into floors', () => {
  const scenario = bidScenario();
  const takeoff = takeOff(scenario.job, scenario.layouts);
  const items = ['section', 'clamp', 'contact-set', 'end-cap', 'support', 'nut', 'tap', 'label', 'rod-stock'] as const;
  const counted = (item: string) =>
    takeoff.filter((line) => line.item === item).reduce((sum, { quantity }) => sum + quantity, 0);
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 48, maxLength: 48 }), (floors) => {
      const job = {
        ...scenario.job,
        levels: [1, 2, 3, 4, 5, 6].map((order) => aLevel({ id: `F${order}`, order })),
        runs: scenario.job.runs.map((run, i) => ({ ...run, level: `F${floors[i]}` })),
      };
      const things = orderThings(job, scenario.layouts, takeOff(job, scenario.layouts));
      for (const item of items) expect(total(things, item), item).toBe(counted(item));
      expect(total(things, 'drop')).toBe(counted('drop'));
      for (const thing of things.filter(({ item }) => item !== 'rod-stock'))
        expect(thing.quantity).toBeCloseTo(
          thing.parts.reduce((sum, { quantity }) => sum + quantity, 0),
          6,
        );
    }),
    { numRuns: 20 },
  );
});
