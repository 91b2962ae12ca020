import { z } from 'zod';
import { campusJob } from '../../src/document/demo/campus.ts';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { JobDocument } from '../../src/document/job-document.ts';
import { insertMany } from '../../src/store/insert-many.ts';
import type { PlacesToKeep } from '../proof/databases.ts';
import { administratorToken, ask, openService, type Service } from '../proof/service.ts';
import type { Bench } from './bench.ts';

interface Stage {
  readonly service: Service;
  readonly token: string;
}

async function stage(places: PlacesToKeep): Promise<Stage> {
  const service = await openService(await places.migratedUrl('sqlite'));
  return { service, token: await administratorToken(service) };
}

const madeSchema = z.object({ id: z.string() });

async function bringIn({ service, token }: Stage, document: JobDocument, number: string): Promise<string> {
  const job = { ...document, project: { ...document.project, number } };
  const made = await ask(service.url, token, 'POST', '/job-documents', job);
  return madeSchema.parse(made.body).id;
}

export const insertingMany: Bench = {
  name: 'insert-many',
  measured: '2 000 supports by insertMany, SQLite',
  baseline: 'the same by Prisma’s createMany',
  reading: 'below 1 the JSON statement pays',
  prepare: async (places) => {
    const at = await stage(places);
    const projectId = await bringIn(at, demoJob(), 'BENCH-1');
    const { db, write } = at.service.context.database;
    const { id: runId } = await db.run.findFirstOrThrow({ where: { projectId }, select: { id: true } });
    const rows = Array.from({ length: 2_000 }, (_, ordinal) => ({
      id: `s-${ordinal}`,
      projectId,
      runId,
      ordinal,
      mark: `H${ordinal}`,
      atU80: ordinal,
      loadKg: 12.5,
      continuousLoadKg: 13.5,
    }));
    return {
      measured: () => write((tx) => insertMany(tx, 'Support', rows)),
      baseline: () => write((tx) => tx.support.createMany({ data: rows })),
      between: () => db.support.deleteMany({ where: { runId } }),
      close: at.service.close,
    };
  },
};

export const floorsPage: Bench = {
  name: 'floors-page',
  measured: 'the floors page of the demo job over HTTP',
  baseline: 'a bare /healthz over HTTP',
  reading: 'how many empty answers a page costs',
  prepare: async (places) => {
    const at = await stage(places);
    const job = await bringIn(at, demoJob(), 'BENCH-1');
    const read = (path: string) => async () => {
      const answer = await fetch(at.service.url + path, { headers: { authorization: `Bearer ${at.token}` } });
      await answer.text();
      if (answer.status !== 200) throw new Error(`${path} answered ${answer.status}`);
    };
    return { measured: read(`/jobs/${job}/floors`), baseline: read('/healthz'), close: at.service.close };
  },
};

export const releaseGrowth: Bench = {
  name: 'release-growth',
  measured: 'release of 400 runs over the API, SQLite',
  baseline: 'release of 40',
  reading: '10 is in proportion to the runs',
  prepare: async (places) => {
    const at = await stage(places);
    const [large, small] = [campusJob({ runs: 400, seed: 1 }), campusJob({ runs: 40, seed: 1 })];
    let jobs = { large: '', small: '' };
    let round = 0;
    const release = (size: 'large' | 'small', runs: number) => async () => {
      const answer = await ask(at.service.url, at.token, 'POST', `/projects/${jobs[size]}/releases`, {});
      const { released } = z.object({ released: z.array(z.unknown()) }).parse(answer.body);
      if (released.length !== runs) throw new Error(`${released.length} of ${runs} runs were released`);
    };
    return {
      measured: release('large', 400),
      baseline: release('small', 40),
      between: async () => {
        round += 1;
        jobs = { large: await bringIn(at, large, `L-${round}`), small: await bringIn(at, small, `S-${round}`) };
      },
      close: at.service.close,
    };
  },
};
