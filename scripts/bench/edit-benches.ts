import { z } from 'zod';
import { campusJob } from '../../src/document/demo/campus.ts';
import { fieldsOf } from '../../tests/support/page.ts';
import { administratorToken, ask, openService, type Service } from '../proof/service.ts';
import type { Bench } from './bench.ts';
import { quantile } from './compare.ts';

/** What one person waits for who changes a run, in a job of any size. */
const LIMIT_MS = 50;
const SIZES = { large: 4_000, small: 4 } as const;
type Size = keyof typeof SIZES;
/** A round is the median of so many, each of another run, taken in turns. */
const TIMES = 15;

/** A job of one size, and the requests of somebody who edits its runs. */
interface Job {
  readonly runs: readonly string[];
  readonly get: (path: string) => Promise<string>;
  readonly post: (path: string, fields: Readonly<Record<string, string>>) => Promise<void>;
  readonly edit: (run: string) => Promise<() => Promise<void>>;
  readonly page: (run: string) => string;
}

/** Made ready, which is not counted, then done. */
type Step = (job: Job, run: string) => Promise<() => Promise<unknown>>;

export const editRun = editing('edit-run', 'a run’s design saved over the API', (job, run) => job.edit(run));

export const editForm = editing(
  'edit-form',
  'the form of a run opened',
  async (job, run) => () => job.get(`${job.page(run)}/edit`),
);

export const saveForm = editing('save-form', 'the form of a run saved', async (job, run) => {
  const path = `${job.page(run)}/edit`;
  const fields = fieldsOf(await job.get(path));
  const taps = (fields.taps ?? '').trimEnd().split('\n');
  const [head = '', ...rows] = taps;
  const turned = [head, ...rows.slice(-1), ...rows.slice(0, -1)].join('\n');
  return () => job.post(path, { ...fields, taps: turned });
});

export const runPage = editing('run-page', 'the page of a run just after it was edited', async (job, run) => {
  const edit = await job.edit(run);
  await edit();
  return () => job.get(job.page(run));
});

function editing(name: string, what: string, step: Step): Bench {
  return {
    name,
    measured: `${what}, in a job of 4 000 runs, SQLite`,
    baseline: 'the same in one of 4',
    reading: '1000 is in proportion to the runs, 1 does not grow with them',
    limitMs: LIMIT_MS,
    prepare: async (places) => {
      const service = await openService(await places.migratedUrl('sqlite'));
      const token = await administratorToken(service);
      const jobs = { large: await jobOf(service, token, 'large'), small: await jobOf(service, token, 'small') };
      let turn = 0;
      return {
        round: async () => {
          const took: Record<Size, number[]> = { large: [], small: [] };
          for (let i = 0; i < TIMES * 2; i += 1) {
            const size = i % 2 === 0 ? 'large' : 'small';
            took[size].push(await timeOf(step, jobs[size], turn));
            turn += i % 2;
          }
          return { measured: quantile(took.large, 0.5), baseline: quantile(took.small, 0.5) };
        },
        close: service.close,
      };
    },
  };
}

async function timeOf(step: Step, job: Job, turn: number): Promise<number> {
  const work = await step(job, job.runs[(turn * 37) % job.runs.length]!);
  const began = performance.now();
  await work();
  return performance.now() - began;
}

const madeSchema = z.object({ id: z.string() });
const runSchema = z.object({ document: z.looseObject({ taps: z.array(z.unknown()) }) });

async function jobOf({ url, context }: Service, token: string, size: Size): Promise<Job> {
  const campus = campusJob({ runs: SIZES[size], seed: 1 });
  const document = { ...campus, project: { ...campus.project, number: `BENCH-${size}` } };
  const { id } = madeSchema.parse((await ask(url, token, 'POST', '/job-documents', document)).body);
  const rows = await context.database.db.run.findMany({ where: { projectId: id }, select: { id: true } });
  const get = async (path: string) => {
    const answer = await fetch(url + path, { headers: { authorization: `Bearer ${token}` } });
    const text = await answer.text();
    if (answer.status !== 200) throw new Error(`${path} answered ${answer.status}`);
    return text;
  };
  const post = async (path: string, fields: Readonly<Record<string, string>>) => {
    const headers = { authorization: `Bearer ${token}` };
    const body = new URLSearchParams(fields);
    const { status } = await fetch(url + path, { method: 'POST', headers, body, redirect: 'manual' });
    if (status !== 303) throw new Error(`${path} answered ${status}`);
  };
  const edit = async (run: string) => {
    const path = `/projects/${id}/runs/${run}`;
    const { body, etag } = await ask(url, token, 'GET', path);
    const { document: before } = runSchema.parse(body);
    // The last tap-off goes to the front, or back: an edit that can be made any number of times.
    const changed = { ...before, taps: [...before.taps.slice(-1), ...before.taps.slice(0, -1)] };
    return async () => {
      const { status } = await ask(url, token, 'PUT', path, changed, { 'if-match': etag });
      if (status !== 200) throw new Error(`${path} answered ${status}`);
    };
  };
  return { runs: rows.map((row) => row.id), get, post, edit, page: (run) => `/jobs/${id}/runs/${run}` };
}
