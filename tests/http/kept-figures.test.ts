import { xoroshiro128plus } from 'pure-rand/generator/XoroShiro';
import { beforeAll, expect, it } from 'vitest';
import { figuresOf } from '../../src/actions/figures.ts';
import { designOf } from '../../src/actions/job-design.ts';
import { readStandings } from '../../src/actions/progress/read-standings.ts';
import { progressOf } from '../../src/actions/progress.ts';
import { readRunRows } from '../../src/actions/run-states.ts';
import { campusJob } from '../../src/document/demo/campus.ts';
import type { JobDocument } from '../../src/document/job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { canonicalJson } from '../../src/domain/canonical-json.ts';
import { figures } from '../../src/domain/figures.ts';
import { layoutJob } from '../../src/domain/layout/layout-job.ts';
import { readDesign } from '../../src/store/designs.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';

const EDITS = 34;

/** One change of a kind that chance picks; `n` is a whole number from 0. */
type Change = (job: JobDocument, n: number) => JobDocument;

const book = (job: JobDocument, change: Partial<NonNullable<JobDocument['labourBook']>>): JobDocument => ({
  ...job,
  labourBook: { ...job.labourBook!, ...change },
});
const hours = (job: JobDocument, id: 'tap' | 'joint', likely: number): JobDocument => {
  const { activities } = job.labourBook!;
  return book(job, { activities: { ...activities, [id]: { ...activities[id]!, likely } } });
};
const atRun = (job: JobDocument, n: number, change: (run: JobDocument['runs'][number]) => object): JobDocument => ({
  ...job,
  runs: job.runs.map((run, i) => (i === n % job.runs.length ? { ...run, ...change(run) } : run)),
});

const CHANGES: Readonly<Record<string, Change>> = {
  'hours of a tap-off': (job, n) => hours(job, 'tap', 0.35 + (n % 20) / 100),
  'hours of a joint, which the layout weighs': (job, n) => hours(job, 'joint', 0.52 + (n % 20) / 100),
  'the policy': (job) => book(job, { policy: job.labourBook!.policy === 'add' ? 'compound' : 'add' }),
  'the learning': (job, n) =>
    book(job, {
      learning: { ...job.labourBook!.learning!, rate: 0.9 + (n % 9) / 100, over: n % 2 ? 'run' : 'level' },
    }),
  'the time that nobody works': (job, n) => book(job, { nonProductivePercent: n % 12 }),
  'a rate of the crew': (job, n) =>
    book(job, { crew: job.labourBook!.crew!.map((one) => ({ ...one, ratePerHour: 7000 + (n % 50) * 10 })) }),
  'the bid': (job, n) => ({ ...job, bid: { ...job.bid!, overheadPercent: n % 15 } }),
  'a line by hand': (job, n) => ({
    ...job,
    extras: [{ item: 'Lamp (invented)', quantity: 1 + n, unit: 'each', hours: 1 }],
  }),
  'no line by hand': ({ extras: _extras, ...job }) => job,
  'the congestion of a level': (job, n) => ({
    ...job,
    levels: job.levels.map((level, i) =>
      i === n % job.levels.length
        ? { ...level, conditions: { ...level.conditions, congestion: n % 2 ? 'tight' : 'open' } }
        : level,
    ),
  }),
  'the order of levels': (job) => ({
    ...job,
    levels: job.levels.map((level, i) => ({ ...level, order: job.levels.length - i })),
  }),
  'the tap-offs of a run': (job, n) => atRun(job, n, (run) => ({ taps: (run.taps ?? []).slice(0, -1) })),
  'the rods of a run': (job, n) => atRun(job, n, () => ({ dropMm: 1800 + (n % 30) * 10 })),
  'the rules for spares': (job, n) => ({
    ...job,
    project: {
      ...job.project,
      ordering: { spares: [{ item: 'tap', percent: 1 + (n % 5), minimum: n % 7 }] },
    },
  }),
  'the weight of the busway': (job, n) => ({
    ...job,
    buswayTypes: job.buswayTypes.map((type) => ({ ...type, weightKgPerM: 6 + (n % 4) })),
  }),
  'the rated current of the busway': (job, n) => ({
    ...job,
    buswayTypes: job.buswayTypes.map((type) => ({ ...type, ratedCurrentA: 250 + (n % 3) * 50 })),
  }),
  'hours by rated current': (job, n) => {
    const { activities } = job.labourBook!;
    const bands = [250, 300, 400].map((upToA, i) => ({
      upToA,
      low: 0.2,
      likely: 0.3 + i / 10 + (n % 5) / 100,
      high: 2,
    }));
    return book(job, { activities: { ...activities, joint: { ...activities.joint!, bands } } });
  },
  'one run more': (job, n) => {
    const plain = job.runs.filter((run) => run.feed.kind === 'end' && run.pairedRun === undefined);
    const like = plain[n % Math.max(1, plain.length)] ?? job.runs[0]!;
    const { pairedRun: _paired, ...run } = like;
    return { ...job, runs: [...job.runs, { ...run, id: `MORE-${job.runs.length}-${n}`, taps: [] }] };
  },
  'the last run less': (job) => {
    const last = job.runs.at(-1)!;
    return last.id.startsWith('MORE-') ? { ...job, runs: job.runs.slice(0, -1) } : job;
  },
};

forEachDatabase((open) => {
  let play: Stage;
  let id: string;
  beforeAll(async () => {
    play = await stage(await open());
    id = (
      await play
        .as('ada')
        .post('/api/v1/job-documents')
        .send(campusJob({ runs: 36, seed: 5 }))
    ).body.id;
    await play.joinAll(id);
    return () => play.app.close();
  });

  const stored = () => readDesign(play.context.database.db, id);
  async function change(make: (job: JobDocument) => JobDocument): Promise<void> {
    const { designVersion } = await designOf(play.context.database.db, id);
    const url = `/api/v1/projects/${id}/document`;
    const answer = await play
      .as('olive')
      .put(url)
      .set('if-match', `"${designVersion}"`)
      .send(make(await stored()));
    expect(answer.status, JSON.stringify(answer.body)).toBe(200);
  }

  /** The progress that only runs were read again for that had moved, against one that reads them all. */
  async function expectProgressAfresh(after: string): Promise<void> {
    const { db } = play.context.database;
    const { runs } = await progressOf(db, id);
    const rows = await readRunRows(db, id);
    expect(runs, after).toEqual(await readStandings(db, id, await designOf(db, id), rows, 'all'));
  }

  it(`after each of ${EDITS} random changes the kept figures are those of a job that is worked out afresh`, async () => {
    const random = xoroshiro128plus(20261125);
    const next = (below: number) => (random.unsafeNext() >>> 0) % below;
    const names = Object.keys(CHANGES);
    const turns = [...names, ...Array.from({ length: EDITS - names.length }, () => names[next(names.length)]!)];
    for (const name of turns) {
      const n = next(1_000);
      await change((job) => CHANGES[name]!(job, n));
      const kept = await figuresOf(play.context.database.db, id);
      const document = await stored();
      const job = toModel(document);
      expect(kept.document, name).toEqual(document);
      expect(kept.job, name).toEqual(job);
      const afresh = figures(job, layoutJob(job));
      await expectProgressAfresh(`${name} ${n}`);
      expect(canonicalJson(kept.figures), `${name} ${n}`).toBe(canonicalJson(afresh));
    }
  });

  it('a step that is taken back, and done again, is in the kept figures at once', async () => {
    await change((job) => hours(job, 'tap', 0.37));
    await change((job) => atRun(job, 5, () => ({ dropMm: 1700 })));
    const steps = `/api/v1/projects/${id}/design-steps`;
    for (const back of [0, 0, 3]) {
      const { items } = (await play.as('olive').get(steps)).body;
      const answer = await play.as('olive').post(`${steps}/${items[back].id}/undo`);
      expect(answer.status, JSON.stringify(answer.body)).toBe(201);
      const kept = await figuresOf(play.context.database.db, id);
      const job = toModel(await stored());
      expect(canonicalJson(kept.figures), String(back)).toBe(canonicalJson(figures(job, layoutJob(job))));
      await expectProgressAfresh(`undo ${back}`);
    }
  });

  it('what a change of the labour book leaves as it was is the same object, and nothing of it is read again', async () => {
    const { db } = play.context.database;
    const before = await figuresOf(db, id);
    const design = await designOf(db, id);
    await change((job) => hours(job, 'tap', 0.51));
    const after = await figuresOf(db, id);
    expect((await designOf(db, id)).layouts).toBe(design.layouts);
    expect(after.job.runs).toBe(before.job.runs);
    expect(after.figures.takeoff).toBe(before.figures.takeoff);
    const linesOf = (activity: string, { labour }: typeof after.figures) =>
      labour!.lines.filter((line) => line.activity === activity);
    expect(linesOf('joint', after.figures).every((line, i) => line === linesOf('joint', before.figures)[i])).toBe(true);
    expect(linesOf('tap', after.figures).every(({ base }) => base.likely === 0.51)).toBe(true);
  });

  it('progress follows releases and a branch that hangs elsewhere, run by run', async () => {
    await play.as('olive').post(`/api/v1/projects/${id}/releases`).send({ reason: '' });
    await expectProgressAfresh('released');
    const { runs } = await stored();
    const branch = runs.findIndex((run) => run.feed.kind === 'tee');
    const other = runs.find(
      (run) => run.pairedRun !== undefined && run.feed.kind === 'end' && run.id.startsWith('B1-F1'),
    );
    expect(branch).toBeGreaterThan(0);
    await change((job) => atRun(job, branch, (run) => ({ feed: { ...run.feed, fromRun: other!.id } })));
    await expectProgressAfresh('the branch hangs elsewhere');
    await change((job) => atRun(job, 2, (run) => ({ taps: (run.taps ?? []).slice(0, -1) })));
    await expectProgressAfresh('one run drawn anew');
    await play.as('olive').post(`/api/v1/projects/${id}/releases`).send({ reason: 'a tap less' });
    await expectProgressAfresh('released again');
  });

  it('a change of one run leaves all others the same objects', async () => {
    const before = await designOf(play.context.database.db, id);
    await change((job) => atRun(job, 3, () => ({ dropMm: 1500 })));
    const after = await designOf(play.context.database.db, id);
    const moved = after.job.runs.filter((run, i) => run !== before.job.runs[i]);
    expect(moved.map((run) => run.id)).toEqual([after.job.runs[3]!.id]);
    expect(after.layouts.filter((layout, i) => layout !== before.layouts[i])).toHaveLength(1);
  });
});
