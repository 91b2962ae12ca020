import { z } from 'zod';
import { campusJob } from '../../src/document/demo/campus.ts';
import { labourBookSchema } from '../../src/document/job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { figures } from '../../src/domain/figures.ts';
import { designDocument, readFrame, readStoredRuns } from '../../src/store/designs.ts';
import { administratorToken, ask, openService } from '../proof/service.ts';
import type { Bench } from './bench.ts';
import { quantile } from './compare.ts';

/** What the estimator waits for in all: the save and the page that shows it. */
const LIMIT_MS = 150;
/** A round is the median of so many. */
const TIMES = 5;

const madeSchema = z.object({ id: z.string() });
const bookSchema = z.object({ document: labourBookSchema });

export const reprice: Bench = {
  name: 'reprice',
  measured: 'the hours of one activity changed and saved, then the page of hours, in a job of 4 000 runs, SQLite',
  baseline: 'that job read whole and all its figures worked anew from its stored layouts, without a page',
  reading: '1 is no quicker than everything anew',
  limitMs: LIMIT_MS,
  prepare: async (places) => {
    const service = await openService(await places.migratedUrl('sqlite'));
    const { url, context } = service;
    const token = await administratorToken(service);
    const { id } = madeSchema.parse(
      (await ask(url, token, 'POST', '/job-documents', campusJob({ runs: 4_000, seed: 1 }))).body,
    );
    const path = `/projects/${id}/labour-book`;
    let turn = 0;

    const changed = async () => {
      const { body, etag } = await ask(url, token, 'GET', path);
      const { document } = bookSchema.parse(body);
      turn += 1;
      const tap = { ...document.activities.tap!, likely: 0.4 + (turn % 50) / 1_000 };
      const book = { ...document, activities: { ...document.activities, tap } };
      return async () => {
        const { status } = await ask(url, token, 'PUT', path, book, { 'if-match': etag });
        if (status !== 200) throw new Error(`${path} answered ${status}`);
        const page = await fetch(`${url}/jobs/${id}/hours`, { headers: { authorization: `Bearer ${token}` } });
        await page.text();
        if (page.status !== 200) throw new Error(`the page of hours answered ${page.status}`);
      };
    };
    const afresh = async () => {
      const runs = await readStoredRuns(context.database.db, id, []);
      const frame = await readFrame(context.database.db, id);
      const job = toModel(
        designDocument(
          frame,
          runs.map((run) => run.document),
        ),
      );
      figures(
        job,
        runs.map((run) => run.layout),
      );
    };
    await (await changed())();

    return {
      round: async () => {
        const measured: number[] = [];
        const baseline: number[] = [];
        for (let i = 0; i < TIMES; i += 1) {
          measured.push(await timeOf(await changed()));
          baseline.push(await timeOf(afresh));
        }
        return { measured: quantile(measured, 0.5), baseline: quantile(baseline, 0.5) };
      },
      close: service.close,
    };
  },
};

async function timeOf(work: () => Promise<void>): Promise<number> {
  const began = performance.now();
  await work();
  return performance.now() - began;
}
