import { z } from 'zod';
import { buildCloseout } from '../../src/actions/closeouts.ts';
import { campusJob } from '../../src/document/demo/campus.ts';
import { openDatabase } from '../../src/store/database.ts';
import { builtJob, OLIVE, steadyContext } from '../../tests/paper/support/built-job.ts';
import { administratorToken, ask, openService } from '../proof/service.ts';
import type { Bench } from './bench.ts';

const madeSchema = z.object({ id: z.string() });

function takeoffBench(name: string, file: string): Bench {
  return {
    name,
    measured: `${file} of 4 000 runs, figures at hand`,
    baseline: 'the takeoff page of the same job',
    reading: 'how many pages a file costs',
    prepare: async (places) => {
      const service = await openService(await places.migratedUrl('sqlite'));
      const token = await administratorToken(service);
      const made = await ask(service.url, token, 'POST', '/job-documents', campusJob({ runs: 4_000, seed: 1 }));
      const { id } = madeSchema.parse(made.body);
      const read = (path: string) => async () => {
        const answer = await fetch(`${service.url}/jobs/${id}${path}`, {
          headers: { authorization: `Bearer ${token}` },
        });
        await answer.arrayBuffer();
        if (answer.status !== 200) throw new Error(`${path} answered ${answer.status}`);
      };
      return { measured: read(`/${file}`), baseline: read('/takeoff'), close: service.close };
    },
  };
}

export const takeoffWorkbook = takeoffBench('takeoff-workbook', 'takeoff.xlsx');
export const takeoffPaper = takeoffBench('takeoff-paper', 'takeoff.pdf');

export const closeoutGrowth: Bench = {
  name: 'closeout-growth',
  measured: 'closeout of 100 fully recorded runs',
  baseline: 'closeout of 10',
  reading: '10 is in proportion to the runs',
  prepare: async (places) => {
    const context = steadyContext(await openDatabase(await places.migratedUrl('sqlite')));
    const built = async (runs: number) => {
      const document = campusJob({ runs, seed: 1 });
      return builtJob(context, { ...document, project: { ...document.project, number: `BUILT-${runs}` } });
    };
    const [large, small] = [await built(100), await built(10)];
    const take = (id: string) => async () => {
      const { stream } = await buildCloseout(context, OLIVE, id);
      let bytes = 0;
      for await (const part of stream) bytes += z.instanceof(Uint8Array).parse(part).length;
      if (bytes === 0) throw new Error('The closeout is empty.');
    };
    return { measured: take(large), baseline: take(small), close: () => context.database.close() };
  },
};
