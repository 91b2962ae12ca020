import { expect, test } from 'vitest';
import { toModel } from '../../src/document/to-model.ts';
import { figures } from '../../src/domain/figures.ts';
import type { Job } from '../../src/domain/model.ts';
import { feet } from '../support/job.ts';
import { scenarioT1, scenarioT1AsDrawn, scenarioT2 } from '../support/scenarios.ts';

const bid = toModel(scenarioT2());

test('the worked bid comes out of its job document: 2,424.0 h, 384 sticks of rod, 24 labels a run', () => {
  const { layouts, takeoff, labour } = figures(bid);
  expect(layouts.every(({ ok }) => ok)).toBe(true);
  expect(labour?.range.likely.toFixed(1)).toBe('2424.0');
  expect(takeoff.find(({ item }) => item === 'rod-stock')?.quantity).toBe(384);
  expect(takeoff.filter(({ item }) => item === 'label').map(({ quantity }) => quantity)).toEqual(Array(48).fill(24));
});

test('the worked L-run takes 8 joints, 12 hangers, 12 sticks and an elbow with the conductors inside', () => {
  const { takeoff } = figures(toModel(scenarioT1()));
  const quantity = (item: string) => takeoff.find((line) => line.item === item)?.quantity;
  expect(quantity('contact-set')).toBe(8);
  expect(quantity('clamp')).toBe(16);
  expect(quantity('end-cap')).toBe(1);
  expect(quantity('support')).toBe(12);
  expect(quantity('rod-stock')).toBe(12);
  expect(takeoff.find(({ item }) => item === 'elbow')).toMatchObject({ hand: 'inside', quantity: 1 });
});

test('with the conductors on the right the same corner needs the other elbow', () => {
  const { takeoff } = figures(toModel(scenarioT1('right')));
  expect(takeoff.find(({ item }) => item === 'elbow')).toMatchObject({ hand: 'outside', quantity: 1 });
});

test('a run that no stock covers is left out of takeoff and hours, and the stop says why', () => {
  const job: Job = { ...toModel(scenarioT1AsDrawn()), labourBook: bid.labourBook };
  const { layouts, takeoff, labour, checks } = figures(job);
  expect(layouts).toMatchObject([{ ok: false }]);
  expect(takeoff).toEqual([]);
  expect(labour).toMatchObject({ lines: [], byRun: [], range: { likely: 0, sd: 0 } });
  expect(checks.some(({ rule, severity }) => rule === 'section.no-cover' && severity === 'stop')).toBe(true);
});

test('this edition has no electrical figures or loss cases, and a job without bid entries no bid: null for each', () => {
  expect(figures({ ...bid, bid: null })).toMatchObject({ electrical: null, failover: null, bid: null });
});

test('checks stand in the order of run, distance and rule, and those of the whole job last', () => {
  const job: Job = { ...bid, runs: bid.runs.slice(0, 3).map((run) => ({ ...run, drop: feet(12) })) };
  const { checks } = figures(job);
  const runs = checks.map(({ run }) => (run === null ? job.runs.length : job.runs.findIndex(({ id }) => id === run)));
  expect(runs).toEqual([...runs].sort((a, b) => a - b));
  expect(checks.filter(({ rule }) => rule === 'rod.too-long')).toHaveLength(3);
  expect(checks.at(-1)).toMatchObject({ rule: 'labour.no-hours', run: null });
});

test('layouts that are kept beside the design give the same figures as layouts worked anew', () => {
  const { layouts, ...others } = figures(bid);
  expect(figures(bid, layouts)).toEqual({ layouts, ...others });
});
