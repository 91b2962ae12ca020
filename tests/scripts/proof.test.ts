import { describe, expect, it } from 'vitest';
import { readCommand } from '../../scripts/bench/command-line.ts';
import { proveBeams } from '../../scripts/proof/beam.ts';
import { proveEdits } from '../../scripts/proof/concurrent-edits.ts';
import { proveCoverings } from '../../scripts/proof/coverings.ts';
import { proveCuts } from '../../scripts/proof/cutting.ts';
import { PROOFS } from '../../scripts/proof/proofs.ts';
import { proveSections } from '../../scripts/proof/sections.ts';
import { proveSectionsBySolver } from '../../scripts/proof/solver-sections.ts';
import { proveSupportsBySolver } from '../../scripts/proof/solver-supports.ts';
import { proveSupports } from '../../scripts/proof/supports.ts';
import { contextFor } from '../../src/domain/layout/context-for.ts';
import { coverings } from '../../src/domain/layout/coverings.ts';
import { layoutJob } from '../../src/domain/layout/layout-job.ts';
import type { RunLayout } from '../../src/domain/layout/result.ts';
import type { Job } from '../../src/domain/model.ts';
import { planCuts } from '../../src/domain/takeoff/cutting-plan.ts';
import { migratedUrl } from '../support/databases.ts';
import { runScript } from '../support/run-script.ts';

const SEED = 20_260;
const databases = { migratedUrl };
/** Seconds on a free machine; a busy one may take ten times as long. */
const PATIENCE_MS = 180_000;

describe('each proof at its short count', () => {
  it.each(PROOFS.map((proof) => [proof.name, proof] as const))(
    '%s agrees with its reference',
    async (_, proof) => {
      const { compared, failures } = await proof.run({ count: proof.shortCount, seed: SEED, databases });
      expect(failures).toEqual([]);
      expect(compared).toBeGreaterThanOrEqual(proof.shortCount);
    },
    PATIENCE_MS,
  );
});

/** The program's own layouts with one thing wrong, wherever there is such a thing. */
const spoilt = (spoil: (layout: RunLayout) => Partial<RunLayout>) => (job: Job) =>
  layoutJob(job).map((layout) => (layout.ok ? { ...layout, ...spoil(layout) } : layout));

describe('each proof sees a wrong answer', () => {
  it('a covering whose sections stand the other way round is told', () => {
    const turned = spoilt(({ pieces }) => ({ pieces: pieces.toReversed() }));
    expect(proveSections(60, SEED, turned).failures.length).toBeGreaterThan(0);
  });

  it('a joint that is left out is told', () => {
    const fewer = spoilt(({ joints }) => ({ joints: joints.slice(1) }));
    expect(proveSections(60, SEED, fewer).failures.length).toBeGreaterThan(0);
  });

  it('a run given up that could be covered is told', () => {
    const lost = spoilt(() => ({ ok: false, pieces: [], joints: [] }));
    expect(proveSections(60, SEED, lost).failures.length).toBeGreaterThan(0);
  });

  it('a second-best covering that is left out is told', () => {
    const skipping: typeof coverings = (run, context) => {
      const ranked = coverings(run, context);
      return { ...ranked, coverings: ranked.coverings.filter((_, place) => place !== 1) };
    };
    expect(proveCoverings(60, SEED, skipping).failures.length).toBeGreaterThan(0);
  });

  it('a covering by the second-best is told by the solver', async () => {
    const second = (job: Job) =>
      layoutJob(job).map((layout, k) => {
        const run = job.runs[k]!;
        return { ...layout, ...coverings(run, contextFor(job, run)).coverings[1] };
      });
    // Where two coverings are told apart by their order alone, the solver knows no difference.
    expect((await proveSectionsBySolver(12, SEED, second)).failures.length).toBeGreaterThan(0);
  });

  it('one support more than needed is told by the solver', async () => {
    const more = spoilt(({ supports }) => ({ supports: supports.flatMap((one) => [one, { ...one, at: one.at + 1 }]) }));
    expect((await proveSupportsBySolver(8, SEED, more)).failures.length).toBeGreaterThan(0);
  });

  it('a support moved by the finest length that is kept is told', () => {
    const moved = spoilt(({ supports }) => ({ supports: supports.map((one) => ({ ...one, at: one.at + 1 })) }));
    expect(proveSupports(60, SEED, moved).failures.length).toBeGreaterThan(0);
  });

  it('a simple-span load that is a thousandth too small is told', () => {
    const light = spoilt(({ supports }) => ({
      supports: supports.map((one) => ({ ...one, loadKg: one.loadKg * 0.999 })),
    }));
    expect(proveSupports(60, SEED, light).failures.length).toBeGreaterThan(0);
  });

  it('simple-span loads in place of the continuous ones are told', () => {
    const simple = spoilt(({ supports }) => ({
      supports: supports.map((one) => ({ ...one, continuousLoadKg: one.loadKg })),
    }));
    expect(proveBeams(60, SEED, simple).failures.length).toBeGreaterThan(0);
  });

  it('one stick more than needed is told', () => {
    const more = (...wanted: Parameters<typeof planCuts>) => {
      const plan = planCuts(...wanted);
      return { ...plan, sticks: plan.sticks + 1 };
    };
    expect(proveCuts(20, SEED, more).failures).toHaveLength(20);
  });
});

describe('the proof by edits', () => {
  it(
    'edits at once are taken and refused, not all the one or the other',
    async () => {
      const { note, failures } = await proveEdits({ count: 60, seed: SEED + 1, databases }, 'sqlite');
      expect(failures).toEqual([]);
      expect(note).toMatch(/sqlite: [1-9]\d* taken, [1-9]\d* refused/);
    },
    PATIENCE_MS,
  );
});

describe('npm run proof', () => {
  it(
    'prints count and verdict, and ends well when all agree',
    async () => {
      const { code, stdout } = await runScript('scripts/proof.ts', ['--only', 'cutting,beam', '--count', '20']);
      expect(stdout).toMatch(/beam +2\d +agrees/);
      expect(stdout).toMatch(/cutting +20 +agrees/);
      expect(code).toBe(0);
    },
    PATIENCE_MS,
  );

  it('refuses a proof that nobody wrote, with what to type', async () => {
    const { code, stdout, stderr } = await runScript('scripts/proof.ts', ['--only', 'luck']);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain('npm run proof');
  });

  const read = (...args: string[]) => readCommand(args, ['a', 'b'], { seed: { least: 0 }, count: { least: 1 } });

  it('does everything when nothing is named, and what is named otherwise', () => {
    expect(read()).toEqual({ only: ['a', 'b'], numbers: { seed: undefined, count: undefined } });
    expect(read('--only', 'b', '--seed', '0', '--count', '7')).toEqual({ only: ['b'], numbers: { seed: 0, count: 7 } });
  });

  it.each([
    ['half a seed', ['--seed', '0.5']],
    ['no instances', ['--count', '0']],
    ['nothing by name', ['--only', '']],
    ['an option that nobody knows', ['--fast']],
    ['a stray word', ['a']],
  ])('%s is refused', (_, args) => {
    expect(read(...args)).toBeNull();
  });
});
