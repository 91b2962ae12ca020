import { setTimeout as sleep } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { compare, quantile } from '../../scripts/bench/compare.ts';
import { covering, supports } from '../../scripts/bench/domain-benches.ts';
import { runScript } from '../support/run-script.ts';

describe('a comparison', () => {
  it('gives the ratio of the two times, and a range that holds it', async () => {
    const ratio = await compare({ measured: () => sleep(90), baseline: () => sleep(30) }, 3);
    expect(ratio.rounds).toBe(3);
    expect(ratio.median).toBeGreaterThan(1.5);
    expect(ratio.median).toBeLessThan(4.5);
    expect(ratio.low).toBeLessThanOrEqual(ratio.median);
    expect(ratio.high).toBeGreaterThanOrEqual(ratio.median);
  });

  it('prepares before each time and does not count that, with one round to warm up', async () => {
    const calls: string[] = [];
    await compare(
      {
        measured: () => calls.push('measured'),
        baseline: () => calls.push('baseline'),
        between: () => calls.push('between'),
      },
      1,
    );
    expect(calls.join(' ')).toBe('between measured between baseline between measured between baseline');
  });

  it('takes quartiles by straight line', () => {
    expect([quantile([4, 1, 2], 0.5), quantile([1, 2, 4], 0.75), quantile([7], 0.25)]).toEqual([2, 3, 7]);
  });
});

describe('what is compared gives the same answer both ways', () => {
  it('of coverings', () => {
    const { measured, baseline } = covering.prepare();
    const [layout] = measured();
    const sections = layout!.pieces.map(({ from, to, kind, hand }) => ({ from, to, kind, hand }));
    expect(baseline()).toEqual({ sections, joints: layout!.joints.map(({ at }) => at) });
  });

  it('of supports, among many places', () => {
    const { measured, baseline } = supports.prepare();
    const [layout] = measured();
    expect(layout!.supports.length).toBeGreaterThan(4);
    expect(baseline()).toEqual(layout!.supports.map(({ at }) => at));
  });
});

describe('npm run bench', () => {
  it('prints a ratio and its range for what was asked, and no time', async () => {
    const { code, stdout } = await runScript('scripts/bench.ts', ['--only', 'range,insert-many', '--rounds', '1']);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^range +\d+(\.\d+)? +\d+(\.\d+)? to \d+(\.\d+)? +the range of the demo job’s hours/m);
    expect(stdout).toMatch(/^insert-many +0\.\d+/m);
    expect(stdout).not.toMatch(/\bms\b|second/);
  }, 180_000);

  it('refuses a name that it does not have, and says which it has', async () => {
    const { code, stdout, stderr } = await runScript('scripts/bench.ts', ['--only', 'speed']);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain('layout-growth');
  });
});
