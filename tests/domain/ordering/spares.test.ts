import fc from 'fast-check';
import { expect, test } from 'vitest';
import { figures } from '../../../src/domain/figures.ts';
import { computeLabour } from '../../../src/domain/labour/compute-labour.ts';
import { orderThings } from '../../../src/domain/ordering/order-things.ts';
import type { SpareRule } from '../../../src/domain/ordering/ordering.ts';
import { sparesOf } from '../../../src/domain/ordering/spares.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { bidScenario } from '../../support/bid-scenario.ts';
import { aJob, aLayout, aRun, feet } from '../../support/job.ts';
import { anOrdering, aSpareRule } from '../../support/ordering.ts';

const { job, layouts } = bidScenario();
const things = orderThings(job, layouts, takeOff(job, layouts));
const of = (...rules: readonly SpareRule[]) => sparesOf(things, rules);

// By hand from the scenario's 48 runs of four joints: 384 clamps (5 % = 19.2), 48 end caps (5 % = 2.4).
test('spares are the greater of the minimum and the percentage, rounded up, for each thing over the whole job', () => {
  const rule = { percent: 5, minimum: 10 };
  expect(of(aSpareRule('clamp', rule)).lines).toMatchObject([{ needed: 384, spare: 20, waste: 0, owner: 0 }]);
  expect(of(aSpareRule('end-cap', rule)).lines).toMatchObject([{ needed: 48, spare: 10 }]);
});

test('exactly on the percentage nothing is added, and waste and the owner’s spares stand apart', () => {
  // 25 % of 384 are 96; 10 % of 48 are 4.8.
  expect(of(aSpareRule('clamp', { percent: 25 })).lines).toMatchObject([{ spare: 96 }]);
  expect(of(aSpareRule('end-feed', { wastePercent: 10, minimum: 1, ownerSpares: 3 })).lines).toMatchObject([
    { needed: 48, waste: 5, spare: 1, owner: 3 },
  ]);
});

test('sections of each length are things of their own; a rule may be for one length alone', () => {
  expect(of(aSpareRule('section', { minimum: 1 })).lines.map(({ length, spare }) => [length, spare])).toEqual([
    [feet(20), 1],
    [feet(10), 1],
  ]);
  const lines = of(
    aSpareRule('section', { length: feet(10), minimum: 4 }),
    aSpareRule('section', { minimum: 1 }),
  ).lines;
  expect(lines.map(({ length, spare }) => [length, spare])).toEqual([
    [feet(20), 1],
    [feet(10), 4],
  ]);
});

test('elbows of each hand have spares of their own', () => {
  const run = aRun();
  const pieces = [
    { from: 0, to: feet(2), kind: 'elbow', hand: 'inside' },
    { from: feet(2), to: feet(4), kind: 'elbow', hand: 'outside' },
  ] as const;
  const one = aJob({ runs: [run] });
  const counted = [aLayout(run, [], { pieces, length: feet(4) })];
  const own = sparesOf(orderThings(one, counted, takeOff(one, counted)), [aSpareRule('elbow', { minimum: 1 })]);
  expect(own.lines.map(({ hand, needed, spare }) => [hand, needed, spare])).toEqual([
    ['inside', 1, 1],
    ['outside', 1, 1],
  ]);
});

test('a rule that fits nothing orders nothing and is told apart', () => {
  const idle = aSpareRule('tee', { minimum: 2 });
  expect(of(idle)).toEqual({ lines: [], idle: [idle] });
});

test('spares never fall below either bound and never exceed the next whole piece above the percentage', () => {
  const counts = fc.record({
    percent: fc.integer({ min: 0, max: 300 }),
    minimum: fc.integer({ min: 0, max: 100 }),
  });
  fc.assert(
    fc.property(counts, ({ percent, minimum }) => {
      const [line] = of(aSpareRule('clamp', { percent, minimum })).lines;
      const exact = BigInt(percent) * 384n; // in hundredths
      const up = Number((exact + 99n) / 100n);
      expect(line?.spare).toBe(Math.max(up, minimum));
    }),
  );
});

test('rules change neither takeoff nor hours, and without them there are no spares in the figures', () => {
  const ordering = anOrdering({ spares: [aSpareRule('clamp', { percent: 5 })], washersPerRod: 2 });
  const ruled = { ...job, project: { ...job.project, ordering } };
  const [before, after] = [figures(job, layouts), figures(ruled, layouts)];
  expect(before.spares).toBeNull();
  expect(after.spares).toMatchObject([{ item: 'clamp', spare: 20 }]);
  expect({ ...after, spares: null }).toEqual(before);
  expect(after.labour).toEqual(computeLabour(job, layouts, before.takeoff));
});
