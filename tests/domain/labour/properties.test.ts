import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoJob } from '../../../src/document/demo/demo-job.ts';
import { toModel } from '../../../src/document/to-model.ts';
import { computeLabour } from '../../../src/domain/labour/compute-labour.ts';
import { layoutJob } from '../../../src/domain/layout/layout-job.ts';
import type { Job, LabourBook } from '../../../src/domain/model.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { scenarioT2 } from '../../support/scenarios.ts';

// Runs that are all alike, and runs that are not: one round a corner, one with a tee and its branch, straight ones.
const demo = demoJob();
const unlike = (run: (typeof demo.runs)[number]) =>
  run.legs.length > 1 || run.feed.kind === 'tee' || demo.runs.some(({ feed }) => feed.fromRun === run.id);
const few = demo.runs.filter((run, index) => unlike(run) || index % 12 === 0);
const jobs = [scenarioT2(), { ...demo, runs: few.map(({ pairedRun: _paired, ...run }) => run) }].map((document) =>
  toModel(document),
);
const hoursOf = (job: Job) => {
  const layouts = layoutJob(job);
  return computeLabour(job, layouts, takeOff(job, layouts))!;
};

const percent = fc.integer({ min: 0, max: 60 });
const book = fc
  .record({
    policy: fc.constantFrom('add' as const, 'compound' as const),
    likely: fc.integer({ min: 1, max: 400 }).map((hundredths) => hundredths / 100),
    nonProductivePercent: percent,
    storeyPercentEach: fc.integer({ min: 0, max: 4 }),
    shift: percent,
  })
  .map(
    ({ policy, likely, nonProductivePercent, storeyPercentEach, shift }) =>
      (own: LabourBook): LabourBook => ({
        ...own,
        policy,
        nonProductivePercent,
        nonProductiveDay: null,
        trials: 20,
        factors: { ...own.factors, storeyPercentEach },
        jobConditions: [{ name: 'shift', percent: shift, activities: null }],
        activities: own.activities.map((activity) =>
          activity.id === 'tap' ? { ...activity, low: likely / 2, likely, high: likely * 2 } : activity,
        ),
      }),
  );
const hands = fc.array(
  fc.record({
    quantity: fc.integer({ min: 1, max: 40 }),
    hours: fc.integer({ min: 1, max: 90 }).map((tenths) => tenths / 10),
  }),
  { maxLength: 3 },
);
const withHands = (job: Job, extras: readonly { quantity: number; hours: number }[]): Job => ({
  ...job,
  extras: extras.map((extra) => ({ item: 'by hand', level: null, unit: 'each', price: null, note: null, ...extra })),
});

/** Every run twice: the copy beside it, fed by the copy of its parent. */
function doubled(job: Job): Job {
  const copy = (run: Job['runs'][number]) => ({
    ...run,
    id: `${run.id}-again`,
    pairedRun: null,
    feed: run.feed.fromRun === null ? run.feed : { ...run.feed, fromRun: `${run.feed.fromRun}-again` },
  });
  return {
    ...job,
    runs: job.runs.flatMap((run) => [run, copy(run)]),
    extras: job.extras.map((extra) => ({ ...extra, quantity: 2 * extra.quantity })),
  };
}

test.each(jobs.map((job, index) => [index, job] as const))(
  'without learning twice the quantities are twice the hours, by activity, level and in all: job %i',
  (_, job) => {
    fc.assert(
      fc.property(book, hands, (change, extras) => {
        const plain = { ...change(job.labourBook!), learning: null };
        const once = withHands({ ...job, labourBook: plain }, extras);
        const [one, two] = [hoursOf(once), hoursOf(doubled(once))];
        expect(one.range.likely).toBeGreaterThan(0);
        expect(two.range.likely / one.range.likely).toBeCloseTo(2, 9);
        expect(two.range.mean / one.range.mean).toBeCloseTo(2, 9);
        for (const [index, { activity, quantity, hours }] of one.byActivity.entries()) {
          expect(two.byActivity[index]?.activity).toBe(activity);
          expect(two.byActivity[index]?.quantity, activity).toBeCloseTo(2 * quantity, 6);
          expect(two.byActivity[index]?.hours, activity).toBeCloseTo(2 * hours, 6);
        }
        for (const [index, { hours }] of one.byLevel.entries())
          expect(two.byLevel[index]?.hours).toBeCloseTo(2 * hours, 6);
        // Who learns takes less than twice as long.
        const learning = {
          rate: 0.9,
          referenceRepeat: 1,
          over: 'run' as const,
          activities: ['tap', 'joint', 'support'],
        };
        const learns = { ...once, labourBook: { ...plain, learning } };
        expect(hoursOf(doubled(learns)).range.likely).toBeLessThan(2 * hoursOf(learns).range.likely);
      }),
      { numRuns: 12 },
    );
  },
);

test.each(jobs.map((job, index) => [index, job] as const))(
  'however a job is split into floors of the same conditions, its hours stay: job %i',
  (_, job) => {
    const alike = job.levels.map((level) => ({ ...level, conditions: job.levels[0]!.conditions }));
    const cuts = fc.array(fc.integer({ min: 0, max: 5 }), { minLength: job.runs.length, maxLength: job.runs.length });
    fc.assert(
      fc.property(book, cuts, fc.boolean(), (change, floors, learns) => {
        const own = change(job.labourBook!);
        const base: Job = {
          ...job,
          extras: [],
          levels: [{ ...alike[0]!, id: 'all', order: 1 }],
          runs: job.runs.map((run) => ({ ...run, level: 'all' })),
          labourBook: learns ? own : { ...own, learning: null },
        };
        // With learning the order of work is kept: a higher floor begins where the one below it ends.
        const placed = learns ? [...floors].sort() : floors;
        const split: Job = {
          ...base,
          levels: Array.from({ length: 6 }, (__, i) => ({ ...alike[0]!, id: `F${i}`, order: i })),
          runs: base.runs.map((run, i) => ({ ...run, level: `F${placed[i]}` })),
        };
        const [whole, parted] = [hoursOf(base), hoursOf(split)];
        expect(parted.range.likely).toBeCloseTo(whole.range.likely, 8);
        expect(parted.byLevel.reduce((sum, { hours }) => sum + hours, 0)).toBeCloseTo(
          whole.byLevel.reduce((sum, { hours }) => sum + hours, 0),
          8,
        );
      }),
      { numRuns: 12 },
    );
  },
);
