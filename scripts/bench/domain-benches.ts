import { campusJob } from '../../src/document/demo/campus.ts';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { JobDocument } from '../../src/document/job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { applyWhatIf } from '../../src/document/what-if/apply-what-if.ts';
import { beside } from '../../src/document/what-if/beside.ts';
import { judgeFaceOff } from '../../src/domain/face-off/judge-face-off.ts';
import { figures } from '../../src/domain/figures.ts';
import { hoursRange } from '../../src/domain/labour/hours-range.ts';
import { contextFor } from '../../src/domain/layout/context-for.ts';
import { layoutJob } from '../../src/domain/layout/layout-job.ts';
import { layoutRun } from '../../src/domain/layout/layout-run.ts';
import type { Job } from '../../src/domain/model.ts';
import { plainTrials } from '../../tests/proof/reference/hours-trials.ts';
import { referenceCovering } from '../../tests/proof/reference/sections.ts';
import { bestBySubsets, supportProblem } from '../../tests/proof/reference/supports.ts';
import { smallJob, smallRun, smallType } from '../proof/small-jobs.ts';
import type { Bench } from './bench.ts';

export const layoutGrowth: Bench = {
  name: 'layout-growth',
  measured: 'layout of a campus of 4 000 runs',
  baseline: 'layout of one of 400',
  reading: '10 is in proportion to the runs',
  prepare: () => {
    const [large, small] = [campus(4_000), campus(400)];
    return { measured: () => layoutJob(large), baseline: () => layoutJob(small) };
  },
};

export const oneEdit: Bench = {
  name: 'one-edit',
  measured: 'layout of the one run that was edited',
  baseline: 'layout of the whole campus of 400 runs',
  reading: '0.0025 is one run of 400 and nothing else',
  prepare: () => {
    const job = campus(400);
    const run = job.runs[200]!;
    const edited = { ...run, taps: run.taps.slice(1) };
    const edit = () => {
      const after = { ...job, runs: job.runs.map((one) => (one === run ? edited : one)) };
      return layoutRun(edited, contextFor(after, edited));
    };
    return { measured: edit, baseline: () => layoutJob(job) };
  },
};

export const layoutCapacity: Bench = {
  name: 'layout-capacity',
  measured: 'layout of a campus of 400 runs whose hangers may carry six tenths of the heaviest load',
  baseline: 'layout of the same runs without a capacity',
  reading:
    'most are searched twice, since the continuous beam refuses the first answer; 1 is a search that costs nothing',
  prepare: () => {
    const free = campus(400);
    const bound = { ...free, runs: free.runs.map((run) => bounded(free, run, 0.6)) };
    return { measured: () => layoutJob(bound), baseline: () => layoutJob(free) };
  },
};

function bounded(job: Job, run: Job['runs'][number], share: number) {
  const heaviest = Math.max(...layoutRun(run, contextFor(job, run)).supports.map(({ loadKg }) => loadKg));
  return { ...run, supportCapacityKg: share * heaviest };
}

function campus(runs: number): Job {
  return toModel(campusJob({ runs, seed: 1 }));
}

export const covering = {
  name: 'covering',
  measured: 'the whole layout of a run of 100 ft out of 5, 10 and 20 ft',
  baseline: 'its coverings written out one by one',
  reading: 'both give the same covering; below 1 the search pays',
  prepare: () => {
    const document = straightRun(100, { stockLengthsMm: [5, 10, 20].map(feet) });
    const job = toModel(document);
    return { measured: () => layoutJob(job), baseline: () => referenceCovering(document, document.runs[0]!) };
  },
} satisfies Bench;

export const supports = {
  name: 'supports',
  measured: 'the whole layout of a run with 17 places for supports',
  baseline: 'every subset of the places tried',
  reading: 'both give the same supports; below 1 the search pays',
  prepare: () => {
    const support = { maxSpacingMm: feet(10), maxEndOverhangMm: feet(2.5), jointClearMm: feet(1), stepMm: feet(2.5) };
    const document = straightRun(50, { stockLengthsMm: [feet(20), feet(10)], support });
    const job = toModel(document);
    const [laid] = layoutJob(job);
    const joints = laid!.joints.map(({ at }) => at);
    const problem = supportProblem(document, document.runs[0]!, laid!.length, joints);
    return { measured: () => layoutJob(job), baseline: () => bestBySubsets(problem) };
  },
} satisfies Bench;

const feet = (value: number): number => value * 304.8;

function straightRun(lengthFeet: number, type: Parameters<typeof smallType>[0]): JobDocument {
  return smallJob(smallType(type), [smallRun({ legs: [{ lengthMm: feet(lengthFeet), turn: 'none' }] })]);
}

export const range: Bench = {
  name: 'range',
  measured: 'the range of the demo job’s hours by 10 000 trials',
  baseline: 'the same by 1 000',
  reading: '10 is in proportion to the trials',
  prepare: () => {
    const { lines } = demoLabour();
    // A copy each time: trials of the same lines are remembered.
    const by = (trials: number) => () => hoursRange([...lines], { correlation: 0.3, seed: 1, trials });
    return { measured: by(10_000), baseline: by(1_000) };
  },
};

export const rangeDraws: Bench = {
  name: 'range-draws',
  measured: 'the range of the demo job’s hours by 10 000 trials, correlated as its labour book says',
  baseline: '100 of them by a plain loop that asks the library for the inverse of every draw',
  reading: '100 is as slow as the loop',
  limitMs: 200,
  prepare: () => {
    const { lines, correlation } = demoLabour();
    return {
      measured: () => hoursRange([...lines], { correlation, seed: 1, trials: 10_000 }),
      baseline: () => plainTrials(lines, { correlation, seed: 1, trials: 100 }),
    };
  },
};

export const whatIfBench: Bench = {
  name: 'what-if',
  measured: 'a tight ceiling and dearer joints beside the demo job, everything worked on a copy',
  baseline: 'the figures of the demo job worked from the start',
  reading: '1 is as long as the job itself',
  limitMs: 300,
  prepare: () => {
    const document = demoJob();
    const job = toModel(document);
    const base = { job, figures: figures(job) };
    const change = {
      conditions: [{ level: null, congestion: 'tight' as const }],
      activities: [{ activity: 'joint', likely: 0.9 }],
    };
    const measured = () => {
      const applied = applyWhatIf(document, change);
      return applied.ok && beside(base, applied.document, null, applied.touched);
    };
    return { measured, baseline: () => figures(toModel(document)) };
  },
};

function demoLabour() {
  const job = toModel(demoJob());
  return { lines: figures(job).labour!.lines, correlation: job.labourBook!.correlation };
}

export const faceOff: Bench = {
  name: 'face-off',
  measured: 'room between runs that face each other looked for in a campus of 4 000 runs',
  baseline: 'the same in one of 400',
  reading: '10 is in proportion to the runs',
  prepare: () => {
    const [large, small] = [boxedCampus(4_000), boxedCampus(400)];
    const look = (job: Job) => {
      const layouts = layoutJob(job);
      return () => judgeFaceOff(job, layouts);
    };
    return { measured: look(large), baseline: look(small) };
  },
};

/** With invented boxes that stand out 400 mm and want 3 ft before them. */
function boxedCampus(runs: number): Job {
  const document = campusJob({ runs, seed: 1 });
  const buswayTypes = document.buswayTypes.map((type) => ({
    ...type,
    tap: { ...type.tap, boxDepthMm: 400, faceClearMm: feet(3) },
  }));
  return toModel({ ...document, buswayTypes });
}
