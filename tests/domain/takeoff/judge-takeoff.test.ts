import { expect, test } from 'vitest';
import { judgeTakeoff } from '../../../src/domain/takeoff/judge-takeoff.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { aJob, aLayout, aRun, feet, supportsAt } from '../../support/job.ts';

function judged(changes: Parameters<typeof aRun>[0]) {
  const run = aRun(changes);
  const job = aJob({ runs: [run] });
  const layouts = [aLayout(run, [10], { supports: supportsAt(1, 9) })];
  return { findings: judgeTakeoff(job, layouts), takeoff: takeOff(job, layouts) };
}

test('a rod as long as its stock passes', () => {
  expect(judged({ drop: feet(10), rodStock: feet(10) }).findings).toEqual([]);
});

test('a rod longer than its stock is a warning, and is not in the cutting plan', () => {
  const { findings, takeoff } = judged({ drop: feet(11), rodStock: feet(10) });
  expect(findings).toMatchObject([{ rule: 'rod.too-long', severity: 'warning', run: 'F1-R1-A' }]);
  expect(findings[0]?.message).toContain(`11'-0"`);
  expect(takeoff.some(({ item }) => item === 'rod-stock')).toBe(false);
  expect(takeoff.some(({ item }) => item === 'rod')).toBe(true);
});

test('hangers whose rod length is not given are named', () => {
  expect(judged({ drop: null, rod: '3/8' }).findings).toMatchObject([{ rule: 'rod.unknown', severity: 'note' }]);
});

test('a run without a sound layout raises nothing about its rods', () => {
  const run = aRun({ drop: feet(11) });
  const layout = aLayout(run, [10], { ok: false, supports: [] });
  expect(judgeTakeoff(aJob({ runs: [run] }), [layout])).toEqual([]);
});
