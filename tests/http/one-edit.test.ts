import { beforeAll, expect, it, vi } from 'vitest';
import { layOut } from '../../src/actions/designs.ts';
import { campusJob } from '../../src/document/demo/campus.ts';
import type { JobDocument, RunDocument } from '../../src/document/job-document.ts';
import { layoutRun } from '../../src/domain/layout/layout-run.ts';
import { readDesign } from '../../src/store/designs.ts';
import { type Stage, stage } from '../support/cast.ts';
import { countReads } from '../support/counted-reads.ts';
import { forEachDatabase } from '../support/databases.ts';
import { fieldsOf } from '../support/page.ts';

// Laid out as ever, and counted.
vi.mock('../../src/domain/layout/layout-run.ts', async (original) => {
  const real = await original<typeof import('../../src/domain/layout/layout-run.ts')>();
  return { ...real, layoutRun: vi.fn(real.layoutRun) };
});
const laidOut = vi.mocked(layoutRun);
const reads = countReads();

const SIZES = [24, 120] as const;

interface Job {
  readonly id: string;
  readonly document: JobDocument;
  readonly ids: ReadonlyMap<string, string>;
}

/** One run of each kind on the first floor, which is the same in every campus of one seed. */
function kindsOf({ runs }: JobDocument) {
  const branch = runs.find((run) => run.feed.kind === 'tee')!;
  return {
    paired: runs.find((run) => run.pairedRun !== undefined)!.id,
    branch: branch.id,
    parent: branch.feed.fromRun!,
  };
}
type Kind = keyof ReturnType<typeof kindsOf>;
const KINDS: readonly Kind[] = ['paired', 'branch', 'parent'];

forEachDatabase((open) => {
  let play: Stage;
  const jobs = new Map<number, Job>();
  beforeAll(async () => {
    play = await stage(await open());
    for (const runs of SIZES) {
      const document = withNumber(campusJob({ runs, seed: 4 }), `CAMPUS-${runs}`);
      const id: string = (await play.as('ada').post('/api/v1/job-documents').send(document)).body.id;
      await play.joinAll(id);
      const rows = await play.context.database.db.run.findMany({
        where: { projectId: id },
        select: { id: true, key: true },
      });
      jobs.set(runs, { id, document, ids: new Map(rows.map((row) => [row.key, row.id])) });
    }
    return () => play.app.close();
  });

  const api = (job: Job, key: string) => `/api/v1/projects/${job.id}/runs/${job.ids.get(key)}`;
  const page = (job: Job, key: string) => `/jobs/${job.id}/runs/${job.ids.get(key)}`;
  const stored = async (job: Job, key: string): Promise<{ version: number; document: RunDocument }> =>
    (await play.as('olive').get(api(job, key))).body;

  /** Takes the last tap-off away through the API. */
  async function edit(job: Job, key: string): Promise<void> {
    const { version, document } = await stored(job, key);
    const changed = { ...document, taps: document.taps?.slice(0, -1) };
    const answer = await play.as('olive').put(api(job, key)).set('if-match', `"${version}"`).send(changed);
    expect(answer.status).toBe(200);
  }

  /** The same in the form on the page. */
  async function save(job: Job, key: string): Promise<void> {
    const form = fieldsOf((await play.as('olive').get(`${page(job, key)}/edit`)).text);
    const taps = (form.taps ?? '').trimEnd().split('\n').slice(0, -1).join('\n');
    const answer = await play
      .as('olive')
      .post(`${page(job, key)}/edit`)
      .type('form')
      .send({ ...form, taps });
    expect(answer.status).toBe(303);
  }

  async function look(job: Job, key: string): Promise<void> {
    expect((await play.as('olive').get(page(job, key))).status).toBe(200);
  }

  it.each(KINDS)('editing a run that is %s lays out that run and what is joined to it, and no other', async (kind) => {
    const job = jobs.get(120)!;
    const key = kindsOf(job.document)[kind];
    laidOut.mockClear();
    await edit(job, key);
    const joined = job.document.runs.filter(
      (run) => run.id === key || run.pairedRun === key || run.feed.fromRun === key || run.id === fedFrom(job, key),
    );
    expect(new Set(laidOut.mock.calls.map(([run]) => run.id))).toEqual(new Set(joined.map(({ id }) => id)));
    expect(laidOut).toHaveBeenCalledTimes(joined.length);
  });

  it.each(KINDS)(
    'a run that is %s is edited, saved in its form and shown by reading as many runs in a job of five floors as of one',
    async (kind) => {
      const runsRead = async (size: (typeof SIZES)[number]) => {
        const job = jobs.get(size)!;
        const key = kindsOf(job.document)[kind];
        const read: number[] = [];
        for (const step of [edit, save, look]) {
          const { rows } = await reads.during(() => step(job, key));
          read.push(rows.get('Run') ?? 0);
        }
        return read;
      };
      const few = await runsRead(24);
      expect(await runsRead(120)).toEqual(few);
      expect(Math.min(...few)).toBeGreaterThan(0);
    },
  );

  it('after all these edits every run has the layout that laying out the whole job gives', async () => {
    const { db } = play.context.database;
    for (const { id } of jobs.values()) {
      const whole = layOut(await readDesign(db, id));
      const rows = await db.run.findMany({ where: { projectId: id }, select: { key: true, layout: true } });
      expect(rows).toHaveLength(whole.size);
      for (const { key, layout } of rows) expect(layout).toEqual(JSON.parse(JSON.stringify(whole.get(key))));
    }
  });
});

function withNumber(job: JobDocument, number: string): JobDocument {
  return { ...job, project: { ...job.project, number } };
}

function fedFrom({ document }: Job, key: string): string | undefined {
  return document.runs.find((run) => run.id === key)?.feed.fromRun;
}
