import { expect, test } from 'vitest';
import { demoJob } from '../../../src/document/demo/demo-job.ts';
import { toModel } from '../../../src/document/to-model.ts';
import { figures } from '../../../src/domain/figures.ts';
import { baseHours } from '../../../src/domain/labour/base-hours.ts';
import { isJointLabourAlike, jointLabourCost } from '../../../src/domain/layout/joint-labour-cost.ts';
import type { LabourActivity } from '../../../src/domain/model.ts';
import { runFigures } from '../../../src/domain/run-figures.ts';
import { aLabourBook, anActivity, feet } from '../../support/job.ts';

// All hours invented.
const three = (likely: number) => ({ low: likely / 2, likely, high: likely * 2 });
const band = (upToA: number | null, upTo: number | null, likely: number) => ({
  upToA,
  upTo: upTo === null ? null : feet(upTo),
  ...three(likely),
});
const activity = (bands: LabourActivity['bands']) => ({ ...anActivity('joint', 1), bands });
const likely = (bands: LabourActivity['bands'], amperes: number, length: number | null = null) =>
  baseHours(activity(bands), length === null ? null : feet(length), amperes).likely;

test('the first rated current that the busway does not pass serves it, and the last also serves anything greater', () => {
  const bands = [band(250, null, 0.5), band(800, null, 0.9)];
  expect([100, 250, 251, 800, 1200].map((amperes) => likely(bands, amperes))).toEqual([0.5, 0.5, 0.9, 0.9, 0.9]);
  // A piece with a length takes its rating's hours where these do not ask for one.
  expect(likely(bands, 400, 10)).toBe(0.9);
});

test('lengths within a rating: a piece longer than all takes the rating’s own hours, or else the longest’s', () => {
  const bands = [band(250, 5, 0.3), band(250, 10, 0.5), band(800, 10, 0.8), band(800, null, 1.1)];
  expect([5, 6, 10, 20].map((length) => likely(bands, 200, length))).toEqual([0.3, 0.5, 0.5, 0.5]);
  expect([5, 10, 20].map((length) => likely(bands, 600, length))).toEqual([0.8, 0.8, 1.1]);
  expect(likely(bands, 600)).toBe(1.1);
  // Work without a length, in a rating that has hours by length alone: the activity's own.
  expect(likely(bands, 200)).toBe(1);
});

test('bands of lengths alone are for every rating, as ever', () => {
  const bands = [band(null, 5, 0.4), band(null, 20, 1.2)];
  for (const amperes of [60, 5000]) expect([3, 12, 30].map((l) => likely(bands, amperes, l))).toEqual([0.4, 1.2, 1.2]);
  expect(likely(bands, 250)).toBe(1);
  expect(likely([], 250, 12)).toBe(1);
});

test('the labour of a joint in the choice of a covering is that of the rating; books are alike only if alike at every rating', () => {
  // 100.00 an hour for one who is productive all of it.
  const crew = [{ role: 'hand', number: 1, ratePerHour: 10_000, burdenPercent: 0, effectiveness: 1 }];
  const book = (bands: LabourActivity['bands']) => aLabourBook({ activities: [activity(bands)], crew });
  const rated = book([band(250, null, 0.5), band(800, null, 0.9)]);
  expect([250, 800].map((amperes) => jointLabourCost(rated, amperes))).toEqual([5_000, 9_000]);
  expect(isJointLabourAlike(rated, book([band(250, null, 0.5), band(800, null, 0.9)]))).toBe(true);
  expect(isJointLabourAlike(rated, book([band(250, null, 0.5), band(800, null, 0.8)]))).toBe(false);
  expect(isJointLabourAlike(rated, book([band(300, null, 0.5), band(800, null, 0.9)]))).toBe(false);
  expect(isJointLabourAlike(rated, book([band(null, null, 0.9)]))).toBe(false);
  expect(isJointLabourAlike(null, null)).toBe(true);
});

test('in a job of two ratings each run has the hours of its own busway, in all and alone', () => {
  const demo = toModel(demoJob());
  const [type] = demo.types;
  const heavy = { ...type!, id: 'heavy', ratedCurrentA: 800 };
  const [light, dear] = demo.runs.filter(({ feed }) => feed.kind === 'end').slice(0, 2);
  const activities = demo.labourBook!.activities.map((one) =>
    one.id === 'joint' ? { ...one, bands: [band(400, null, 0.5), band(800, null, 0.9)] } : one,
  );
  const job = {
    ...demo,
    types: [type!, heavy],
    runs: [light!, { ...dear!, type: 'heavy' }].map((run) => ({ ...run, pairedRun: null })),
    extras: [],
    labourBook: { ...demo.labourBook!, activities, trials: 20 },
  };
  const { labour, layouts } = figures(job);
  const joints = labour!.lines.filter((line) => line.activity === 'joint');
  expect(joints.map(({ run, base }) => [run, base.likely])).toEqual([
    [light!.id, 0.5],
    [dear!.id, 0.9],
  ]);
  for (const [index, run] of job.runs.entries())
    expect(runFigures(job, run, layouts[index]!, index + 1).hours).toEqual(
      labour!.lines.filter((line) => line.run === run.id),
    );
});
