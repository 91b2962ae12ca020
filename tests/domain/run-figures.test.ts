import { expect, test } from 'vitest';
import { campusJob } from '../../src/document/demo/campus.ts';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { JobDocument } from '../../src/document/job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { figures } from '../../src/domain/figures.ts';
import { repeatsOf } from '../../src/domain/labour/repeats.ts';
import type { Job } from '../../src/domain/model.ts';
import { runFigures } from '../../src/domain/run-figures.ts';
import { fullDocument } from '../document/full-document.ts';
import { scenarioT1AsDrawn, scenarioT2 } from '../support/scenarios.ts';

/** Every run worked out alone, in a job that holds no other, against its part of the whole job's figures. */
function expectTheSameAlone(job: Job): void {
  const { layouts, labour, checks } = figures({ ...job, bid: null });
  const sound = job.runs.filter((_, index) => layouts[index]?.ok);
  const repeats = repeatsOf(job.levels, sound, job.labourBook?.learning?.over ?? 'run');
  const alone: Job = { ...job, runs: [] };
  for (const [index, run] of job.runs.entries()) {
    const own = runFigures(alone, run, layouts[index]!, repeats.get(run.id) ?? null);
    expect(own.hours).toEqual((labour?.lines ?? []).filter((line) => line.run === run.id));
    expect(own.checks).toEqual(checks.filter((finding) => finding.run === run.id));
  }
}

const DOCUMENTS: Readonly<Record<string, () => JobDocument>> = {
  'the demonstration job': demoJob,
  'a campus with pairs and branches': () => campusJob({ runs: 120, seed: 7 }),
  'the worked bid, which learns': scenarioT2,
  'a document with every key': fullDocument,
  'a run that no stock covers': scenarioT1AsDrawn,
};

test.each(Object.entries(DOCUMENTS))(
  'one run alone has the hours and findings that it has in %s',
  (_name, document) => {
    expectTheSameAlone(toModel(document()));
  },
);

test('rods and drops that nobody has stock for are found on their run alone as well', () => {
  const job = toModel(demoJob());
  const short: Job = {
    ...job,
    project: { ...job.project, ordering: { ...job.project.ordering!, cordStock: [800] } },
    runs: job.runs.map((run, i) => ({ ...run, drop: i % 2 === 0 ? null : run.rodStock + 80 })),
  };
  const rules = new Set(figures({ ...short, bid: null }).checks.map(({ rule }) => rule));
  expect([...rules]).toEqual(expect.arrayContaining(['rod.unknown', 'rod.too-long', 'drop.too-long']));
  expectTheSameAlone(short);
});
